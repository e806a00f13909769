package piece

import (
	"bytes"
	"encoding/xml"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	"wardleaf/internal/pdf"
	"wardleaf/internal/sheet"
	"wardleaf/internal/source"
)

// TestSheetLabels holds every computed sheet, blank, to the laws of pages, and the words
// in its drawings to their drawing.
func TestSheetLabels(t *testing.T) {
	for _, s := range sheet.List {
		made(t, s.Name, []string{"A4", "Letter"}, func(what string, j *Job, r *Result) {
			lawful(t, what, r.Document)
			labelsWithin(t, what, r.Document)
			if !slices.ContainsFunc(r.Document.Tags.Kids, func(k *page.Tag) bool { return k.Role == "Sect" }) {
				t.Errorf("%s: nothing is tagged", what)
			}
		})
	}
}

// labelsWithin reports words of a drawing that leave it.
func labelsWithin(t *testing.T, what string, d *page.Document) {
	t.Helper()
	for n, p := range d.Pages {
		for _, it := range p.Items {
			g, ok := it.(*page.Group)
			if !ok || g.Clip == nil {
				continue
			}
			walk(g.Items, 0, 0, func(it page.Item, dx, dy measure.Length) {
				r, ok := it.(*page.GlyphRun)
				if !ok {
					return
				}
				up, down := r.Size.Scale(0.72), r.Size.Scale(0.2)
				x0, x1, y0, y1 := r.X, r.X+r.Width(), r.Y-up, r.Y+down
				if r.Upward {
					x0, x1, y0, y1 = r.X-up, r.X+down, r.Y-r.Width(), r.Y
				}
				if x0 < 0 || x1 > g.Clip.Width || y0 < 0 || y1 > g.Clip.Height {
					t.Errorf("%s page %d: %q leaves the drawing", what, n+1, r.Text())
				}
			})
		}
	}
}

const course = "date,weight-g,length-cm,head-cm\n2026-09-01,1500,41.0,28.8\n2026-09-04,1405,,\n2026-09-13,1535,,29.2\n2026-09-28,1880,43.4,30.9\n"

func plotted(t *testing.T, j *Job) *Result {
	t.Helper()
	r, found, err := Sheet(j, sheet.Find("growth-chart"), map[string]string{"born": "2026-09-01", "gestation": "31+4", "sex": "girl", "name": "Tavi"},
		map[string]*source.File{"csv": source.New("tavi.csv", []byte(course))})
	if err != nil || len(found) > 0 || r == nil {
		t.Fatal(found, err)
	}
	return r
}

// TestGrowthChartPages: a page for each measure and sex, and with measurements one for
// each measure and one for the table.
func TestGrowthChartPages(t *testing.T) {
	made(t, "growth-chart", []string{"A4", "Letter"}, func(what string, j *Job, r *Result) {
		if n := len(r.Document.Pages); n != 6 {
			t.Errorf("%s: %d pages", what, n)
		}
		r = plotted(t, j)
		lawful(t, what, r.Document)
		labelsWithin(t, what, r.Document)
		if n := len(r.Document.Pages); n != 4 {
			t.Errorf("%s: %d pages with measurements", what, n)
		}
	})
}

// TestChartsAgree reads the points of a chart back from the SVG that the site shows, by
// encoding/xml, and from the PDF, which qpdf has unpacked: each point stands in both.
func TestChartsAgree(t *testing.T) {
	qpdf := tool(t, "qpdf")
	e := editions(t)[0]
	j := &Job{Edition: e, Fonts: library(t), Paper: measure.A4}
	r := plotted(t, j)
	in := map[string]string{"born": "2026-09-01", "gestation": "31+4", "sex": "girl"}
	c, err := sheet.Find("growth-chart").Make(sheet.Job{Locale: e.Locale, Pack: e.Pack, Room: sheet.A4, Inputs: in, Files: map[string]*source.File{"csv": source.New("tavi.csv", []byte(course))}})
	if err != nil {
		t.Fatal(err)
	}
	if n := agree(t, qpdf, r, c); n < 3000 {
		t.Errorf("only %d points compared", n)
	}
	for name, least := range map[string]int{"carrier-pattern": 500, "cutting-plan": 50} {
		r, err := List[slices.IndexFunc(List, func(p Piece) bool { return p.Name == name })].Make(j)
		if err != nil {
			t.Fatal(err)
		}
		if n := agree(t, qpdf, r, sheet.Find(name).Blank(e.Locale, e.Pack, sheet.A4)); n < least {
			t.Errorf("%s: only %d points compared", name, n)
		}
	}
}

// agree looks for each point of a sheet's drawings, as SVG has them, in the PDF of the
// same sheet, and returns how many there are.
func agree(t *testing.T, qpdf string, r *Result, c *sheet.Content) int {
	t.Helper()
	dir := t.TempDir()
	packed, plain := filepath.Join(dir, "a.pdf"), filepath.Join(dir, "b.pdf")
	var b bytes.Buffer
	if err := pdf.Write(&b, r.Document); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(packed, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(qpdf, "--qdf", "--object-streams=disable", packed, plain).CombinedOutput(); err != nil {
		t.Fatalf("qpdf: %v\n%s", err, out)
	}
	text, err := os.ReadFile(plain)
	if err != nil {
		t.Fatal(err)
	}
	printed := map[[2]int]bool{} // in tenths of a point
	for _, m := range regexp.MustCompile(`(?m)^(-?[0-9.]+) (-?[0-9.]+) [ml]$`).FindAllSubmatch(text, -1) {
		x, _ := strconv.ParseFloat(string(m[1]), 64)
		y, _ := strconv.ParseFloat(string(m[2]), 64)
		printed[[2]int{int(math.Round(x * 10)), int(math.Round(y * 10))}] = true
	}
	points := 0
	for i, pg := range c.Pages {
		at := slices.IndexFunc(pg.Blocks, func(b lesson.Block) bool { return b.Drawing != nil })
		if at < 0 {
			continue
		}
		p := r.Document.Pages[i]
		group := p.Items[slices.IndexFunc(p.Items, func(it page.Item) bool { g, ok := it.(*page.Group); return ok && g.Clip != nil })].(*page.Group)
		for _, pt := range svgPoints(t, pg.Blocks[at].Drawing.SVG(drawing.Labels{ID: "x", Title: "x"})) {
			x := (group.X + measure.MM(pt[0])).Points()
			y := (p.Size.Height - group.Y - measure.MM(pt[1])).Points()
			found := false
			for _, dx := range []int{0, -1, 1} {
				for _, dy := range []int{0, -1, 1} {
					found = found || printed[[2]int{int(math.Round(x*10)) + dx, int(math.Round(y*10)) + dy}]
				}
			}
			if points++; !found {
				t.Fatalf("page %d: the point %v of the SVG is not in the PDF at %.1f %.1f", i+1, pt, x, y)
			}
		}
	}
	return points
}

// svgPoints are the points that lines of a drawing go through.
func svgPoints(t *testing.T, svg []byte) (out [][2]float64) {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(svg))
	for {
		tok, err := dec.Token()
		if err != nil {
			return out
		}
		el, ok := tok.(xml.StartElement)
		if !ok || el.Name.Local != "path" {
			continue
		}
		for _, a := range el.Attr {
			if a.Name.Local != "d" || strings.Contains(a.Value, "C") {
				continue
			}
			for _, part := range regexp.MustCompile(`[ML][^MLZ]+`).FindAllString(a.Value, -1) {
				f := regexp.MustCompile(`-?(?:[0-9]+\.?[0-9]*|\.[0-9]+)`).FindAllString(part, -1)
				if len(f) != 2 {
					t.Fatalf("point %q", part)
				}
				x, _ := strconv.ParseFloat(f[0], 64)
				y, _ := strconv.ParseFloat(f[1], 64)
				out = append(out, [2]float64{x, y})
			}
		}
	}
}

// TestGrowthChartText has poppler read the words of the printed chart back.
func TestGrowthChartText(t *testing.T) {
	pdftotext := tool(t, "pdftotext")
	for _, e := range editions(t) {
		r := plotted(t, &Job{Edition: e, Fonts: library(t), Paper: measure.A4})
		var b bytes.Buffer
		if err := pdf.Write(&b, r.Document); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(pdftotext, "-", "-")
		cmd.Stdin = &b
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		got := strings.Join(strings.Fields(string(out)), " ")
		loc := e.Locale
		// The weight of 1500 g at 31 weeks and 4 days has the z-score +0.52 in girls.
		for _, want := range []string{loc.Digits("97"), loc.Digits("64"), loc.Label("centile"), loc.Digits("1500"), loc.Decimal("0.52")} {
			if !strings.Contains(got, want) {
				t.Errorf("%s: %q is not in the text", loc.Tag, want)
			}
		}
		if loc.Tag == "en" && !strings.Contains(got, "A plotted point is not a diagnosis; a trained health worker decides.") {
			t.Error("the caution is not in the text")
		}
	}
}

// TestSheetPages sets every kind of page and block that a sheet can have.
func TestSheetPages(t *testing.T) {
	d := &drawing.Drawing{Width: 250, Height: 150}
	d.Area(drawing.Paper, drawing.Ink, 0.5, drawing.Point{X: 5, Y: 5}, drawing.Point{X: 245, Y: 5}, drawing.Point{X: 245, Y: 145}, drawing.Point{X: 5, Y: 145})
	d.Say(drawing.Label{Text: "upward", X: 20, Y: 100, Size: 5, Anchor: drawing.AtLeft, Upward: true, Colour: drawing.Ink})
	s := &sheet.Sheet{Name: "growth-chart", Exact: true, Make: func(sheet.Job) (*sheet.Content, error) {
		long := [][]string{{"Head", "Amount"}}
		for range 40 {
			long = append(long, []string{"row", "12"})
		}
		return &sheet.Content{Title: "Test", Pages: []sheet.Page{
			{Title: "First", Blocks: []lesson.Block{sheet.Heading("Heading"), sheet.Text("words"), sheet.Table([]float64{0.7, 0.3}, long, false, 1)}},
			{Landscape: true, Bare: true, Blocks: []lesson.Block{sheet.Chart(d, "a frame", nil)}},
		}}, nil
	}}
	for _, e := range editions(t) {
		r, _, err := Sheet(&Job{Edition: e, Fonts: library(t), Paper: measure.A4}, s, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		lawful(t, e.Locale.Tag, r.Document)
		labelsWithin(t, e.Locale.Tag, r.Document)
		n := len(r.Document.Pages)
		if last := r.Document.Pages[n-1]; n < 3 || last.Size != measure.A4.Landscape() || r.Document.Pages[0].Size != measure.A4 || !r.Document.ExactScale {
			t.Errorf("%s: %d pages, the last of %v", e.Locale.Tag, n, last.Size)
		}
		up := 0
		walk(r.Document.Pages[n-1].Items, 0, 0, func(it page.Item, dx, dy measure.Length) {
			if g, ok := it.(*page.GlyphRun); ok && g.Upward {
				up++
			}
			if g, ok := it.(*page.Group); ok && g.Clip != nil && g.Clip.Width != measure.MM(250) {
				t.Errorf("%s: the drawing is %v wide, not at true size", e.Locale.Tag, g.Clip.Width)
			}
		})
		if up != 1 {
			t.Errorf("%s: %d runs turned upwards", e.Locale.Tag, up)
		}
		var b bytes.Buffer
		if err := pdf.Write(&b, r.Document); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(tool(t, "pdftotext"), "-", "-")
		cmd.Stdin = &b
		if out, err := cmd.Output(); err != nil || !bytes.Contains(out, []byte("upward")) {
			t.Errorf("%s: the words turned upwards do not come back (%v)", e.Locale.Tag, err)
		}
	}
}
