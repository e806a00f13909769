package piece

import (
	"bytes"
	"encoding/xml"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"wardleaf/internal/pdf"
	"wardleaf/internal/sewing"
)

// A trace is what mutool says that a page of a PDF paints.
type trace struct {
	Pages []struct {
		Strokes []struct {
			Width  float64 `xml:"linewidth,attr"`
			Matrix string  `xml:"transform,attr"`
			Steps  []struct {
				XMLName xml.Name
				X       float64 `xml:"x,attr"`
				Y       float64 `xml:"y,attr"`
			} `xml:",any"`
		} `xml:"stroke_path"`
	} `xml:"page"`
}

// A drawn is a stroked path in mm from the top left corner of its page.
type drawn struct {
	width  float64
	points [][2]float64
}

func (d drawn) box() (left, top, right, bottom float64) {
	left, top = math.Inf(1), math.Inf(1)
	right, bottom = math.Inf(-1), math.Inf(-1)
	for _, p := range d.points {
		left, right, top, bottom = min(left, p[0]), max(right, p[0]), min(top, p[1]), max(bottom, p[1])
	}
	return
}

// strokes reads every stroked path of a written PDF back with mupdf, page by page.
func strokes(t *testing.T, mutool string, r *Result) [][]drawn {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, r.Document); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "pattern.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(mutool, "trace", file).Output()
	if err != nil {
		t.Fatal(err)
	}
	var tr trace
	dec := xml.NewDecoder(bytes.NewReader(out))
	dec.Strict = false
	if err := dec.Decode(&tr); err != nil {
		t.Fatal(err)
	}
	numbers := regexp.MustCompile(`[-.\d]+`)
	var pages [][]drawn
	for _, p := range tr.Pages {
		var ds []drawn
		for _, s := range p.Strokes {
			var m [6]float64
			for i, v := range numbers.FindAllString(s.Matrix, 6) {
				m[i], _ = strconv.ParseFloat(v, 64)
			}
			d := drawn{width: s.Width * 25.4 / 72}
			for _, q := range s.Steps {
				if n := q.XMLName.Local; n == "moveto" || n == "lineto" {
					d.points = append(d.points, [2]float64{(m[0]*q.X + m[2]*q.Y + m[4]) * 25.4 / 72, (m[1]*q.X + m[3]*q.Y + m[5]) * 25.4 / 72})
				}
			}
			ds = append(ds, d)
		}
		pages = append(pages, ds)
	}
	return pages
}

// square reports whether a path is a square with sides of 100 mm, within 0.1 mm.
func (d drawn) square() bool {
	l, top, r, b := d.box()
	return len(d.points) >= 4 && math.Abs(r-l-100) <= 0.1 && math.Abs(b-top-100) <= 0.1
}

func (d drawn) ruler() bool {
	l, top, r, b := d.box()
	return len(d.points) == 2 && math.Abs(r-l-100) <= 0.1 && math.Abs(b-top) < 0.01
}

// TestPatternIsTrueToScale reads the pattern's PDF back (mupdf): every sheet has its
// square and ruler of 100 mm, and every line lies within 0.05 mm of where the draft has
// it, so that two sheets laid cross on cross join within 0.1 mm.
func TestPatternIsTrueToScale(t *testing.T) {
	mutool := tool(t, "mutool")
	p, err := sewing.Draft(sewing.Default())
	if err != nil {
		t.Fatal(err)
	}
	made(t, "carrier-pattern", []string{"A4", "Letter"}, func(what string, j *Job, r *Result) {
		if !r.Document.ExactScale {
			t.Errorf("%s: the PDF does not say that it must not be scaled", what)
		}
		var tiles [][]drawn
		checked := false
		for _, ds := range strokes(t, mutool, r) {
			square, ruler := false, false
			for _, d := range ds {
				square, ruler = square || d.square(), ruler || d.ruler()
			}
			switch {
			case square && ruler && !checked:
				checked = true // the first page, which is printed to check the print
			case square && ruler:
				tiles = append(tiles, ds)
			}
		}
		if !checked || len(tiles) == 0 {
			t.Fatalf("%s: %d sheets have a square and a ruler", what, len(tiles))
		}
		// The frame is the largest path of a sheet; its size is the window.
		frame := func(ds []drawn) (l, top, r, b float64) {
			var most float64
			for _, d := range ds {
				if x0, y0, x1, y1 := d.box(); (x1-x0)*(y1-y0) > most {
					most, l, top, r, b = (x1-x0)*(y1-y0), x0, y0, x1, y1
				}
			}
			return
		}
		l, top, right, b := frame(tiles[0])
		tenth := func(v float64) sewing.Length { return sewing.Length(math.Round(v*10)) * sewing.MM / 10 }
		tl := p.Tile(sewing.Rect{Width: tenth(right - l), Length: tenth(b - top)})
		if len(tl.Tiles) != len(tiles) {
			t.Fatalf("%s: %d sheets, want %d", what, len(tiles), len(tl.Tiles))
		}
		for i, ds := range tiles {
			l, top, _, _ := frame(ds)
			want := tl.Tiles[i].Lines
			if len(ds) < len(want) {
				t.Fatalf("%s sheet %d: %d lines, want %d", what, i+1, len(ds), len(want))
			}
			for k, d := range ds[len(ds)-len(want):] { // the pattern is drawn last
				if len(d.points) != len(want[k].Points) {
					t.Fatalf("%s sheet %d line %d: %d points, want %d", what, i+1, k, len(d.points), len(want[k].Points))
				}
				for n, q := range d.points {
					w := want[k].Points[n]
					if math.Hypot(q[0]-l-w.X.Millimetres(), q[1]-top-w.Y.Millimetres()) > 0.05 {
						t.Fatalf("%s sheet %d line %d: a point is at %.3f, %.3f mm, want %.3f, %.3f", what, i+1, k, q[0]-l, q[1]-top, w.X.Millimetres(), w.Y.Millimetres())
					}
				}
			}
		}
	})
}
