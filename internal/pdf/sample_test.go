package pdf

import (
	"bytes"
	"testing"
	"time"

	"wardleaf/internal/font"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// A composer sets lines of text by hand.
type composer struct {
	page *page.Page
	tag  *page.Tag
	size measure.Length
	x, y measure.Length
}

// A stretch is text of one face and direction, already in visual order among others.
type stretch struct {
	face *font.Face
	text string
	rtl  bool
}

// line sets stretches one after another and moves down.
func (c *composer) line(stretches ...stretch) {
	x := c.x
	for _, s := range stretches {
		r := shape(s.face, c.size, x, c.y, s.text, s.rtl, c.tag)
		c.page.Items = append(c.page.Items, r)
		x += r.Width()
	}
	c.y += c.size.Scale(1.6)
}

func (c *composer) add(items ...page.Item) { c.page.Items = append(c.page.Items, items...) }

// sample returns a tagged document with one of everything.
func sample(t testing.TB) *page.Document {
	latin, bold, deva, naskh := loadFace(t, "NotoSans-Regular"), loadFace(t, "NotoSans-Bold"), loadFace(t, "NotoSansDevanagari-Regular"), loadFace(t, "NotoNaskhArabic-Regular")
	pt := measure.Pt
	d := &page.Document{
		Title: "Skin to skin & <warm> – कंगारू 😀", Subject: "Lessons", Author: "Ward (3) \\ nursery", Lang: "en",
		Date: time.Date(2026, 11, 25, 8, 0, 0, 0, time.UTC),
		Pages: []page.Page{
			{Size: measure.A5}, {Size: measure.A5}, {Size: measure.A4.Landscape()},
		},
		Outline: []page.Bookmark{
			{Title: "Warmth", Page: 0, Top: pt(40)},
			{Title: "दूध", Level: 1, Page: 0, Top: pt(150)},
			{Title: "Table", Level: 3, Page: 1},
			{Title: "العربية", Page: 2, Top: pt(50)},
		},
		Tags: &page.Tag{Role: "Document"},
	}
	c := &composer{page: &d.Pages[0], size: pt(18), x: pt(40), y: pt(60)}
	c.tag = d.Tags.Add("H1")
	c.line(stretch{bold, "Keep your baby warm: AVATAR To", false})

	c.size, c.tag = pt(11), d.Tags.Add("P")
	c.line(stretch{latin, "Hold your baby ", false}, stretch{bold, "skin to skin", false}, stretch{latin, " all ", false})
	c.line(stretch{latin, "day and all night; see ", false})
	start := c.x + c.page.Items[len(c.page.Items)-1].(*page.GlyphRun).Width()
	outer := c.tag
	c.tag, c.x, c.y = outer.Add("Link"), start, c.y-c.size.Scale(1.6)
	c.tag.Alt = "the guide – अगला"
	c.add(&page.Link{X: start, Y: c.y - pt(9), Width: pt(60), Height: pt(12), URI: "https://example.org/a (b)/é", Tag: c.tag})
	c.line(stretch{latin, "the guide", false})
	c.tag, c.x = outer, pt(40)
	c.line(stretch{latin, "and ask a health worker. ", false})

	c.y += pt(10)
	c.tag = d.Tags.Add("P")
	c.tag.Lang = "hi"
	c.line(stretch{deva, "क्षत्रिय कंगारू ", false})
	c.line(stretch{deva, "स्तनपान, माँ का दूध ", false})

	figure := d.Tags.Add("Figure")
	figure.Alt = "A square and a wave"
	figure.BBox = &[4]measure.Length{pt(0), pt(0), pt(100), pt(100)} // of the group it lies in
	red, blue := page.Colour{R: 200}, page.Colour{B: 255}
	c.add(&page.Box{X: pt(30), Y: pt(210), Width: pt(300), Height: pt(0.5), Colour: page.Colour{R: 128, G: 128, B: 128}})
	c.add(&page.Group{X: pt(40), Y: pt(220), Items: []page.Item{
		&page.Path{Segments: square(0, 0, 100), Fill: &red, Tag: figure},
		&page.Path{Segments: append(square(10, 10, 80), square(30, 30, 40)...), Fill: &blue, EvenOdd: true, Stroke: &red, StrokeWidth: pt(3), RoundJoin: true, Tag: figure},
		&page.Path{Segments: []page.Segment{
			{Op: page.MoveTo, P: [3]page.Point{{X: pt(0), Y: pt(50)}}},
			{Op: page.CurveTo, P: [3]page.Point{{X: pt(30), Y: pt(0)}, {X: pt(70), Y: pt(100)}, {X: pt(100), Y: pt(50)}}},
		}, Stroke: &page.Colour{R: 255, G: 255, B: 255}, StrokeWidth: pt(4), RoundCap: true, Dash: []measure.Length{pt(0), pt(8)}, Tag: figure},
	}})
	c.tag, c.y = nil, pt(570)
	c.line(stretch{latin, "1", false})

	c.y, c.tag = pt(540), d.Tags.Add("P")
	c.line(stretch{latin, "This paragraph goes on ", false})
	c.page, c.y = &d.Pages[1], pt(60)
	c.line(stretch{latin, "over the page. ", false})

	list := d.Tags.Add("L").Add("LI")
	c.tag = list.Add("Lbl")
	c.line(stretch{latin, "1.", false})
	c.tag, c.x, c.y = list.Add("LBody"), pt(60), c.y-c.size.Scale(1.6)
	c.line(stretch{latin, "Wash your hands", false})

	c.y += pt(10)
	table := d.Tags.Add("Table")
	for i, row := range [][2]string{{"Age", "Feeds"}, {"1 day", "8–12"}} {
		tr := table.Add("TR")
		for k, text := range row {
			if i == 0 {
				c.tag = tr.Add("TH")
				c.tag.Scope = "Column"
			} else {
				c.tag = tr.Add("TD")
			}
			c.x = pt(60 + 80*float64(k))
			y := c.y
			c.line(stretch{latin, text, false})
			c.y = y
		}
		c.y += pt(18)
	}
	c.x, c.tag = pt(40), d.Tags.Add("P")
	c.tag = c.tag.Add("Link")
	c.tag.Alt = "to the first page"
	c.add(&page.Link{X: c.x, Y: c.y - pt(9), Width: pt(60), Height: pt(12), Page: 0, Top: pt(40), Tag: c.tag})
	c.line(stretch{latin, "Back", false})

	c.page, c.x, c.y, c.size = &d.Pages[2], pt(300), pt(80), pt(16)
	c.tag = d.Tags.Add("P")
	c.tag.Lang, c.tag.Actual = "ar", "الرضاعة 8 مرات (أو أكثر)"
	c.line(stretch{naskh, " مرات (أو أكثر)", true}, stretch{naskh, "8", false}, stretch{naskh, "الرضاعة ", true})
	return d
}

func square(x, y, side float64) []page.Segment {
	at := func(op page.Op, x, y float64) page.Segment {
		return page.Segment{Op: op, P: [3]page.Point{{X: measure.Pt(x), Y: measure.Pt(y)}}}
	}
	return []page.Segment{at(page.MoveTo, x, y), at(page.LineTo, x+side, y), at(page.LineTo, x+side, y+side), at(page.LineTo, x, y+side), {Op: page.Close}}
}

func write(t testing.TB, d *page.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
