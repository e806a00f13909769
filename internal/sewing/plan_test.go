package sewing

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// checkPlan is a checker of its own: it knows the order and the pieces and trusts nothing
// of the plan.
func checkPlan(t *testing.T, p *Pattern, pl *Plan) {
	t.Helper()
	o := pl.Order
	var total, carriers Length
	laid := [3]int{}
	var area int64
	for _, s := range pl.Sections {
		total += s.Length * Length(s.Times)
		carriers += Length(s.Carriers * s.Times)
		for i, q := range s.Placed {
			laid[q.Kind] += s.Times
			area += int64(q.Width) * int64(q.Length) * int64(s.Times)
			w, l := p.Pieces[q.Kind].Width, p.Pieces[q.Kind].Length
			if q.Turned {
				if q.Kind != Cap {
					t.Fatalf("%+v: a %s lies across the grain", o, q.Kind.Name())
				}
				if o.OneWay {
					t.Fatalf("%+v: a piece is turned on one-way cloth", o)
				}
				w, l = l, w
			}
			if q.Width != w || q.Length != l {
				t.Fatalf("%+v: a %s is laid %d by %d", o, q.Kind.Name(), q.Width, q.Length)
			}
			if q.X < 0 || q.Y < 0 || q.X+q.Width > o.Width || q.Y+q.Length > s.Length {
				t.Fatalf("%+v: a %s leaves the cloth: %+v", o, q.Kind.Name(), q)
			}
			for _, r := range s.Placed[:i] {
				if q.X < r.X+r.Width && r.X < q.X+q.Width && q.Y < r.Y+r.Length && r.Y < q.Y+q.Length {
					t.Fatalf("%+v: %+v overlaps %+v", o, q, r)
				}
			}
		}
	}
	if total != pl.Length || int(carriers) != o.Count {
		t.Fatalf("%+v: sections are %d long for %d carriers; the plan says %d", o, total, carriers, pl.Length)
	}
	for k, n := range laid {
		if n != Each[k]*o.Count {
			t.Fatalf("%+v: %d of %s", o, n, Kind(k).Name())
		}
	}
	if area != pl.PieceArea() {
		t.Fatalf("%+v: the pieces' area is %d, not %d", o, area, pl.PieceArea())
	}
	cloth := int64(pl.Length) * int64(o.Width)
	if waste := cloth - area; waste < 0 || int64(pl.Waste()) != (waste*1000+cloth/2)/cloth {
		t.Fatalf("%+v: pieces and waste are not the cloth", o)
	}
	if pl.Bound > pl.Length || int64(pl.Bound)*int64(o.Width) < area {
		t.Fatalf("%+v: bound %d, plan %d", o, pl.Bound, pl.Length)
	}
	if shelf := shelfLength(p, o); pl.Length > shelf {
		t.Fatalf("%+v: %d long, but plain shelves need only %d", o, pl.Length, shelf)
	}
	if pl.Best() != (pl.Gap() == 0) {
		t.Fatalf("%+v: gap %d", o, pl.Gap())
	}
}

// shelfLength is the cloth that rows of one kind of piece each take, as anyone would lay them.
func shelfLength(p *Pattern, o Order) Length {
	var l Length
	for _, pc := range p.Pieces {
		per := int(o.Width / pc.Width)
		if per == 0 {
			return 1 << 62 // the cap goes only across
		}
		l += Length((pc.Count*o.Count+per-1)/per) * pc.Length
	}
	return l
}

func plan(t *testing.T, p *Pattern, o Order) *Plan {
	t.Helper()
	pl, err := MakePlan(p, o)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, p, pl)
	return pl
}

// TestTwoOnAMetreAndAHalf: 1.5 m of cloth is enough for two carriers (common practice).
func TestTwoOnAMetreAndAHalf(t *testing.T) {
	p, _ := Draft(Default())
	for _, w := range []Length{70 * CM, 90 * CM, 110 * CM, 140 * CM} {
		for _, oneWay := range []bool{false, true} {
			if pl := plan(t, p, Order{2, w, oneWay}); pl.Length > 150*CM {
				t.Errorf("two carriers on %s cm need %s cm", w.Centimetres(), pl.Length.Centimetres())
			}
		}
	}
}

func TestPlansOfAnyPattern(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 120 {
		p, err := Draft(anyMeasures(r))
		if err != nil {
			t.Fatal(err)
		}
		plan(t, p, Order{1 + r.IntN(5), 60*CM + Length(r.Int64N(int64(120*CM))), r.IntN(2) == 0})
	}
}

// TestManyCarriers: the largest order is planned, and honestly.
func TestManyCarriers(t *testing.T) {
	p, _ := Draft(Default())
	for _, o := range []Order{{20, 90 * CM, false}, {137, 140 * CM, true}, {500, 110 * CM, false}} {
		pl := plan(t, p, o)
		if pl.Gap() > 30 {
			t.Errorf("%+v: %s cm is %d thousandths over the bound", o, pl.Length.Centimetres(), pl.Gap())
		}
	}
}

func TestOrdersRefused(t *testing.T) {
	p, _ := Draft(Default())
	for _, c := range []struct {
		order Order
		parts []string
	}{
		{Order{0, 90 * CM, false}, []string{"count", "1 to 500"}},
		{Order{501, 90 * CM, false}, []string{"count", "for the rest"}},
		{Order{2, 20 * CM, false}, []string{"width", "widest piece", "take wider cloth"}},
		{Order{2, 301 * CM, false}, []string{"width", "centimetres"}},
	} {
		_, err := MakePlan(p, c.order)
		if err == nil {
			t.Fatalf("%+v is planned", c.order)
		}
		for _, part := range c.parts {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%q does not say %q", err, part)
			}
		}
	}
	pl := plan(t, p, Order{2, 90 * CM, false})
	for _, price := range []string{"x", "-1", "1/2", "1e3", "2000000"} {
		if _, err := p.NeedFor(pl, price); err == nil || !strings.Contains(err.Error(), "4.50") {
			t.Errorf("price %q: %v", price, err)
		}
	}
	need, err := p.NeedFor(pl, "4.50")
	if err != nil || need.Cost != "5.40" || need.Each != "2.70" || need.Cloth != 120*CM {
		t.Errorf("1.20 m at 4.50 are 5.40, 2.70 each: %+v, %v", need, err)
	}
}

// TestExhaustive compares plans for one and two carriers with every packing there is:
// it looks for one on shorter cloth, piece by piece and place by place.
func TestExhaustive(t *testing.T) {
	p, _ := Draft(Default())
	for n := 1; n <= 2; n++ {
		for _, w := range []Length{50, 60, 70, 90, 110, 140} {
			for _, oneWay := range []bool{false, true} {
				o := Order{n, w * CM, oneWay}
				pl := plan(t, p, o)
				if !packs(p, o, pl.Length) {
					t.Errorf("%+v: the search over everything does not even find %s cm", o, pl.Length.Centimetres())
				}
				if packs(p, o, pl.Length-1) {
					t.Errorf("%+v: the plan is %s cm, but shorter cloth does", o, pl.Length.Centimetres())
				}
			}
		}
	}
}

// packs reports whether the pieces go on a length of cloth at all. Any packing can be
// slid down and left until each piece rests on others or the edges, so it is enough to
// try places that are sums of the sides of pieces. Pieces of one kind are tried in order.
func packs(p *Pattern, o Order, length Length) bool {
	type piece struct{ w, l Length }
	var todo [][]piece // ways of each piece
	var kinds []Kind
	for _, k := range []Kind{Belt, Body, Cap} {
		pc := p.Pieces[k]
		ws := []piece{{pc.Width, pc.Length}}
		if k == Cap && !o.OneWay {
			ws = append(ws, piece{pc.Length, pc.Width})
		}
		for range Each[k] * o.Count {
			todo, kinds = append(todo, ws), append(kinds, k)
		}
	}
	places := func(limit Length, side func(piece) Length) []Length {
		reach := map[Length]bool{0: true}
		for _, ws := range todo {
			var more []Length
			for at := range reach {
				for _, q := range ws {
					if v := at + side(q); v < limit {
						more = append(more, v)
					}
				}
			}
			for _, v := range more {
				reach[v] = true
			}
		}
		var out []Length
		for v := range reach {
			out = append(out, v)
		}
		slices.Sort(out)
		return out
	}
	ys := places(length, func(q piece) Length { return q.l })
	xs := places(o.Width, func(q piece) Length { return q.w })

	// First the places along the cloth: no cut across it may meet more than its width.
	// Only then the places across.
	type laid struct {
		q    piece
		x, y Length
	}
	out := make([]laid, len(todo))
	fits := func(i int) bool { // across, at the y of each piece so far
		for _, at := range out[:i] {
			var sum Length
			for _, b := range out[:i] {
				if b.y <= at.y && at.y < b.y+b.q.l {
					sum += b.q.w
				}
			}
			if sum > o.Width {
				return false
			}
		}
		return true
	}
	var across func(i int) bool
	across = func(i int) bool {
		if i == len(out) {
			return true
		}
		for _, x := range xs {
			if x+out[i].q.w > o.Width {
				break
			}
			if i > 0 && kinds[i] == kinds[i-1] && out[i].y == out[i-1].y && out[i].q == out[i-1].q && x <= out[i-1].x {
				continue
			}
			free := true
			for _, b := range out[:i] {
				if x < b.x+b.q.w && b.x < x+out[i].q.w && out[i].y < b.y+b.q.l && b.y < out[i].y+out[i].q.l {
					free = false
					break
				}
			}
			if free {
				out[i].x = x
				if across(i + 1) {
					return true
				}
			}
		}
		return false
	}
	var along func(i int) bool
	along = func(i int) bool {
		if i == len(out) {
			return across(0)
		}
		for _, q := range todo[i] {
			for _, y := range ys {
				if y+q.l > length {
					break
				}
				if i > 0 && kinds[i] == kinds[i-1] && out[i-1].q == q && y < out[i-1].y {
					continue
				}
				out[i] = laid{q, 0, y}
				if fits(i+1) && along(i+1) {
					return true
				}
			}
		}
		return false
	}
	return along(0)
}
