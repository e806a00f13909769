package typeset

import (
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// A Frame is the paper of a piece and the column on it.
type Frame struct {
	Size         measure.Size
	Top, Foot    Length // from the sheet's edges to the column
	Inner, Outer Length // margins at the spine and away from it
	RTL          bool
}

// Width returns the width of the column.
func (f Frame) Width() Length { return f.Size.Width - f.Inner - f.Outer }

// Height returns the height of the column.
func (f Frame) Height() Length { return f.Size.Height - f.Top - f.Foot }

// Left returns where the column begins on a page, counted from 0. The first page is
// a recto: its spine is at the start edge of the language's reading direction.
func (f Frame) Left(pageIndex int) Length {
	if f.spineLeft(pageIndex) {
		return f.Inner
	}
	return f.Outer
}

func (f Frame) spineLeft(pageIndex int) bool { return (pageIndex%2 == 0) != f.RTL }

// A Sheet is a page as paginated: its items and what stands at its top.
type Sheet struct {
	Items []page.Item
	Head  string // title of the module it belongs to
	Mark  string // of that module
}

// A Spot is where an anchor came to lie.
type Spot struct {
	Anchor
	Page int // index among the pages
	Top  Length
}

// Paginate pours strips into pages, the first of which has index first in the piece.
// A strip that is kept with the next goes over to a new page with it; one that is
// higher than a page is broken between its rows. A module whose last page
// would hold next to nothing is set with less white, if that saves the page; else the
// page before gives something to it.
func Paginate(strips []Strip, f Frame, first int) (pages []Sheet, spots []Spot) {
	strips = broken(strips, f.Height())
	for len(strips) > 0 {
		n := 1
		for n < len(strips) && strips[n].Break == NoBreak {
			n++
		}
		section := strips[:n]
		strips = strips[n:]
		tops, count := breaks(section, f.Height(), 1)
		if last := tops[len(tops)-1]; count > 1 && last.y+section[n-1].Height < f.Height().Scale(0.3) {
			for _, white := range []float64{0.85, 0.7, 0.5} {
				if tight, fewer := breaks(section, f.Height(), white); fewer < count {
					tops, count = tight, fewer
					break
				}
			}
		}
		fill(section, tops, f.Height())
		var head, mark string
		if len(pages) > 0 {
			head, mark = pages[len(pages)-1].Head, pages[len(pages)-1].Mark
		}
		if section[0].Break == NewModule && section[0].Anchor != nil {
			head, mark = section[0].Anchor.Title, section[0].Anchor.Mark
		}
		at := first + len(pages)
		for range count {
			pages = append(pages, Sheet{Head: head, Mark: mark})
		}
		for i := range section {
			p := at + tops[i].page
			sheet := &pages[p-first]
			if again := &tops[i].again; again.Height > 0 {
				sheet.Items = append(sheet.Items, again.on(f, p, f.Top)...)
			}
			sheet.Items = append(sheet.Items, section[i].on(f, p, f.Top+tops[i].y)...)
			if a := section[i].Anchor; a != nil {
				spots = append(spots, Spot{*a, p, f.Top + tops[i].y})
			}
		}
	}
	return pages, spots
}

// broken takes strips apart that no page can hold.
func broken(strips []Strip, room Length) []Strip {
	var out []Strip
	for i := range strips {
		s := &strips[i]
		if s.Height <= room || len(s.rows) < 2 {
			out = append(out, *s)
			continue
		}
		rows := broken(s.rows, room)
		first := &rows[0]
		for _, p := range s.own {
			if p.y < room/2 { // numerals and boxes at its head; rules at its foot are left out
				first.pieces = append(first.pieces, p)
			}
		}
		first.Before, first.Anchor = s.Before, s.Anchor
		if first.Break = s.Break; first.Break == NoBreak {
			first.Break = NewPage
		}
		for k := range rows {
			rows[k].Bar, rows[k].Keep = s.Bar, false
		}
		out = append(out, rows...)
	}
	return out
}

// top is where a strip begins: the page within its section, and how far down the column.
type top struct {
	page  int
	y     Length
	again Strip // what is repeated above it; no height when nothing is
}

// breaks finds where strips fall when the white between them is scaled, and how many pages they take.
func breaks(strips []Strip, room Length, white float64) (tops []top, pages int) {
	var t top
	for i := range strips {
		before := strips[i].Before.Scale(white)
		if i > 0 && t.y > 0 {
			need := chain(strips[i:], white)
			if whole := chain(strips[chained(strips, i):], white); whole > room {
				// It cannot be kept whole on any page: two by two, so that no title stands alone.
				need = strips[i].Height
				if strips[i].Keep && i+1 < len(strips) {
					need = min(chain(strips[i:i+2], white), room)
				}
			}
			if t.y+before+need > room {
				t = top{page: t.page + 1}
				if strips[i].Again != nil {
					t.again = strips[i].Again()
					t.y = t.again.Height
				}
			} else {
				t.y += before
			}
		}
		tops = append(tops, t)
		t.y += strips[i].Height
		t.again = Strip{}
	}
	return tops, t.page + 1
}

// fill moves one more strip, with what it is kept with, over to a last page that would
// hold next to nothing, if the page before stays half full.
func fill(strips []Strip, tops []top, room Length) {
	n := len(strips)
	last := tops[n-1].page
	first := n - 1
	for first > 0 && tops[first-1].page == last {
		first--
	}
	if first == 0 || strips[first].Break != NoBreak || tops[n-1].y+strips[n-1].Height > room/4 {
		return
	}
	k := first - 1
	for k > 0 && strips[k-1].Keep {
		k--
	}
	if k == 0 || tops[k].page != last-1 || tops[k].y < room/2 || strips[k].Again != nil {
		return
	}
	var y Length
	for i := k; i < n; i++ {
		if i > k {
			y += strips[i].Before
		}
		tops[i] = top{page: last, y: y}
		y += strips[i].Height
	}
}

// on returns the items of a strip placed on a page, with the bar beside it.
func (st *Strip) on(f Frame, index int, y Length) []page.Item {
	left := f.Left(index)
	items := st.place(left, y, f.Width(), f.RTL)
	if st.Bar {
		// It ends 7.1 mm from the edge of a booklet's page, which is the edge of the sheet.
		bar := &page.Box{Y: y, Width: measure.MM(1.4), Height: st.Height, Colour: Ink, X: left - measure.MM(3.9)}
		if f.spineLeft(index) {
			bar.X = left + f.Width() + measure.MM(2.5)
		}
		items = append(items, bar)
	}
	return items
}

// chained is where the strips begin that strip i is kept with.
func chained(strips []Strip, i int) int {
	for i > 0 && strips[i-1].Keep {
		i--
	}
	return i
}

// chain is the room that the first strip takes with all that it is kept with.
func chain(strips []Strip, white float64) Length {
	h := strips[0].Height
	for i := 1; i < len(strips) && strips[i-1].Keep; i++ {
		h += strips[i].Before.Scale(white) + strips[i].Height
	}
	return h
}
