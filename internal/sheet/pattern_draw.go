package sheet

import (
	"wardleaf/internal/drawing"
	"wardleaf/internal/locale"
	"wardleaf/internal/sewing"
)

// pen says how a line of a pattern is drawn, in mm.
type pen struct {
	paint drawing.Paint
	width float64
	dash  []float64
	label string
}

// pens tell the lines apart by their dashes and widths, so that black ink is enough.
var pens = map[sewing.Style]pen{
	sewing.Cut:   {drawing.Ink, 0.8, nil, "line-cut"},
	sewing.Sew:   {drawing.Ink, 0.4, []float64{4, 2}, "line-sew"},
	sewing.Turn:  {drawing.Ink, 0.2, []float64{1.2, 1.2}, "line-turn"},
	sewing.Fold:  {drawing.Leaf, 0.4, []float64{9, 1.8, 1.8, 1.8}, "line-fold"},
	sewing.Grain: {drawing.Ink, 0.4, nil, "line-grain"},
	sewing.Notch: {drawing.Ink, 0.8, nil, ""},
	sewing.Place: {drawing.Leaf, 0.25, nil, "line-place"},
}

// hair is the width of frames, squares and crosses.
const hair = 0.1

func mm(p sewing.Point) drawing.Point {
	return drawing.Point{X: p.X.Millimetres(), Y: p.Y.Millimetres()}
}

// stroke draws one line of a pattern, each point scaled and moved.
func stroke(d *drawing.Drawing, s sewing.Style, points []sewing.Point, scale, dx, dy float64) {
	pn := pens[s]
	out := make([]drawing.Point, len(points))
	for i, q := range points {
		m := mm(q)
		out[i] = drawing.Point{X: m.X*scale + dx, Y: m.Y*scale + dy}
	}
	width, dash := pn.width, pn.dash
	if scale < 1 { // in a small drawing lines are finer, and dashes shorter
		width = max(0.15, width*0.6)
		dash = nil
		for _, v := range pn.dash {
			dash = append(dash, v*0.45)
		}
	}
	d.Line(pn.paint, width, dash, out...)
}

// overview draws the pieces small, with the meaning of the lines.
func overview(loc *locale.Locale, p *sewing.Pattern) *drawing.Drawing {
	const scale, top, gap, text = 0.1, 8.0, 8.0, 3.2
	d := &drawing.Drawing{Width: 180}
	x := 2.0
	for i := range p.Pieces {
		pc := &p.Pieces[i]
		w, h := pc.Width.Millimetres()*scale, pc.Length.Millimetres()*scale
		room := max(w, 27)
		for _, m := range pc.Marks {
			stroke(d, m.Style, m.Chords(), scale, x+(room-w)/2, top)
		}
		d.Say(drawing.Label{Text: loc.Label(pieceLabels[pc.Kind]), X: x + room/2, Y: 3, Size: text, Anchor: drawing.AtMiddle, Bold: true, Colour: drawing.Ink})
		d.Say(drawing.Label{Text: loc.Label("piece-cut", locale.With("Count", loc.Number(pc.Count))), X: x + room/2, Y: 6.6, Size: 2.8, Anchor: drawing.AtMiddle, Colour: drawing.Ink})
		d.Height = max(d.Height, top+h+1)
		x += room + gap
	}
	// The key of the lines.
	y := top + 4
	for _, s := range []sewing.Style{sewing.Cut, sewing.Sew, sewing.Turn, sewing.Fold, sewing.Grain, sewing.Place} {
		pn := pens[s]
		d.Line(pn.paint, pn.width, pn.dash, drawing.Point{X: x, Y: y - 1}, drawing.Point{X: x + 13, Y: y - 1})
		if s == sewing.Grain {
			for _, e := range []float64{0, 13} {
				in := 2.0
				if e > 0 {
					in = -2
				}
				d.Line(pn.paint, pn.width, nil, drawing.Point{X: x + e + in, Y: y - 2}, drawing.Point{X: x + e, Y: y - 1}, drawing.Point{X: x + e + in, Y: y})
			}
		}
		d.Say(drawing.Label{Text: loc.Label(pn.label), X: x + 15, Y: y, Size: text, Colour: drawing.Ink})
		y += 7
	}
	d.Height = tenths(d.Height)
	return d
}
