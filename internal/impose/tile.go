package impose

import (
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// Measures of tiles: what stays free at the edge of a sheet, and how much of the page
// two neighbours both show, so that there is something to glue.
var (
	tileMargin  = measure.MM(14)
	tileOverlap = measure.MM(10)
	tileMark    = measure.MM(4)
	mapCell     = measure.MM(2)
)

// A grid says how a page is cut into tiles: windows of one size, step apart.
type grid struct {
	sheet, window, step measure.Size
	columns, rows       int
}

func (g grid) tiles() int { return g.columns * g.rows }

// tiling returns the grid for a page on sheets as they are given.
func tiling(p, sheet measure.Size) grid {
	g := grid{sheet: sheet}
	g.window = measure.Size{Width: sheet.Width - 2*tileMargin, Height: sheet.Height - 2*tileMargin}
	g.step = measure.Size{Width: g.window.Width - tileOverlap, Height: g.window.Height - tileOverlap}
	count := func(whole, step measure.Length) int { return max(1, int((whole-tileOverlap+step-1)/step)) }
	g.columns, g.rows = count(p.Width, g.step.Width), count(p.Height, g.step.Height)
	return g
}

// Tiled lays the pages of a document at true size over sheets of smaller paper, upright
// or across, whichever takes fewer. Neighbouring sheets overlap; ticks in the margin say
// where the edge of the next one lies, and a small map says which sheet it is. Sheets
// go row by row from the top left, in every language: they are laid out, not read.
func Tiled(d *page.Document, paper measure.Size) *page.Document {
	out := *d
	out.Pages, out.Outline, out.Tags = nil, nil, nil
	out.ExactScale, out.Duplex = true, page.AnyDuplex
	for i := range d.Pages {
		p := &d.Pages[i]
		g := tiling(p.Size, paper)
		if across := tiling(p.Size, measure.Size{Width: paper.Height, Height: paper.Width}); across.tiles() < g.tiles() {
			g = across
		}
		items := untagged(withoutLinks(p.Items))
		for row := range g.rows {
			for column := range g.columns {
				out.Pages = append(out.Pages, g.tile(items, column, row))
			}
		}
	}
	return &out
}

func (g grid) tile(items []page.Item, column, row int) page.Page {
	p := page.Page{Size: g.sheet}
	shifted := &page.Group{X: -g.step.Width * measure.Length(column), Y: -g.step.Height * measure.Length(row), Items: items}
	p.Items = append(p.Items, &page.Group{X: tileMargin, Y: tileMargin, Clip: &g.window, Items: []page.Item{shifted}})
	tick := func(x, y, w, h measure.Length) {
		p.Items = append(p.Items, &page.Box{X: x, Y: y, Width: w, Height: h, Colour: markInk})
	}
	right, bottom := tileMargin+g.window.Width, tileMargin+g.window.Height
	// Corners of the window, and where the neighbours' windows begin and end.
	xs := []measure.Length{tileMargin, right}
	if column > 0 {
		xs = append(xs, tileMargin+tileOverlap)
	}
	if column+1 < g.columns {
		xs = append(xs, right-tileOverlap)
	}
	for _, x := range xs {
		tick(x-hairline/2, tileMargin-tileMark, hairline, tileMark)
		tick(x-hairline/2, bottom, hairline, tileMark)
	}
	ys := []measure.Length{tileMargin, bottom}
	if row > 0 {
		ys = append(ys, tileMargin+tileOverlap)
	}
	if row+1 < g.rows {
		ys = append(ys, bottom-tileOverlap)
	}
	for _, y := range ys {
		tick(tileMargin-tileMark, y-hairline/2, tileMark, hairline)
		tick(right, y-hairline/2, tileMark, hairline)
	}
	g.plan(&p, column, row)
	return p
}

// plan draws the map of all tiles in the middle of the upper margin, this one filled.
func (g grid) plan(p *page.Page, column, row int) {
	cell := min(mapCell, measure.MM(6)/measure.Length(g.rows))
	left := (g.sheet.Width - cell*measure.Length(g.columns)) / 2
	for r := range g.rows {
		for c := range g.columns {
			x, y := left+cell*measure.Length(c), measure.MM(7.4)+cell*measure.Length(r)
			p.Items = append(p.Items, &page.Box{X: x, Y: y, Width: cell - hairline, Height: cell - hairline, Colour: markInk})
			if c != column || r != row {
				p.Items = append(p.Items, &page.Box{X: x + hairline, Y: y + hairline, Width: cell - 3*hairline, Height: cell - 3*hairline, Colour: paperInk})
			}
		}
	}
}

var paperInk = page.Colour{R: 0xff, G: 0xff, B: 0xff}

// untagged returns copies of items without their tags: a tile is not read aloud.
func untagged(items []page.Item) []page.Item {
	out := make([]page.Item, 0, len(items))
	for _, it := range items {
		switch it := it.(type) {
		case *page.GlyphRun:
			c := *it
			c.Tag = nil
			out = append(out, &c)
		case *page.Path:
			c := *it
			c.Tag = nil
			out = append(out, &c)
		case *page.Group:
			c := *it
			c.Items = untagged(it.Items)
			out = append(out, &c)
		default:
			out = append(out, it)
		}
	}
	return out
}
