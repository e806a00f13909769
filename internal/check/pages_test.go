package check

import (
	"testing"

	"wardleaf/internal/font"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/source"
)

// TestPages lays things on, over and off the edge of a page.
func TestPages(t *testing.T) {
	p := &pack.Pack{File: source.New("pack.yaml", []byte("title: x\n"))}
	face := &font.Face{UnitsPerEm: 1000}
	run := func(x, y, size float64, tag *page.Tag) *page.GlyphRun {
		return &page.GlyphRun{Face: face, Size: measure.Pt(size), X: measure.Pt(x), Y: measure.Pt(y), Tag: tag, Clusters: []page.Cluster{{Text: "a", Advance: 500}}}
	}
	word := &page.Tag{Role: "P"}
	corner := func(x float64) *page.Path {
		return &page.Path{Segments: []page.Segment{{Op: page.MoveTo, P: [3]page.Point{{X: measure.Pt(x), Y: measure.Pt(10)}}}}}
	}
	for _, k := range []struct {
		items []page.Item
		want  string
	}{
		{[]page.Item{run(10, 10, 10, word), corner(100), &page.Box{Width: measure.Pt(100), Height: measure.Pt(100)}}, ""},
		{[]page.Item{run(97, 10, 10, word)}, "page-overflow"},
		{[]page.Item{run(-3, 10, 10, nil)}, "page-overflow"},
		{[]page.Item{corner(102)}, "page-overflow"},
		{[]page.Item{&page.Box{X: measure.Pt(50), Width: measure.Pt(60)}}, "page-overflow"},
		{[]page.Item{run(10, 10, 5.9, word), run(10, 20, 5.9, word)}, "text-small"},
		{[]page.Item{&page.GlyphRun{Face: face, Size: measure.Pt(10), Cut: true}}, "word-cut"},
		{[]page.Item{run(10, 10, 5.9, nil)}, ""}, // the foot of a page is not read
	} {
		d := &page.Document{Pages: []page.Page{{Size: measure.Size{Width: measure.Pt(100), Height: measure.Pt(100)}, Items: k.items}}}
		got := ""
		for _, f := range LaidOut(p, Laid{Piece: "handout", Lang: "en", Document: d}) {
			got += f.Rule
		}
		if got != k.want {
			t.Errorf("got %q, want %q", got, k.want)
		}
	}
}
