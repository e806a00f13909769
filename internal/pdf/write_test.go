package pdf

import (
	"bytes"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// TestReproducible writes the same document from fresh data, and one document
// several times at once.
func TestReproducible(t *testing.T) {
	a, shared := write(t, sample(t)), sample(t)
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, shared); err != nil || !bytes.Equal(a, b.Bytes()) {
				t.Error("two runs differ", err)
			}
		})
	}
	wait.Wait()
	d := sample(t)
	d.Title += "."
	id := func(data []byte) string {
		_, after, _ := strings.Cut(string(data), "/ID[")
		id, _, _ := strings.Cut(after, "]")
		return id
	}
	if id(a) == "" || id(a) == id(write(t, d)) {
		t.Errorf("the file identifier %q does not follow the content", id(a))
	}
}

func TestRefuses(t *testing.T) {
	latin := loadFace(t, "NotoSans-Regular")
	run := func(change func(r *page.GlyphRun)) func(*page.Document) {
		return func(d *page.Document) {
			r := shape(latin, 12000, 0, 0, "ab", false, nil)
			change(r)
			d.Pages[0].Items = []page.Item{r}
		}
	}
	item := func(i page.Item) func(*page.Document) {
		return func(d *page.Document) { d.Pages[0].Items = []page.Item{i} }
	}
	black := &page.Colour{}
	for _, test := range []struct {
		want   string
		change func(d *page.Document)
	}{
		{"no pages", func(d *page.Document) { d.Pages = nil }},
		{"page 2 has no size", func(d *page.Document) { d.Pages = append(d.Pages, page.Page{}) }},
		{"needs a language", func(d *page.Document) { d.Tags = &page.Tag{Role: "Document"} }},
		{"no face", run(func(r *page.GlyphRun) { r.Face = nil })},
		{"no clusters", run(func(r *page.GlyphRun) { r.Clusters = nil })},
		{"no size", run(func(r *page.GlyphRun) { r.Size = 0 })},
		{"has no glyph", run(func(r *page.GlyphRun) { r.Clusters[0].Glyphs = nil })},
		{"has no text", run(func(r *page.GlyphRun) { r.Clusters[1].Text = "" })},
		{"there is no glyph 70000", run(func(r *page.GlyphRun) { r.Clusters[0].Glyphs = []page.Glyph{{ID: 70000}} })},
		{"too far away", run(func(r *page.GlyphRun) { r.Clusters[0].Glyphs[0].Y = 50000 })},
		{"not in the structure tree", func(d *page.Document) {
			d.Lang, d.Tags = "en", &page.Tag{Role: "Document"}
			run(func(r *page.GlyphRun) { r.Tag = &page.Tag{Role: "P"} })(d)
		}},
		{"no standard structure type", func(d *page.Document) { d.Lang, d.Tags = "en", &page.Tag{Role: "Paragraph"} }},
		{"stands twice", func(d *page.Document) {
			p := &page.Tag{Role: "P"}
			d.Lang, d.Tags = "en", &page.Tag{Role: "Document", Kids: []*page.Tag{p, p}}
		}},
		{"empty tag", func(d *page.Document) { d.Lang, d.Tags = "en", &page.Tag{Role: "Document", Kids: []*page.Tag{nil}} }},
		{"neither filled nor stroked", item(&page.Path{Segments: square(0, 0, 1)})},
		{"begin with a move", item(&page.Path{Fill: black, Segments: square(0, 0, 1)[1:]})},
		{"unknown operation", item(&page.Path{Fill: black, Segments: []page.Segment{{Op: page.MoveTo}, {Op: 9}}})},
		{"cannot be drawn", item(nil)},
		{"page 8, which the document does not have", item(&page.Link{Page: 7})},
		{"page 8 at level 0", func(d *page.Document) { d.Outline = []page.Bookmark{{Title: "x", Page: 7}} }},
		{"at level -1", func(d *page.Document) { d.Outline = []page.Bookmark{{Title: "x", Level: -1}} }},
	} {
		d := setLines([]stretch{{latin, "x", false}})
		test.change(d)
		var b bytes.Buffer
		err := Write(&b, d)
		if err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("error %v, want one that says %q", err, test.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: something was written all the same", test.want)
		}
	}
}

// TestContent looks at the operators themselves.
func TestContent(t *testing.T) {
	latin := loadFace(t, "NotoSans-Regular")
	red, teal := page.Colour{R: 255}, page.Colour{G: 128, B: 128}
	pt := measure.Pt
	text := func(x float64, size float64, c page.Colour) *page.GlyphRun {
		r := shape(latin, pt(size), pt(x), pt(20), "AV", false, nil)
		r.Colour = c
		return r
	}
	d := &page.Document{Pages: []page.Page{{Size: measure.Size{Width: pt(100), Height: pt(100)}, Items: []page.Item{
		text(1, 10, red), text(2, 10, red), text(3, 12.5, teal),
		&page.Group{X: pt(10), Y: pt(5), Items: []page.Item{
			&page.Box{X: pt(1), Y: pt(2), Width: pt(3), Height: pt(4), Colour: teal},
			&page.Group{X: pt(30), Items: []page.Item{
				&page.Path{Segments: square(0, 0, 10), Stroke: &red, StrokeWidth: 250, Dash: []measure.Length{pt(2), pt(1)}},
			}},
		}},
		&page.Path{Segments: square(0, 0, 1)[:2], Stroke: &red, StrokeWidth: 250, RoundCap: true},
		&page.Path{Segments: square(0, 0, 1)[:3], Fill: &red, Stroke: &teal, StrokeWidth: 250, RoundCap: true, RoundJoin: true, EvenOdd: true},
	}}}}
	o := readObjects(t, write(t, d))
	content := o.stream(t, o.get(o.pages()[0]).(map[string]any)["/Contents"])
	want := `1 0 0 rg
BT
/f1 10 Tf
1 0 0 1 1 80 Tm[<0041>40<0056>]TJ
ET
BT
1 0 0 1 2 80 Tm[<0041>40<0056>]TJ
ET
0 0.502 0.502 rg
BT
/f1 12.5 Tf
1 0 0 1 3 80 Tm[<0041>40<0056>]TJ
ET
11 89 3 4 re f
1 0 0 RG
0.25 w
4 M
0 J
0 j
[2 1 ]0 d
40 95 m
50 95 l
50 85 l
40 85 l
h
S
1 J
[]0 d
0 100 m
1 100 l
S
1 0 0 rg
0 0.502 0.502 RG
1 j
0 100 m
1 100 l
1 99 l
B*
`
	if _, got, _ := strings.Cut(content, "0.000 g\n"); strings.TrimSpace(got) != strings.TrimSpace(want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestOutline(t *testing.T) {
	got := run(t, write(t, sample(t)), "mutool", "show", "FILE", "outline")
	var titles []string
	for line := range strings.SplitSeq(strings.TrimSpace(got), "\n") {
		titles = append(titles, strings.Join(strings.Split(line, "\t")[1:], ">"))
	}
	want := `"Warmth">#page=1 >"दूध">#page=1 >>"Table">#page=2 "العربية">#page=3`
	var places []string
	for _, s := range titles {
		place, _, _ := strings.Cut(s, "&")
		places = append(places, place)
	}
	if strings.Join(places, " ") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(places, " "), want)
	}
	o := readObjects(t, write(t, sample(t)))
	if n := o.get(o.catalog(), "/Outlines", "/Count"); n != 4.0 {
		t.Errorf("%v bookmarks are open, want 4", n)
	}
}

func TestLinks(t *testing.T) {
	o := readObjects(t, write(t, sample(t)))
	annots := func(i int) any { return o.get(o.pages()[i], "/Annots").([]any)[0] }
	if uri := o.get(annots(0), "/A", "/URI"); uri != "u:https://example.org/a%20(b)/%C3%A9" {
		t.Errorf("URI %v", uri)
	}
	if text := o.get(annots(0), "/Contents"); text != "u:the guide – अगला" {
		t.Errorf("Contents %v", text)
	}
	if dest := fmt.Sprint(o.get(annots(1), "/Dest")); dest != fmt.Sprint([]any{o.pages()[0], "/XYZ", nil, 555.276, nil}) {
		t.Errorf("destination %v", dest)
	}
}

// TestManyLinks makes the dictionary of a page much longer than fpdf wrote it.
func TestManyLinks(t *testing.T) {
	d := setLines([]stretch{{loadFace(t, "NotoSans-Regular"), "words", false}})
	for range 200 {
		d.Pages[0].Items = append(d.Pages[0].Items, &page.Link{Width: 1, Height: 1, URI: "https://example.org/"})
	}
	if got := strings.TrimSpace(run(t, write(t, d), "pdftotext", "FILE", "-")); got != "words" {
		t.Errorf("the page says %q", got)
	}
}

// TestClip draws in a box; what was set inside is set again after it.
func TestClip(t *testing.T) {
	red := page.Colour{R: 255}
	box := &page.Box{Width: 10000, Height: 10000, Colour: red}
	d := &page.Document{Title: "Clip", Lang: "en", Tags: &page.Tag{Role: "Document"}, Pages: []page.Page{{Size: measure.A5, Items: []page.Item{
		&page.Group{X: 5000, Y: 5000, Clip: &measure.Size{Width: 2000, Height: 3000}, Items: []page.Item{box}}, box,
	}}}}
	o := readObjects(t, write(t, d))
	content := o.stream(t, o.get(o.pages()[0]).(map[string]any)["/Contents"])
	want := `q 5 587.276 2 3 re W n
/Artifact BMC
1 0 0 rg
5 580.276 10 10 re f
EMC
Q
/Artifact BMC
1 0 0 rg
0 585.276 10 10 re f
EMC`
	if _, got, _ := strings.Cut(content, "0.000 g\n"); strings.TrimSpace(got) != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestViewing(t *testing.T) {
	d := setLines([]stretch{{loadFace(t, "NotoNaskhArabic-Regular"), "سلام", true}})
	d.RTL, d.ExactScale, d.Duplex, d.Lang = true, true, page.FlipShortEdge, "ar"
	o := readObjects(t, write(t, d))
	want := "map[/Direction:/R2L /DisplayDocTitle:true /Duplex:/DuplexFlipShortEdge /PrintScaling:/None]"
	if got := fmt.Sprint(o.get(o.catalog(), "/ViewerPreferences")); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if info := fmt.Sprint(o.get(o["trailer"]["value"], "/Info")); strings.Contains(info, "Date") {
		t.Errorf("a document without a date states one: %s", info)
	}
	d.Date = time.Date(2026, 1, 2, 3, 4, 5, 0, time.FixedZone("", 3600))
	o = readObjects(t, write(t, d))
	if date := o.get(o["trailer"]["value"], "/Info", "/ModDate"); date != "u:D:20260102020405+00'00'" {
		t.Errorf("date %v", date)
	}
}

// TestManyPages makes more objects than one object stream holds.
func TestManyPages(t *testing.T) {
	d := setLines([]stretch{{loadFace(t, "NotoSans-Regular"), "page", false}})
	for len(d.Pages) < 450 {
		d.Pages = append(d.Pages, d.Pages[0])
	}
	data := write(t, d)
	run(t, data, "qpdf", "--check", "FILE")
	if n := strings.Count(run(t, data, "pdftotext", "FILE", "-"), "page"); n != 450 {
		t.Errorf("%d pages with their word, want 450", n)
	}
}
