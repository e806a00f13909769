package sewing

import "fmt"

// An Order is what is to be cut, and from what.
type Order struct {
	Count  int    // carriers
	Width  Length // of the cloth, without its selvedges
	OneWay bool   // the print, nap or stripe has an up and a down
}

// Limits of an order.
const (
	MostCarriers = 500
	WidestCloth  = 3 * M
)

// A Placed is one piece on the cloth: X across it, Y along it.
type Placed struct {
	Kind          Kind
	Turned        bool // by a quarter, grain across the cloth
	X, Y          Length
	Width, Length Length // across and along the cloth
}

// A Section is a stretch of cloth of full width, cut alike Times times over.
type Section struct {
	Carriers int // in one of them
	Times    int
	Length   Length // of one of them
	Placed   []Placed
}

// A Plan says how an order is cut: its sections, one after the other.
type Plan struct {
	Order    Order
	Sizes    [3]Rect // of the pieces, by Kind
	Sections []Section
	Length   Length // of cloth
	// Bound is a length that no plan for this order can be shorter than, proved in Bound.
	// When it is equal to Length, the plan is the best there is.
	Bound Length
}

// A Rect is how much room a piece takes: across the cloth and along it.
type Rect struct{ Width, Length Length }

// Rects returns the rooms of the pieces. The leg curves are cut after the pouch is
// folded, so the body takes its whole rectangle.
func (p *Pattern) Rects() [3]Rect {
	var r [3]Rect
	for i, pc := range p.Pieces {
		r[i] = Rect{pc.Width, pc.Length}
	}
	return r
}

// Best reports whether no plan can use less cloth.
func (p *Plan) Best() bool { return p.Length == p.Bound }

// Gap is how much longer the plan is than the bound, in thousandths of the bound, rounded up.
func (p *Plan) Gap() int { return int(((p.Length-p.Bound)*1000 + p.Bound - 1) / p.Bound) }

// Waste returns the cloth of the plan that lies in no piece, in thousandths, rounded to the nearest.
func (p *Plan) Waste() int {
	cloth := int64(p.Length) * int64(p.Order.Width)
	return int(((cloth-p.PieceArea())*1000 + cloth/2) / cloth)
}

// PieceArea returns the area of all pieces in square micrometres.
func (p *Plan) PieceArea() int64 { return int64(p.Order.Count) * areaEach(p.Sizes) }

func areaEach(sizes [3]Rect) int64 {
	var a int64
	for k, r := range sizes {
		a += int64(Each[k]) * int64(r.Width) * int64(r.Length)
	}
	return a
}

// Check refuses an order that cannot be planned.
func (o Order) Check(sizes [3]Rect) error {
	if o.Count < 1 || o.Count > MostCarriers {
		return fmt.Errorf("count is %d: a plan is made for 1 to %d carriers; for more, plan the cloth again for the rest", o.Count, MostCarriers)
	}
	if o.Width > WidestCloth {
		return fmt.Errorf("width is %s cm: cloth is at most %s cm wide; give the width in centimetres", o.Width.Centimetres(), WidestCloth.Centimetres())
	}
	var widest Length
	for k, r := range sizes {
		w := r.Width
		if Kind(k) == Cap && !o.OneWay {
			w = min(w, r.Length)
		}
		widest = max(widest, w)
	}
	if o.Width < widest {
		return fmt.Errorf("width is %s cm: the widest piece needs %s cm with its grain along the cloth; take wider cloth",
			o.Width.Centimetres(), widest.Centimetres())
	}
	return nil
}

// A way is one way to lay a piece.
type way struct {
	kind   Kind
	turned bool
	Rect
}

// ways lists how pieces may lie. Body and belts carry weight, so their grain runs along
// the cloth, where it gives least. The cap carries none: on plain cloth it may also be
// turned by a quarter. On one-way cloth everything stands upright.
func (o Order) ways(sizes [3]Rect) []way {
	var out []way
	add := func(w way) {
		if w.Width <= o.Width {
			out = append(out, w)
		}
	}
	for _, k := range Kinds {
		add(way{k, false, sizes[k]})
	}
	if c := sizes[Cap]; !o.OneWay && c.Width != c.Length {
		add(way{Cap, true, Rect{c.Length, c.Width}})
	}
	return out
}

// together is the most carriers that one section is searched for. More carriers are cut
// as several sections.
const together = 20

// MakePlan returns a short plan for the pieces of a pattern, and a proved bound.
func MakePlan(p *Pattern, o Order) (*Plan, error) {
	sizes := p.Rects()
	if err := o.Check(sizes); err != nil {
		return nil, err
	}
	pl := &Plan{Order: o, Sizes: sizes, Bound: Bound(sizes, o)}
	// best[n] is the shortest sum of sections for n carriers; it ends with last[n].
	best, last := make([]Length, o.Count+1), make([]int, o.Count+1)
	found := make([]*Section, min(o.Count, together)+1)
	for n := 1; n <= o.Count; n++ {
		for m := 1; m < min(n, len(found)); m++ {
			if l := best[n-m] + best[m]; found[m] != nil && (last[n] == 0 || l < best[n]) {
				best[n], last[n] = l, m
			}
		}
		if n < len(found) {
			part := Order{n, o.Width, o.OneWay}
			s, known := (*Section)(nil), false
			if sizes == defaultRects() {
				s, known = stored()[part]
			}
			if !known {
				s = section(sizes, part, best[n])
			}
			if s != nil {
				found[n], best[n], last[n] = s, s.Length, n
			}
		}
	}
	times := make([]int, len(found))
	for n := o.Count; n > 0; n -= last[n] {
		times[last[n]]++
	}
	for m := len(found) - 1; m > 0; m-- {
		if times[m] > 0 {
			s := *found[m]
			s.Times = times[m]
			pl.Sections = append(pl.Sections, s)
			pl.Length += s.Length * Length(s.Times)
		}
	}
	// What may be laid one way may be laid on plain cloth, too.
	if !o.OneWay {
		o.OneWay = true
		if strict, err := MakePlan(p, o); err == nil && strict.Length < pl.Length {
			pl.Length, pl.Sections = strict.Length, strict.Sections
		}
	}
	return pl, nil
}
