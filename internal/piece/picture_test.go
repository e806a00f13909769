package piece

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"wardleaf/internal/drawing"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/pdf"
	"wardleaf/internal/typeset"
)

// tool returns the path of an outside program; without it the test is skipped, or fails in CI.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is missing", name)
		}
		t.Skipf("%s is not installed", name)
	}
	return path
}

// TestPicturesAgree draws every picture of the pack through PDF (poppler) and through
// SVG in Chromium, and compares the two pixel by pixel.
func TestPicturesAgree(t *testing.T) {
	pdftoppm, chromium := tool(t, "pdftoppm"), tool(t, "chromium")
	e := editions(t)[0]
	p, err := newPress(e, library(t), typeset.BookletSizes, typeset.Frame{}, "")
	if err != nil {
		t.Fatal(err)
	}
	const width, height = 240, 180 // points; twice as many pixels
	size := measure.Size{Width: measure.Pt(width), Height: measure.Pt(height)}
	var html strings.Builder
	html.WriteString("<!doctype html><style>body{margin:0}svg{display:block;width:480px;height:360px}</style>\n")
	d := &page.Document{Title: "pictures", Lang: "en", Tags: p.root}
	names := pack.Sorted(e.Pack.Figures)
	for _, name := range names {
		dr := e.Pack.Figures[name].Drawing
		if hasKeys(dr) {
			continue // keys are set in the piece's own type
		}
		st := p.s.Centred(dr, name, size.Width, size.Width, size.Height, p.root)
		sheets, _ := typeset.Paginate([]typeset.Strip{st}, typeset.Frame{Size: size}, 0)
		sheets[0].Items[0].(*page.Group).Y = 0 // strips are whole grid units high
		d.Pages = append(d.Pages, page.Page{Size: size, Items: sheets[0].Items})
		html.Write(dr.SVG(drawing.Labels{ID: fmt.Sprint("p", len(d.Pages)), Title: name}))
	}
	dir := t.TempDir()
	var b bytes.Buffer
	if err := pdf.Write(&b, d); err != nil {
		t.Fatal(err)
	}
	write := func(name string, data []byte) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, data, 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	run := func(cmd *exec.Cmd) {
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v: %v\n%s", cmd.Args[0], err, out)
		}
	}
	run(exec.Command(pdftoppm, "-r", "144", "-png", write("p.pdf", b.Bytes()), filepath.Join(dir, "pdf")))
	shot := filepath.Join(dir, "shot.png")
	run(exec.Command(chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
		"--user-data-dir="+filepath.Join(dir, "profile"), fmt.Sprintf("--window-size=480,%d", 360*len(d.Pages)),
		"--screenshot="+shot, "file://"+write("p.html", []byte(html.String()))))
	browser := decode(t, shot)
	pages, err := filepath.Glob(filepath.Join(dir, "pdf-*.png"))
	if err != nil || len(pages) != len(d.Pages) {
		t.Fatalf("%d pages drawn of %d: %v", len(pages), len(d.Pages), err)
	}
	worst := 0.0
	for i, name := range pages {
		mean, far := compare(decode(t, name), browser, 360*i)
		worst = max(worst, mean)
		// Edges are smoothed differently, and poppler moves straight lines to whole
		// pixels; whole areas or lines must not differ.
		if mean > 4 || far > 0.018 {
			t.Errorf("picture %d: mean difference %.2f of 255, %.2f%% of pixels far off", i, mean, far*100)
		}
	}
	t.Logf("%d pictures, worst mean difference %.2f of 255", len(pages), worst)
}

func hasKeys(d *drawing.Drawing) bool {
	for _, s := range d.Shapes {
		if s.Key != nil {
			return true
		}
	}
	return false
}

func decode(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// compare returns the mean difference of grey levels, and the share of pixels that
// differ by more than a third of the scale.
func compare(a, b image.Image, top int) (mean, far float64) {
	bounds := a.Bounds()
	n := 0
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			d := grey(a, x, y) - grey(b, x, y+top)
			if d < 0 {
				d = -d
			}
			mean += d
			if d > 85 {
				far++
			}
			n++
		}
	}
	return mean / float64(n), far / float64(n)
}

func grey(m image.Image, x, y int) float64 {
	r, g, b, _ := m.At(x, y).RGBA()
	return (0.299*float64(r) + 0.587*float64(g) + 0.114*float64(b)) / 257
}
