package drawing

import (
	"math"
	"testing"
)

// Arcs against the endpoint-to-centre formulas of SVG 1.1, appendix F.6.5 and F.6.6,
// worked here in the appendix's own terms and order.
func TestArc(t *testing.T) {
	const tolerance = 1e-3 // of the radius
	from := Point{3, -4}
	for _, to := range []Point{{23, 6}, {3, 16}, {-1, -4.5}, {90, 70}} {
		for _, r := range []Point{{10, 10}, {30, 12}, {12, 30}, {2, 1}, {500, 400}} {
			for _, degrees := range []float64{0, 30, -75, 90, 400} {
				for flags := range 4 {
					a := arc{r.X, r.Y, degrees, flags&1 > 0, flags&2 > 0}
					e := centre(from, to, a)
					p := pen{}
					p.moveTo(from)
					p.arcTo(a, to)
					if p.at != to {
						t.Errorf("%+v to %v ends at %v", a, to, p.at)
					}
					last, travelled := e.first, 0.0
					at := from
					for _, s := range p.segments[1:] {
						for i := 1; i <= 16; i++ {
							q := cubicAt(at, s, float64(i)/16)
							radius, angle := e.polar(q)
							if math.Abs(radius-1) > tolerance {
								t.Fatalf("%+v to %v: %v is off the ellipse by %g of its radius", a, to, q, radius-1)
							}
							travelled += math.Remainder(angle-last, 2*math.Pi)
							last = angle
						}
						at = s.P[2]
					}
					if math.Abs(travelled-e.turn) > tolerance {
						t.Errorf("%+v to %v turns by %g, want %g", a, to, travelled, e.turn)
					}
				}
			}
		}
	}
}

// An ellipse in centre form.
type ellipse struct {
	cx, cy, rx, ry, phi, first, turn float64
}

func centre(p1, p2 Point, a arc) ellipse {
	phi := a.degrees * math.Pi / 180
	sin, cos := math.Sin(phi), math.Cos(phi)
	// F.6.5.1
	x1 := cos*(p1.X-p2.X)/2 + sin*(p1.Y-p2.Y)/2
	y1 := -sin*(p1.X-p2.X)/2 + cos*(p1.Y-p2.Y)/2
	// F.6.6.2 and F.6.6.3
	rx, ry := a.rx, a.ry
	if lambda := x1*x1/(rx*rx) + y1*y1/(ry*ry); lambda > 1 {
		rx, ry = math.Sqrt(lambda)*rx, math.Sqrt(lambda)*ry
	}
	// F.6.5.2
	square := (rx*rx*ry*ry - rx*rx*y1*y1 - ry*ry*x1*x1) / (rx*rx*y1*y1 + ry*ry*x1*x1)
	root := math.Sqrt(max(0, square))
	if a.large == a.sweep {
		root = -root
	}
	cx1, cy1 := root*rx*y1/ry, -root*ry*x1/rx
	// F.6.5.3
	e := ellipse{cx: cos*cx1 - sin*cy1 + (p1.X+p2.X)/2, cy: sin*cx1 + cos*cy1 + (p1.Y+p2.Y)/2, rx: rx, ry: ry, phi: phi}
	// F.6.5.5 and F.6.5.6
	_, e.first = e.polar(p1)
	_, end := e.polar(p2)
	e.turn = math.Mod(end-e.first, 2*math.Pi)
	if a.sweep && e.turn < 0 {
		e.turn += 2 * math.Pi
	}
	if !a.sweep && e.turn > 0 {
		e.turn -= 2 * math.Pi
	}
	return e
}

// polar returns how far a point is from the centre, 1 on the ellipse, and its angle, F.6.3.1.
func (e ellipse) polar(p Point) (radius, angle float64) {
	sin, cos := math.Sin(e.phi), math.Cos(e.phi)
	x := (cos*(p.X-e.cx) + sin*(p.Y-e.cy)) / e.rx
	y := (-sin*(p.X-e.cx) + cos*(p.Y-e.cy)) / e.ry
	return math.Hypot(x, y), math.Atan2(y, x)
}

func cubicAt(from Point, s Segment, t float64) Point {
	u := 1 - t
	at := func(a, b, c, d float64) float64 { return u*u*u*a + 3*u*u*t*b + 3*u*t*t*c + t*t*t*d }
	return Point{at(from.X, s.P[0].X, s.P[1].X, s.P[2].X), at(from.Y, s.P[0].Y, s.P[1].Y, s.P[2].Y)}
}

// The forms of SVG 1.1, sections 9.2 to 9.4.
func TestRoundShapes(t *testing.T) {
	var p pen
	p.ellipse(10, 20, 30, 15)
	at := Point{40, 20}
	for _, s := range p.segments[1:5] {
		for i := 0; i <= 16; i++ {
			q := cubicAt(at, s, float64(i)/16)
			if r := math.Hypot((q.X-10)/30, (q.Y-20)/15); math.Abs(r-1) > 1e-3 {
				t.Errorf("%v is off the ellipse by %g of its radius", q, r-1)
			}
		}
		at = s.P[2]
	}
	tests := []struct {
		section, body string
		corner        Point // end of the top edge
		ends          int
	}{
		{"9.2 both radii", `<rect width="20" height="10" rx="4" ry="2"/>`, Point{16, 0}, 10},
		{"9.2 rx stands for both", `<rect width="20" height="10" rx="4"/>`, Point{16, 0}, 10},
		{"9.2 ry stands for both", `<rect width="20" height="10" ry="4"/>`, Point{16, 0}, 10},
		{"9.2 at most half", `<rect width="20" height="10" rx="99" ry="1"/>`, Point{10, 0}, 10},
		{"9.2 a radius of 0 is a sharp corner", `<rect width="20" height="10" rx="0" ry="3"/>`, Point{20, 0}, 5},
	}
	for _, tt := range tests {
		path := read(t, tt.section, inSVG(tt.body)).Shapes[0].Path
		if len(path) != tt.ends || path[1].P[0] != tt.corner {
			t.Errorf("%s: %v", tt.section, path)
		}
	}
}
