package sewing

import "math"

// stitch is how far a row of stitches lies inside a finished edge.
const stitch = 5 * MM

// body draws the body piece: its upper edge at 0, the pouch to be folded up below.
func (p *Pattern) body(d draft) {
	m := p.Measures
	w, l, hem := d.bodyWidth, d.bodyLength, m.Hem
	fold := l - d.pouch
	pc := &p.Pieces[Body]
	pc.Width, pc.Length = w, l

	// The pouch is folded up first and the leg curve cut through both layers: on the
	// flat piece it is two quarter circles about each end of the fold. The hem is turned
	// in along the cutting line at its own width.
	pc.mark(Cut, bodyEdge(w, l, fold, d.leg, 0))
	pc.mark(Turn, bodyEdge(w, l, fold, d.legOpen, hem))

	// The fold of the pouch, and the line that comes to lie under the ear.
	upper := fold - m.Back
	pc.mark(Fold, line(d.leg, fold, w-d.leg, fold))
	pc.mark(Fold, line(0, upper, w, upper))

	// The side seams of the pouch, from its finished edge to the leg opening.
	in, top := hem+stitch, d.pouch-hem
	end := rise(d.legOpen, in)
	for _, x := range []Length{in, w - in} {
		back, front := line(x, fold-top, x, fold-end), line(x, fold+top, x, fold+end)
		pc.mark(Sew, back)
		pc.mark(Sew, front)
		p.Joins = append(p.Joins, Join{"pouch side", back, front})
	}
	// The edges of the leg openings, back layer on front layer.
	for _, s := range []Length{1, -1} {
		c := legCurve(Point{(w - s*w) / 2, fold}, s, d.leg, 0)
		back := Path{Start: c[0]}
		back.curve(c[1], c[2], c[3])
		p.Joins = append(p.Joins, Join{"leg opening", back, back.Map(func(q Point) Point { return Point{q.X, 2*fold - q.Y} })})
	}

	// The belts lie in the middle of the pouch's side seams, so that both layers carry;
	// the ends of the neck loop at the corners of the upper edge.
	strip := d.beltWidth - 2*beltTurn
	low := fold - d.legOpen - sideSeam/2 - strip/2
	for _, at := range []struct{ x, y, w, h Length }{
		{hem, low, lap, strip}, {w - hem - lap, low, lap, strip},
		{hem, upper, strip, lap}, {w - hem - strip, upper, strip, lap},
	} {
		box := rectangle(at.x, at.y, at.w, at.h)
		pc.mark(Place, box)
		side := line(at.x, at.y, at.x, at.y+at.h)
		if at.h != strip {
			side = line(at.x, at.y, at.x+at.w, at.y)
		}
		p.Joins = append(p.Joins, Join{"belt end", side, line(beltTurn, 0, d.beltWidth-beltTurn, 0)})
	}

	// Notches: where the finished edge of the pouch comes to lie, and the middle.
	for _, x := range []Length{0, w} {
		s := stitch
		if x > 0 {
			s = -s
		}
		pc.mark(Notch, line(x, fold-top, x+s, fold-top))
		pc.mark(Notch, line(x, fold+top, x+s, fold+top))
		pc.mark(Notch, line(x, upper, x+s, upper))
	}
	pc.mark(Notch, line(w/2, 0, w/2, stitch))
	pc.mark(Notch, line(w/2, l, w/2, l-stitch))
	pc.grain(w/5, upper+3*CM, upper+13*CM)
}

// bodyEdge draws a line all round the body, inset from its straight edges, with leg
// openings of a radius about the ends of the fold.
func bodyEdge(w, l, fold, radius, inset Length) Path {
	right, left := legCurve(Point{w, fold}, -1, radius, inset), legCurve(Point{0, fold}, 1, radius, inset)
	down := func(q Point) Point { return Point{q.X, 2*fold - q.Y} }
	e := Path{Start: Point{inset, inset}}
	e.to(w-inset, inset)
	e.to(right[0].X, right[0].Y)
	e.curve(right[1], right[2], right[3])
	e.curve(down(right[2]), down(right[1]), down(right[0]))
	e.to(w-inset, l-inset)
	e.to(inset, l-inset)
	e.to(left[0].X, 2*fold-left[0].Y)
	e.curve(down(left[1]), down(left[2]), left[3])
	e.curve(left[2], left[1], left[0])
	e.to(inset, inset)
	return e
}

// legCurve returns the cubic from the side edge, inset from the centre's own x, to the
// innermost point of the opening on the fold. It stands for an arc of at most a quarter
// circle, within 0.03 % of its radius. The opening lies on side s of the centre: 1 right.
func legCurve(centre Point, s, radius, inset Length) [4]Point {
	r := float64(radius)
	rest := math.Acos(float64(inset) / r) // the angle the arc turns through
	k := r * 4 / 3 * math.Tan(rest/4)
	sin, cos := float64(inset)/r, float64(rise(radius, inset))/r
	at := func(x, y float64) Point {
		return Point{centre.X + s*Length(math.Round(x)), centre.Y + Length(math.Round(y))}
	}
	return [4]Point{
		at(float64(inset), -float64(rise(radius, inset))),
		at(float64(inset)+k*cos, -float64(rise(radius, inset))+k*sin),
		at(r, -k),
		at(r, 0),
	}
}

// rise returns how far above the centre a circle is at x beside it.
func rise(radius, x Length) Length {
	return Length(math.Round(math.Sqrt(float64(radius)*float64(radius) - float64(x)*float64(x))))
}
