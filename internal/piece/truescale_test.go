package piece

import (
	"bytes"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"wardleaf/internal/measure"
	"wardleaf/internal/pdf"
)

// TestTrueScale has poppler draw the written pattern at 20 pixels a millimetre and
// measures the squares of 100 mm in the pixels: the one that the print is checked by,
// and that of a tile. 0.1 mm is two pixels.
func TestTrueScale(t *testing.T) {
	pdftoppm := tool(t, "pdftoppm")
	e := editions(t)[0]
	for name, paper := range map[string]measure.Size{"A4": measure.A4, "Letter": measure.Letter} {
		r, err := List[slices.IndexFunc(List, func(p Piece) bool { return p.Name == "carrier-pattern" })].Make(&Job{Edition: e, Fonts: library(t), Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), "pattern.pdf")
		var b bytes.Buffer
		if err := pdf.Write(&b, r.Document); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		for _, n := range []int{1, len(r.Document.Pages) - 1} { // the last tiles hold little but their square
			out, err := exec.Command(pdftoppm, "-png", "-gray", "-aa", "no", "-aaVector", "no", "-r", "508", "-f", fmt.Sprint(n), "-l", fmt.Sprint(n), file).Output()
			if err != nil {
				t.Fatal(err)
			}
			img, err := png.Decode(bytes.NewReader(out))
			if err != nil {
				t.Fatal(err)
			}
			grey := image.NewGray(img.Bounds())
			draw.Draw(grey, grey.Bounds(), img, image.Point{}, draw.Src)
			for _, upright := range []bool{true, false} {
				mm := square(grey, upright)
				if math.Abs(mm-100) > 0.1 {
					t.Errorf("%s page %d: the square is %.2f mm, want 100", name, n, mm)
				}
			}
		}
	}
}

// square is the distance, in millimetres, of the two sides of a square of about 100 mm,
// upright or level; 0 when there is none. A side is a row of dark pixels of that length.
func square(img *image.Gray, upright bool) float64 {
	size := img.Bounds().Size()
	if !upright {
		size.X, size.Y = size.Y, size.X
	}
	var sides []int
	for i := range size.X {
		run, longest := 0, 0
		for k := range size.Y {
			x, y := i, k
			if !upright {
				x, y = k, i
			}
			if img.GrayAt(x, y).Y < 200 {
				run++
				longest = max(longest, run)
			} else {
				run = 0
			}
		}
		if longest >= 1990 && longest <= 2020 {
			sides = append(sides, i)
		}
	}
	// Each line is some pixels thick: its middle counts. Rulers may be as long as a side,
	// so the two lines that lie nearest to a side apart are the square's.
	var middles []float64
	for i := 0; i < len(sides); {
		k := i
		for k+1 < len(sides) && sides[k+1] == sides[k]+1 {
			k++
		}
		middles = append(middles, float64(sides[i]+sides[k])/2)
		i = k + 1
	}
	best := 0.0
	for i, a := range middles {
		for _, b := range middles[i+1:] {
			if mm := (b - a) / 20; math.Abs(mm-100) < math.Abs(best-100) {
				best = mm
			}
		}
	}
	return best
}
