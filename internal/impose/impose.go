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

// mark is how long a fold mark is and how far it stays from the edge.
var (
	markLength = measure.MM(4)
	markEdge   = measure.MM(7)
)

var markInk = page.Colour{R: 0x1f, G: 0x1d, B: 0x1a}

// Booklet places the pages of a document, all of one size, two to a side on sheets
// twice as wide, with fold marks at head and foot. The result shares the pages' items.
func Booklet(d *page.Document) *page.Document {
	out := *d
	out.Pages, out.Outline = nil, nil
	out.ExactScale, out.Duplex = true, page.FlipShortEdge
	if len(d.Pages) == 0 {
		return &out
	}
	half := d.Pages[0].Size
	sheet := measure.Size{Width: 2 * half.Width, Height: half.Height}
	for _, side := range Order(len(d.Pages), d.RTL) {
		p := page.Page{Size: sheet}
		for i, n := range []int{side.Left, side.Right} {
			if n > 0 {
				p.Items = append(p.Items, &page.Group{X: half.Width * measure.Length(i), Items: withoutLinks(d.Pages[n-1].Items)})
			}
		}
		for _, y := range []measure.Length{markEdge, sheet.Height - markEdge - markLength} {
			p.Items = append(p.Items, &page.Box{X: half.Width - 125, Y: y, Width: 250, Height: markLength, Colour: markInk})
		}
		out.Pages = append(out.Pages, p)
	}
	return &out
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
