package sewing

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// TestCommonPractice holds the default draft to the sizes in common use. They have no
// source and are no standard: common practice.
func TestCommonPractice(t *testing.T) {
	p, err := Draft(Default())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what      string
		got, want Length
	}{
		{"body length", p.Pieces[Body].Length, 60 * CM},
		{"body width", p.Pieces[Body].Width, 30 * CM},
		{"pouch", p.Pouch, 15 * CM},
		{"hem", p.Measures.Hem, 1 * CM},
		{"leg curve across", p.LegAcross, 8 * CM},
		{"leg curve up", p.LegUp, 8 * CM},
		{"belt length", p.Pieces[Belt].Length, 80 * CM},
		{"belt width", p.Pieces[Belt].Width, 6 * CM},
		{"belt turn", beltTurn, 15 * MM},
		{"cap length", p.Pieces[Cap].Width, 30 * CM},
		{"cap width", p.Pieces[Cap].Length, 15 * CM},
		{"corner of the cap left free", cornerFree, 12700},
	} {
		if c.got != c.want {
			t.Errorf("%s: %s cm, want %s cm", c.what, c.got.Centimetres(), c.want.Centimetres())
		}
	}
	if p.Pieces[Belt].Count != 3 || p.Pieces[Body].Count != 1 || p.Pieces[Cap].Count != 1 {
		t.Error("a carrier is one body, three belts and one cap")
	}
}

// TestLegCurveAsDrawn measures the cutting line itself: it leaves the side 8 cm above the
// fold, reaches 8 cm in on it, and is round within 0.03 %.
func TestLegCurveAsDrawn(t *testing.T) {
	p, _ := Draft(Default())
	body := p.Pieces[Body]
	fold := body.Length - p.Pouch
	in := Length(0)
	for _, q := range body.Marks[0].Chords() {
		if q.X > body.Width/2 && q.Y > fold-8*CM+1 && q.Y < fold+8*CM-1 && q.X < body.Width {
			r := math.Hypot(float64(body.Width-q.X), float64(q.Y-fold))
			if math.Abs(r-float64(8*CM)) > 0.0003*float64(8*CM) {
				t.Fatalf("at %v the curve is %.3f mm from the end of the fold", q, r/1000)
			}
			in = max(in, body.Width-q.X)
		}
	}
	if in != 8*CM {
		t.Errorf("the curve reaches %s cm in", in.Centimetres())
	}
}

// anyMeasures draws measures that can be drafted.
func anyMeasures(r *rand.Rand) Measures {
	for {
		var m Measures
		for _, g := range Ranges {
			*g.Of(&m) = g.Low + Length(r.Int64N(int64(g.High-g.Low+1)))
		}
		m.ShrinkAlong, m.ShrinkAcross = r.IntN(MostShrink+1), r.IntN(MostShrink+1)
		if m.Check() == nil {
			return m
		}
	}
}

func measured(p Path) float64 {
	var l float64
	c := p.Chords()
	for i := 1; i < len(c); i++ {
		l += math.Hypot(float64(c[i].X-c[i-1].X), float64(c[i].Y-c[i-1].Y))
	}
	return l
}

// TestLaws holds every draft to what must be true of any pattern.
func TestLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		m := anyMeasures(r)
		p, err := Draft(m)
		if err != nil {
			t.Fatal(err)
		}
		for _, j := range p.Joins {
			// Rounding up for shrinkage moves a point by less than a micrometre.
			if a, b := measured(j.A), measured(j.B); a < float64(5*MM) || math.Abs(a-b) > 5 && !strings.HasPrefix(j.Name, "belt end") {
				t.Fatalf("%+v: %s joins %.3f mm to %.3f mm", m, j.Name, a/1000, b/1000)
			}
			if a, b := measured(j.A), measured(j.B); j.Name == "belt end" && m.ShrinkAcross == m.ShrinkAlong && math.Abs(a-b) > 5 {
				t.Fatalf("belt end joins %.3f mm to %.3f mm", a/1000, b/1000)
			}
		}
		for _, pc := range p.Pieces {
			cut := pc.Marks[0]
			if cut.Style != Cut || cut.Start != cut.End() {
				t.Fatalf("%s: the cutting line is not closed", pc.Kind.Name())
			}
			for _, k := range pc.Marks {
				for _, q := range k.Chords() {
					if q.X < 0 || q.Y < 0 || q.X > pc.Width || q.Y > pc.Length {
						t.Fatalf("%+v: %s: a line of style %d leaves the piece at %v", m, pc.Kind.Name(), k.Style, q)
					}
				}
			}
		}
	}
}

// TestShrinkage: what is left of each cut side after washing is the unshrunk size, to a micrometre.
func TestShrinkage(t *testing.T) {
	m := Default()
	m.ShrinkAlong, m.ShrinkAcross = 80, 35
	p, err := Draft(m)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [3]Rect{{30 * CM, 60 * CM}, {6 * CM, 80 * CM}, {30 * CM, 15 * CM}} {
		pc := p.Pieces[i]
		if got := pc.Length * (1000 - 80) / 1000; got-want.Length > 1 || got < want.Length {
			t.Errorf("%s: %d after washing, want %d", pc.Kind.Name(), got, want.Length)
		}
		if got := pc.Width * (1000 - 35) / 1000; got-want.Width > 1 || got < want.Width {
			t.Errorf("%s: %d after washing, want %d", pc.Kind.Name(), got, want.Width)
		}
	}
}

// TestRefused: what cannot be drafted is refused with what, why and how to mend it.
func TestRefused(t *testing.T) {
	for _, r := range Ranges {
		for _, v := range []Length{r.Low - 1, r.High + 1, 0, -1} {
			m := Default()
			*r.Of(&m) = v
			_, err := Draft(m)
			if err == nil {
				t.Fatalf("%s of %d is drafted", r.Name, v)
			}
			for _, part := range []string{r.Name, "would not hold", "measure again"} {
				if !strings.Contains(err.Error(), part) {
					t.Errorf("%q does not say %q", err, part)
				}
			}
		}
	}
	m := Default()
	m.Thigh, m.Hips = 20*CM, 20*CM
	if _, err := Draft(m); err == nil || !strings.Contains(err.Error(), "seat") {
		t.Errorf("a body that is all leg curve: %v", err)
	}
	m = Default()
	m.ShrinkAlong = 151
	if _, err := Draft(m); err == nil || !strings.Contains(err.Error(), "wash") {
		t.Errorf("cloth that shrinks by more than can be: %v", err)
	}
}

// TestTilesJoin: laid side by side, the windows show every line of the pattern once or,
// on the strips to glue, twice at the same place; crosses lie on crosses.
func TestTilesJoin(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := range 60 {
		m := Default()
		if n > 0 {
			m = anyMeasures(r)
		}
		p, err := Draft(m)
		if err != nil {
			t.Fatal(err)
		}
		window := Rect{1859 * MM / 10, 2430 * MM / 10}
		if n%2 == 1 {
			window = Rect{2730 * MM / 10, 1560 * MM / 10}
		}
		tl := p.Tile(window)
		var whole, shown float64
		for _, pc := range p.Pieces {
			for _, k := range pc.Marks {
				whole += measured(k.Path)
			}
		}
		crosses := map[Point]int{}
		for _, tile := range tl.Tiles {
			for _, l := range tile.Lines {
				for i := 1; i < len(l.Points); i++ {
					a, b := l.Points[i-1], l.Points[i]
					for _, q := range []Point{a, b} {
						if q.X < 0 || q.Y < 0 || q.X > window.Width || q.Y > window.Length {
							t.Fatalf("a line leaves its sheet at %v", q)
						}
					}
					// Count each part of a line on the one tile whose own field it lies in.
					shown += own(a, b, tile, tl)
				}
			}
			for _, c := range tile.Crosses {
				crosses[Point{tile.X + c.X, tile.Y + c.Y}]++
			}
		}
		if math.Abs(whole-shown) > whole*1e-5 {
			t.Fatalf("%+v: the pattern has %.1f mm of lines, its sheets show %.1f mm", m, whole/1000, shown/1000)
		}
		if n == 0 && (len(tl.Tiles) != 8 || tl.Columns != 2) {
			t.Errorf("the pattern in common use takes %d sheets of A4 in %d columns, not 8 in 2", len(tl.Tiles), tl.Columns)
		}
		shared := 0
		for _, c := range crosses {
			if c > 1 {
				shared++
			}
		}
		if len(tl.Tiles) > 1 && shared == 0 {
			t.Error("no cross lies on the cross of a neighbour")
		}
	}
}

// own returns how much of a chord lies in a tile's own field: its window without the
// strips that the sheets to the right and below show again.
func own(a, b Point, tile Tile, tl *Tiling) float64 {
	field := tl.Window
	if tile.Column+1 < tl.Columns {
		field.Width -= Overlap
	}
	if tile.Row+1 < tl.Rows {
		field.Length -= Overlap
	}
	if a.X == b.X && a.X == field.Width && tile.Column+1 < tl.Columns || a.Y == b.Y && a.Y == field.Length && tile.Row+1 < tl.Rows {
		return 0 // it is the next sheet's
	}
	var l float64
	for _, part := range Clip([]Point{a, b}, 0, 0, field) {
		l += math.Hypot(float64(part[1].X-part[0].X), float64(part[1].Y-part[0].Y))
	}
	return l
}
