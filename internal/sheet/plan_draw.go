package sheet

import (
	"unicode/utf8"

	"wardleaf/internal/drawing"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/sewing"
)

// CuttingBand is how much length of cloth one drawing shows; longer cloth goes on in the next.
const CuttingBand = 300 * sewing.CM

// layPlan draws a section of cloth: its length runs to the right, in every language.
func layPlan(loc *locale.Locale, p *sewing.Pattern, o sewing.Order, s *sewing.Section, room measure.Size) []*drawing.Drawing {
	const left, top, foot = 8.0, 1.0, 6.0
	bands := (s.Length + CuttingBand - 1) / CuttingBand
	band := (s.Length + bands - 1) / bands
	band = (band + sewing.CM - 1) / sewing.CM * sewing.CM // whole centimetres, for the scale
	scale := (room.Width.Millimetres() - left - 4) / band.Millimetres()
	scale = min(scale, 70/o.Width.Millimetres(), 0.125)
	var out []*drawing.Drawing
	for from := sewing.Length(0); from < s.Length; from += band {
		long := min(band, s.Length-from)
		w, h := long.Millimetres()*scale, o.Width.Millimetres()*scale
		d := &drawing.Drawing{Width: tenths(left + w + 4), Height: tenths(top + h + foot)}
		at := func(x, y float64) drawing.Point { return drawing.Point{X: left + x, Y: top + y} }
		for _, q := range s.Placed {
			drawPlaced(d, p, o, q, from, long, scale, left, top)
		}
		for _, q := range s.Placed {
			namePlaced(loc, d, q, from, long, scale, left, top)
		}
		// The cloth: selvedges heavy, where it goes on open.
		d.Line(drawing.Leaf, 0.7, nil, at(0, 0), at(w, 0))
		d.Line(drawing.Leaf, 0.7, nil, at(0, h), at(w, h))
		ends := func(x float64, cut bool) {
			if cut {
				d.Line(drawing.Leaf, 0.5, nil, at(x, 0), at(x, h))
			} else {
				d.Line(drawing.Leaf, 0.25, []float64{1, 1}, at(x, 0), at(x, h))
			}
		}
		ends(0, from == 0)
		ends(w, from+long == s.Length)
		for l := sewing.Length(0); l <= long; l += 10 * sewing.CM {
			x, tick := l.Millimetres()*scale, 1.0
			if (from+l)%(50*sewing.CM) == 0 {
				tick = 2
				if left+x < d.Width-2 {
					d.Say(drawing.Label{Text: loc.Decimal((from + l).Centimetres()), X: left + x, Y: top + h + 5.2, Size: 2.8, Anchor: drawing.AtMiddle, Colour: drawing.Ink})
				}
			}
			d.Line(drawing.Ink, 0.2, nil, at(x, h+0.4), at(x, h+0.4+tick))
		}
		d.Say(drawing.Label{Text: cm(loc, o.Width), X: 5, Y: top + h/2, Size: 2.8, Anchor: drawing.AtMiddle, Upward: true, Colour: drawing.Ink})
		out = append(out, d)
	}
	return out
}

// drawPlaced draws a piece where it lies, as far as it lies on this stretch.
func drawPlaced(d *drawing.Drawing, p *sewing.Pattern, o sewing.Order, q sewing.Placed, from, long sewing.Length, scale, left, top float64) {
	pc := &p.Pieces[q.Kind]
	for _, m := range pc.Marks {
		if m.Style != sewing.Cut && m.Style != sewing.Grain {
			continue
		}
		if m.Style == sewing.Grain && q.Kind == sewing.Belt {
			continue // too narrow for an arrow
		}
		placed := m.Map(func(c sewing.Point) sewing.Point {
			if q.Turned {
				c.X, c.Y = c.Y, c.X
			}
			return sewing.Point{X: q.X + c.X, Y: q.Y + c.Y}
		})
		window := sewing.Rect{Width: o.Width, Length: long}
		for _, part := range sewing.Clip(placed.Chords(), 0, from, window) {
			points := make([]drawing.Point, len(part))
			for i, c := range part {
				points[i] = drawing.Point{X: left + c.Y.Millimetres()*scale, Y: top + c.X.Millimetres()*scale}
			}
			width := 0.35
			if m.Style == sewing.Grain {
				width = 0.2
			}
			d.Line(drawing.Ink, width, nil, points...)
		}
	}
}

// namePlaced writes a piece's name on it where there is room.
func namePlaced(loc *locale.Locale, d *drawing.Drawing, q sewing.Placed, from, long sewing.Length, scale, left, top float64) {
	a, b := max(q.Y, from), min(q.Y+q.Length, from+long)
	if a >= b {
		return
	}
	const size = 2.6
	text := loc.Label(pieceLabels[q.Kind])
	w, h := (b-a).Millimetres()*scale, q.Width.Millimetres()*scale
	if h < size*1.25 || w < size*0.75*float64(utf8.RuneCountInString(text)) {
		return
	}
	d.Say(drawing.Label{Text: text, X: left + (a-from).Millimetres()*scale + w/2, Y: top + q.X.Millimetres()*scale + h/2 + size*0.36,
		Size: size, Anchor: drawing.AtMiddle, Colour: drawing.Ink})
}
