package sewing

// belt draws a strip for a belt: both long sides are turned in to the middle line and
// sewn along both finished edges.
func (p *Pattern) belt(d draft) {
	w, l := d.beltWidth, d.beltLength
	pc := &p.Pieces[Belt]
	pc.Width, pc.Length = w, l
	pc.mark(Cut, rectangle(0, 0, w, l))
	pc.mark(Fold, line(beltTurn, 0, beltTurn, l))
	pc.mark(Fold, line(w-beltTurn, 0, w-beltTurn, l))
	pc.mark(Turn, line(w/2, 0, w/2, l))
	pc.mark(Place, line(beltTurn, lap, w-beltTurn, lap)) // this end lies on the body
	pc.mark(Notch, line(w/2, 0, w/2, stitch))
	pc.mark(Notch, line(w/2, l, w/2, l-stitch))
	pc.grain(w/2+beltTurn/2, l/2-5*CM, l/2+5*CM)
	// Turned in, the raw edges meet: each turn is as wide as what it covers.
	p.Joins = append(p.Joins, Join{"belt turn", line(0, 0, beltTurn, 0), line(beltTurn, 0, w/2, 0)})
}

// cap draws the cap: folded in half, then sewn along the top and the side. The seams
// stop short of every corner.
func (p *Pattern) cap(d draft) {
	w, h, seam := d.capLength, d.capWidth, p.Measures.Seam
	pc := &p.Pieces[Cap]
	pc.Width, pc.Length = w, h
	pc.mark(Cut, rectangle(0, 0, w, h))
	pc.mark(Fold, line(w/2, 0, w/2, h))
	left, right := line(cornerFree, seam, w/2-cornerFree, seam), line(w-cornerFree, seam, w/2+cornerFree, seam)
	near, far := line(seam, cornerFree, seam, h-cornerFree), line(w-seam, cornerFree, w-seam, h-cornerFree)
	for _, s := range []Path{left, right, near, far} {
		pc.mark(Sew, s)
	}
	p.Joins = append(p.Joins, Join{"cap top", left, right}, Join{"cap side", near, far})
	lower := h - p.Measures.Hem
	pc.mark(Turn, line(0, lower, w, lower))
	pc.mark(Fold, line(0, lower-capTurnUp, w, lower-capTurnUp))
	for _, x := range []Length{cornerFree, w/2 - cornerFree, w/2 + cornerFree, w - cornerFree} {
		pc.mark(Notch, line(x, 0, x, stitch))
	}
	pc.grain(w*7/8, h/2-5*CM, h/2+3*CM)
}
