package drawing

import "math"

// A pen draws segments. It starts each part of a path with one MoveTo and leaves
// out moves that draw nothing.
type pen struct {
	segments  []Segment
	start, at Point
	down      bool // a part has begun
}

func (p *pen) moveTo(to Point) {
	p.start, p.at, p.down = to, to, false
}

func (p *pen) lineTo(to Point) { p.add(LineTo, to) }

func (p *pen) cubicTo(c1, c2, to Point) { p.add(CubicTo, c1, c2, to) }

// quadTo draws a quadratic curve as the cubic that is the same curve.
func (p *pen) quadTo(c, to Point) {
	p.cubicTo(between(p.at, c, 2.0/3), between(to, c, 2.0/3), to)
}

func (p *pen) close() {
	p.add(Close)
	p.at, p.down = p.start, false
}

func (p *pen) add(op Op, ps ...Point) {
	if !p.down {
		p.segments = append(p.segments, Segment{Op: MoveTo, P: [3]Point{p.at}})
		p.down = true
	}
	s := Segment{Op: op}
	if n := copy(s.P[:], ps); n > 0 {
		p.at = ps[n-1]
	}
	p.segments = append(p.segments, s)
}

// An arc is the part of an ellipse that joins the pen's place to an end.
type arc struct {
	rx, ry       float64
	degrees      float64 // turn of the ellipse's x axis
	large, sweep bool
}

// arcTo draws an arc as cubics of at most a quarter turn each, which stay within
// 0.03 % of the radius from the ellipse. SVG 1.1, appendix F.6.
func (p *pen) arcTo(a arc, to Point) {
	from := p.at
	if from == to { // F.6.2: the arc is left out
		return
	}
	if a.rx == 0 || a.ry == 0 {
		p.lineTo(to)
		return
	}
	sin, cos := math.Sincos(a.degrees * math.Pi / 180)
	// F.6.5 step 1: half the chord, in the directions of the ellipse's axes.
	hx, hy := (from.X-to.X)/2, (from.Y-to.Y)/2
	x, y := cos*hx+sin*hy, cos*hy-sin*hx
	// On the ellipse's own scale it is a unit circle, which halves the work.
	rx, ry := a.rx, a.ry
	ux, uy := x/rx, y/ry
	d := ux*ux + uy*uy
	if d > 1 { // F.6.6: the ellipse is too small, and grows until it reaches
		grow := math.Sqrt(d)
		rx, ry, ux, uy, d = rx*grow, ry*grow, ux/grow, uy/grow, 1
	}
	// Step 2: the centre lies off the middle of the chord, at right angles to it.
	k := math.Sqrt((1 - d) / d)
	if a.large == a.sweep {
		k = -k
	}
	cx, cy := k*uy, -k*ux
	// Steps 3 and 4: the centre, the first angle and the angle to go.
	first := math.Atan2(uy-cy, ux-cx)
	turn := math.Atan2(-uy-cy, -ux-cx) - first
	if a.sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !a.sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	place := func(ux, uy float64) Point {
		ex, ey := (ux+cx)*rx, (uy+cy)*ry
		return Point{cos*ex - sin*ey + (from.X+to.X)/2, sin*ex + cos*ey + (from.Y+to.Y)/2}
	}
	n := max(1, int(math.Ceil(math.Abs(turn)/(math.Pi/2)-1e-9)))
	step := turn / float64(n)
	reach := 4.0 / 3 * math.Tan(step/4)
	for i := range n {
		s0, c0 := math.Sincos(first + float64(i)*step)
		s1, c1 := math.Sincos(first + float64(i+1)*step)
		end := to
		if i < n-1 {
			end = place(c1, s1)
		}
		p.cubicTo(place(c0-reach*s0, s0+reach*c0), place(c1+reach*s1, s1-reach*c1), end)
	}
}

// between returns the point that lies part of the way from a to b.
func between(a, b Point, part float64) Point {
	return Point{a.X + (b.X-a.X)*part, a.Y + (b.Y-a.Y)*part}
}
