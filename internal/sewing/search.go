package sewing

import (
	"cmp"
	"slices"
)

// How wide the search is: how many half-laid cloths are kept at each step, and how many
// of them with the same pieces left.
const (
	keepAll = 300
)

// section lays the pieces for a few carriers on less cloth than most, or returns nil
// when the search does not find how; with most 0, shelves are the first plan. It
// asks for shorter and shorter cloth, halving what lies between the proved bound and
// what it has. A section as long as the bound is the best there is.
func section(sizes [3]Rect, o Order, most Length) *Section {
	ways := o.ways(sizes)
	var s *Section
	if most == 0 {
		s = shelves(ways, o)
		most = s.Length
	}
	lengths := sums(ways, o.Count, Bound(sizes, o), most-1)
	for low, high := 0, len(lengths); low < high; {
		mid := (low + high) / 2
		if low == 0 && high == len(lengths) {
			mid = 0 // the bound itself, which is often enough
		}
		if placed := lay(ways, o, lengths[mid], areaEach(sizes)); placed != nil {
			s = &Section{Carriers: o.Count, Times: 1, Length: lengths[mid], Placed: placed}
			high = mid
		} else {
			low = mid + 1
		}
	}
	if s != nil {
		slices.SortFunc(s.Placed, func(a, b Placed) int {
			return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X))
		})
	}
	return s
}

// shelves lays the pieces in rows by kind: never the best, but always there.
func shelves(ways []way, o Order) *Section {
	s := &Section{Carriers: o.Count, Times: 1}
	for _, k := range Kinds {
		w := ways[slices.IndexFunc(ways, func(w way) bool { return w.kind == k })]
		per := int(o.Width / w.Width)
		for i := range Each[k] * o.Count {
			if i%per == 0 {
				s.Length += w.Length
			}
			s.Placed = append(s.Placed, Placed{k, w.turned, Length(i%per) * w.Width, s.Length - w.Length, w.Width, w.Length})
		}
	}
	return s
}

// A step is one stretch of the edge of what is laid so far: cloth is free from y on.
type step struct{ x, width, y Length }

// A cloth is a half-laid cloth.
type cloth struct {
	edge  []step
	left  [3]int
	waste int64 // area that is fenced off for good
	rank  int   // among the cloths with the same pieces left
	last  Placed
	from  *cloth
}

// lay places all pieces within a length, or returns nil when the search finds no way.
// Pieces always go to the lowest place of the edge, by its left side; a place that is
// left free is waste, and no more may be wasted than there is to spare.
func lay(ways []way, o Order, length Length, each int64) []Placed {
	spare := int64(length)*int64(o.Width) - int64(o.Count)*each
	start := &cloth{edge: []step{{0, o.Width, 0}}}
	total := 0
	for k, e := range Each {
		start.left[k] = e * o.Count
		total += e * o.Count
	}
	front := []*cloth{start}
	for range total {
		var next []*cloth
		seen := map[uint64]bool{}
		for _, c := range front {
			for _, d := range c.grow(ways, length, spare) {
				if h := d.hash(); !seen[h] {
					seen[h] = true
					next = append(next, d)
				}
			}
		}
		front = best(next)
		if len(front) == 0 {
			return nil
		}
	}
	var out []Placed
	for c := front[0]; c.from != nil; c = c.from {
		out = append(out, c.last)
	}
	return out
}

// best keeps the cloths with the least waste, and not too many that are alike.
func best(cs []*cloth) []*cloth {
	by := func(a, b *cloth) int {
		return cmp.Or(cmp.Compare(a.waste, b.waste), cmp.Compare(len(a.edge), len(b.edge)))
	}
	slices.SortStableFunc(cs, by)
	like := map[[3]int]int{}
	for _, c := range cs {
		c.rank = like[c.left]
		like[c.left]++
	}
	slices.SortStableFunc(cs, func(a, b *cloth) int { return cmp.Or(cmp.Compare(a.rank, b.rank), by(a, b)) })
	return cs[:min(len(cs), keepAll)]
}

// grow returns the cloth with one more piece, in every way there is.
func (c *cloth) grow(ways []way, length Length, spare int64) []*cloth {
	var out []*cloth
	edge, waste := c.edge, c.waste
	for waste <= spare {
		i := 0
		for j, s := range edge {
			if s.y < edge[i].y {
				i = j
			}
		}
		low := edge[i]
		if low.y >= length {
			break
		}
		for _, w := range ways {
			if c.left[w.kind] == 0 || w.Width > low.width || low.y+w.Length > length {
				continue
			}
			d := &cloth{left: c.left, from: c}
			d.left[w.kind]--
			d.last = Placed{w.kind, w.turned, low.x, low.y, w.Width, w.Length}
			placed := append(slices.Clone(edge[:i]), step{low.x, w.Width, low.y + w.Length})
			if w.Width < low.width {
				placed = append(placed, step{low.x + w.Width, low.width - w.Width, low.y})
			}
			d.edge = merge(append(placed, edge[i+1:]...))
			d.waste = waste
			d.close(ways, length)
			if d.waste <= spare {
				out = append(out, d)
			}
		}
		// Or leave the lowest place free, up to the lower of its neighbours.
		up := length
		if i > 0 {
			up = min(up, edge[i-1].y)
		}
		if i+1 < len(edge) {
			up = min(up, edge[i+1].y)
		}
		waste += int64(low.width) * int64(up-low.y)
		edge = slices.Clone(edge)
		edge[i].y = up
		edge = merge(edge)
	}
	return out
}

// close fills in every place of the edge that no piece can go to any more.
func (c *cloth) close(ways []way, length Length) {
	for i := 0; i < len(c.edge); i++ {
		s := &c.edge[i]
		up := length
		if i > 0 {
			up = min(up, c.edge[i-1].y)
		}
		if i+1 < len(c.edge) {
			up = min(up, c.edge[i+1].y)
		}
		if up <= s.y || slices.ContainsFunc(ways, func(w way) bool {
			return c.left[w.kind] > 0 && w.Width <= s.width && s.y+w.Length <= length
		}) {
			continue
		}
		c.waste += int64(s.width) * int64(up-s.y)
		s.y = up
		c.edge = merge(c.edge)
		i = -1
	}
}

// merge joins neighbouring steps of one height.
func merge(edge []step) []step {
	out := edge[:0]
	for _, s := range edge {
		if n := len(out); n > 0 && out[n-1].y == s.y {
			out[n-1].width += s.width
			continue
		}
		out = append(out, s)
	}
	return out
}

// hash stands for what matters of a cloth: its edge and the pieces left (FNV-1a).
func (c *cloth) hash() uint64 {
	h := uint64(14695981039346656037)
	mix := func(v int64) { h = (h ^ uint64(v)) * 1099511628211 }
	for _, s := range c.edge {
		mix(int64(s.width))
		mix(int64(s.y))
	}
	for _, l := range c.left {
		mix(int64(l))
	}
	return h
}
