// Package impose places pages on sheets so that a folded and stapled stack reads in order.
//
// The order is the usual one for saddle stitching: with N pages, a multiple of
// four, sheet s from the outside carries N-2s and 2s+1 on its front, 2s+2 and
// N-2s-1 on its back, left to right; for languages read from right to left the two
// pages of each side change places. It moves pages and changes nothing on them.
package impose

import (
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// A Side is one side of a sheet: the numbers, from 1, of the pages on its left and
// right half; 0 is blank.
type Side struct{ Left, Right int }

// Order returns the sides of a saddle-stitched booklet of n pages, front and back
// of each sheet from the outermost in.
func Order(n int, rtl bool) []Side {
	full := (n + 3) / 4 * 4
	number := func(p int) int {
		if p > n {
			return 0
		}
		return p
	}
	var out []Side
	for s := range full / 4 {
		front := Side{number(full - 2*s), number(2*s + 1)}
		back := Side{number(2*s + 2), number(full - 2*s - 1)}
		if rtl {
			front = Side{front.Right, front.Left}
			back = Side{back.Right, back.Left}
		}
		out = append(out, front, back)
	}
	return out
}

// Limits of a stapled booklet, in sheets. A booklet finisher holds about 15, a desk
// stapler 20 to 25 sheets of 80 g paper; above Most the booklet is split into
// signatures that are folded one by one and laid on each other.
const (
	Easy      = 15
	Most      = 20
	signature = 8 // sheets of a signature, at most, once a booklet is split
)

// Signatures returns how many pages each signature of a booklet of n pages has: one
// signature up to Most sheets, else as few as needed, as equal as they can be, all
// but the last full.
func Signatures(n int) []int {
	sheets := (n + 3) / 4
	if sheets <= Most {
		if n == 0 {
			return nil
		}
		return []int{n}
	}
	count := (sheets + signature - 1) / signature
	var out []int
	for i := range count {
		k := sheets/count + min(1, max(0, sheets%count-i)) // the first ones take one more
		pages := min(4*k, n)
		out = append(out, pages)
		n -= pages
	}
	return out
}

// Paper is how thick a sheet is: office paper of 80 g/m2 is about 0.1 mm.
var Paper = measure.MM(0.1)

// Creep returns how far the pages of sheet s of a signature, counted from 0 at the
// outside, are moved towards the fold. Folded sheets push those inside them outwards,
// each by its own thickness; moved back by as much, all pages have the same outer
// margin once the booklet is trimmed.
func Creep(s int) measure.Length { return Paper * measure.Length(s) }

// Marks stand in the fold, clear of the text and of what printers cannot reach.
var (
	markLength = measure.MM(4)
	markEdge   = measure.MM(7)
	stapleHalf = measure.MM(1.5)
	hairline   = measure.Pt(0.25)
	markInk    = page.Colour{R: 0x1f, G: 0x1d, B: 0x1a}
)

// Booklet places the pages of a document, all of one size, two to a side on sheets
// twice as wide, with fold marks at head and foot and staple marks on the outermost
// side of each signature. The result shares the pages' items.
func Booklet(d *page.Document) *page.Document {
	out := *d
	out.Pages, out.Outline = nil, nil
	out.ExactScale, out.Duplex = true, page.FlipShortEdge
	first := 0
	for _, n := range Signatures(len(d.Pages)) {
		for i, side := range Order(n, d.RTL) {
			out.Pages = append(out.Pages, place(d, first, side, i))
		}
		first += n
	}
	return &out
}

// place makes the i-th side of a signature whose pages follow page first.
func place(d *page.Document, first int, side Side, i int) page.Page {
	half := d.Pages[0].Size
	sheet := measure.Size{Width: 2 * half.Width, Height: half.Height}
	creep := Creep(i / 2)
	p := page.Page{Size: sheet}
	if side.Left > 0 {
		p.Items = append(p.Items, &page.Group{X: creep, Items: withoutLinks(d.Pages[first+side.Left-1].Items)})
	}
	if side.Right > 0 {
		p.Items = append(p.Items, &page.Group{X: half.Width - creep, Items: withoutLinks(d.Pages[first+side.Right-1].Items)})
	}
	for _, y := range []measure.Length{markEdge, sheet.Height - markEdge - markLength} {
		p.Items = append(p.Items, &page.Box{X: half.Width - hairline/2, Y: y, Width: hairline, Height: markLength, Colour: markInk})
	}
	if i == 0 { // staples go in from the outside, a quarter from each end
		for _, y := range []measure.Length{sheet.Height / 4, sheet.Height * 3 / 4} {
			p.Items = append(p.Items, &page.Box{X: half.Width - hairline/2, Y: y - stapleHalf, Width: hairline, Height: 2 * stapleHalf, Colour: markInk})
		}
	}
	return p
}

// withoutLinks leaves out links: on a sheet to be folded they lead nowhere useful.
func withoutLinks(items []page.Item) []page.Item {
	var out []page.Item
	for _, it := range items {
		if _, ok := it.(*page.Link); !ok {
			out = append(out, it)
		}
	}
	return out
}
