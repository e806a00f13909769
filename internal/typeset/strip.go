package typeset

import "wardleaf/internal/page"

// A Strip is a piece of a column that is never broken: a line, a step with its
// picture, a caution block. Heights are whole or half grid units.
type Strip struct {
	Height Length
	Before Length // white above it, dropped at the top of a page
	Keep   bool   // no page may end between this strip and the next
	Break  Break
	Bar    bool // a heavy bar stands at the outer side of the page beside it
	// Again makes the strip that is repeated above this one where it starts a page,
	// such as the head of a table; nil repeats nothing.
	Again func() Strip
	// Anchor names this place for links, contents and bookmarks.
	Anchor *Anchor

	pieces []piece
	// rows are the strips it was made of and own the pieces added to it besides, so
	// that it can be broken after all when no page can hold it.
	rows []Strip
	own  []piece
}

// Break says what must happen before a strip.
type Break int

// Break values.
const (
	NoBreak   Break = iota
	NewPage         // it starts a page
	NewModule       // it starts a page, and running heads change to its anchor's title
)

// An Anchor is a named place of a piece.
type Anchor struct {
	Name  string // such as "module-feeding"
	Title string // for the outline; empty keeps it out of it
	Level int
	Mark  string // of a new module: what must stand on every page of it
}

// piece is something within a strip: its place from the start edge and the top,
// and its width, so that it can be mirrored whole.
type piece struct {
	x, y, width Length
	items       []page.Item // from the piece's own left end
}

func (st *Strip) add(x, y, width Length, items ...page.Item) {
	p := piece{x: x, y: y, width: width, items: items}
	st.pieces = append(st.pieces, p)
	st.own = append(st.own, p)
}

// line adds a line of text with its baseline at y.
func (st *Strip) line(l Line, x, y Length) { st.add(x, y, l.Width, l.Items...) }

// box adds a filled rectangle.
func (st *Strip) box(x, y, w, h Length, c page.Colour) {
	st.add(x, y, w, &page.Box{Width: w, Height: h, Colour: c})
}

// frame adds the outline of a rectangle, drawn inside it.
func (st *Strip) frame(x, y, w, h, line Length, c page.Colour) {
	st.box(x, y, w, line, c)
	st.box(x, y+h-line, w, line, c)
	st.box(x, y+line, line, h-2*line, c)
	st.box(x+w-line, y+line, line, h-2*line, c)
}

// overlay puts the content of another strip into this one, dx from its start edge and dy down.
func (st *Strip) overlay(o Strip, dx, dy Length) {
	for _, p := range o.pieces {
		p.x += dx
		p.y += dy
		st.pieces = append(st.pieces, p)
	}
	if st.Anchor == nil {
		st.Anchor = o.Anchor
	}
	rows := o.rows
	if len(rows) == 0 {
		rows = []Strip{o}
	}
	for i, r := range rows {
		r.pieces = shifted(r.pieces, dx)
		r.own = shifted(r.own, dx)
		if i == 0 && len(o.rows) > 0 {
			r.pieces = append(r.pieces, shifted(o.own, dx)...)
			r.own = append(r.own, shifted(o.own, dx)...)
		}
		st.rows = append(st.rows, r)
	}
}

// shifted returns copies of pieces dx further from the start edge.
func shifted(ps []piece, dx Length) []piece {
	out := append([]piece(nil), ps...)
	for i := range out {
		out[i].x += dx
	}
	return out
}

// join stacks strips into one that is never broken.
func join(strips []Strip) Strip {
	var out Strip
	for i, s := range strips {
		if i > 0 {
			out.Height += s.Before
		} else {
			out.Before, out.Break = s.Before, s.Break
		}
		out.overlay(s, 0, out.Height)
		out.Height += s.Height
	}
	if n := len(strips); n > 0 {
		out.Keep = strips[n-1].Keep
	}
	return out
}

// height is the room that strips take one under the other, white between them included.
func height(strips []Strip) Length {
	var h Length
	for i, s := range strips {
		if i > 0 {
			h += s.Before
		}
		h += s.Height
	}
	return h
}

// place moves the content of a strip to its place on a page: left and top are where
// the column begins, width is the column's. Right-to-left columns are mirrored
// piece by piece; what is inside a piece, such as a drawing or a line, is not.
func (st *Strip) place(left, top, width Length, rtl bool) []page.Item {
	var out []page.Item
	for _, p := range st.pieces {
		x := p.x
		if rtl {
			x = width - p.x - p.width
		}
		for _, it := range p.items {
			shift(it, left+x, top+p.y)
			out = append(out, it)
		}
	}
	return out
}

// shift moves an item.
func shift(it page.Item, dx, dy Length) {
	switch it := it.(type) {
	case *page.GlyphRun:
		it.X += dx
		it.Y += dy
	case *page.Box:
		it.X += dx
		it.Y += dy
	case *page.Link:
		it.X += dx
		it.Y += dy
	case *page.Path:
		for i := range it.Segments {
			for k := range it.Segments[i].P {
				it.Segments[i].P[k].X += dx
				it.Segments[i].P[k].Y += dy
			}
		}
	case *page.Group:
		it.X += dx
		it.Y += dy
	}
}
