package sheet

import (
	"wardleaf/internal/drawing"
	"wardleaf/internal/locale"
	"wardleaf/internal/sewing"
)

// checkChart draws the square, a ruler and the map of all sheets.
func checkChart(loc *locale.Locale, t *sewing.Tiling) *drawing.Drawing {
	d := &drawing.Drawing{Width: 150, Height: checkSide + 22}
	d.Area(drawing.Paint{}, drawing.Ink, 0.3, drawing.Point{X: 1, Y: 1}, drawing.Point{X: 1 + checkSide, Y: 1},
		drawing.Point{X: 1 + checkSide, Y: 1 + checkSide}, drawing.Point{X: 1, Y: 1 + checkSide})
	side := loc.Label("millimetres", locale.With("Amount", loc.Number(checkSide)))
	d.Say(drawing.Label{Text: side, X: 1 + checkSide/2, Y: 8, Size: 5, Anchor: drawing.AtMiddle, Bold: true, Colour: drawing.Ink})
	d.Say(drawing.Label{Text: side, X: 8, Y: 1 + checkSide/2, Size: 5, Anchor: drawing.AtMiddle, Bold: true, Upward: true, Colour: drawing.Ink})
	ruler(loc, d, 1, checkSide+16)
	drawMap(loc, d, t, -1, 112, 1, 60)
	return d
}

// square draws the check square as hairlines with heavier corners and its measure.
func square(loc *locale.Locale, d *drawing.Drawing, x, y float64) {
	p := func(dx, dy float64) drawing.Point { return drawing.Point{X: x + dx, Y: y + dy} }
	const s, arm = checkSide, 5
	d.Area(drawing.Paint{}, drawing.Grid, hair, p(0, 0), p(s, 0), p(s, s), p(0, s))
	for _, c := range [4][2]float64{{0, 0}, {s, 0}, {s, s}, {0, s}} {
		in := func(v float64) float64 {
			if v > 0 {
				return v - arm
			}
			return v + arm
		}
		d.Line(drawing.Ink, 0.2, nil, p(in(c[0]), c[1]), p(c[0], c[1]), p(c[0], in(c[1])))
	}
	d.Say(drawing.Label{Text: loc.Label("millimetres", locale.With("Amount", loc.Number(s))), X: x + 2, Y: y + 4.4, Size: 3.2, Colour: drawing.Ink})
}

// ruler draws 100 mm with a tick for each, standing on y.
func ruler(loc *locale.Locale, d *drawing.Drawing, x, y float64) {
	d.Line(drawing.Ink, 0.2, nil, drawing.Point{X: x, Y: y}, drawing.Point{X: x + checkSide, Y: y})
	for i := 0; i <= checkSide; i++ {
		high := 1.2
		switch {
		case i%10 == 0:
			high = 3.4
		case i%5 == 0:
			high = 2.2
		}
		d.Line(drawing.Ink, hair, nil, drawing.Point{X: x + float64(i), Y: y}, drawing.Point{X: x + float64(i), Y: y - high})
		if i%50 == 0 {
			anchor := drawing.Anchor(i / 50)
			d.Say(drawing.Label{Text: loc.Label("centimetres", locale.With("Amount", loc.Number(i/10))), X: x + float64(i), Y: y - 4.2, Size: 2.8, Anchor: anchor, Colour: drawing.Ink})
		}
	}
}

// drawMap draws all sheets as they lie, with their numbers; sheet here is filled.
func drawMap(loc *locale.Locale, d *drawing.Drawing, t *sewing.Tiling, here int, x, y, height float64) {
	cell := height / float64(t.Rows)
	wide := cell * float64(t.Window.Width) / float64(t.Window.Length)
	for i, tile := range t.Tiles {
		left, top := x+wide*float64(tile.Column), y+cell*float64(tile.Row)
		fill := drawing.Paper
		if i == here {
			fill = drawing.Ink
		}
		d.Area(fill, drawing.Ink, 0.15, drawing.Point{X: left, Y: top}, drawing.Point{X: left + wide, Y: top},
			drawing.Point{X: left + wide, Y: top + cell}, drawing.Point{X: left, Y: top + cell})
		if size := cell * 0.5; size >= 2.5 {
			d.Say(drawing.Label{Text: loc.Number(i + 1), X: left + wide/2, Y: top + cell/2 + size*0.36, Size: size, Anchor: drawing.AtMiddle, Bold: true, Colour: drawing.Ink})
		}
	}
}
