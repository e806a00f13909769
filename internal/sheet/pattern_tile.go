package sheet

import (
	"math"
	"unicode/utf8"

	"wardleaf/internal/drawing"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/sewing"
)

const (
	checkSide  = 100 // mm, of the square and the ruler that prove the print
	tileHead   = 11  // mm above the window: which sheet it is, the map, the ruler
	tileSpare  = 4   // mm of the page's height left to the setter's grid
	sideRoom   = 24  // mm that the edges of a sheet take of its width
	heightRoom = 38.5
)

// fewestTiles tiles the pattern over upright or landscape sheets, whichever are fewer.
func fewestTiles(p *sewing.Pattern, room measure.Size) (*sewing.Tiling, bool) {
	w, h := room.Width.Millimetres(), room.Height.Millimetres()
	window := func(w, h float64) sewing.Rect { // in whole tenths of a mm, so that sheets join exactly
		f := func(v float64) sewing.Length { return sewing.Length(math.Floor(v*10+1e-6)) * sewing.MM / 10 }
		return sewing.Rect{Width: f(w), Length: f(h - tileHead - tileSpare)}
	}
	upright := p.Tile(window(w, h))
	across := p.Tile(window(h+heightRoom-sideRoom, w+sideRoom-heightRoom))
	if len(across.Tiles) < len(upright.Tiles) {
		return across, true
	}
	return upright, false
}

func sheetOf(loc *locale.Locale, i int, t *sewing.Tiling) string {
	return loc.Label("pattern-sheet", locale.With("Sheet", loc.Number(i+1)), locale.With("Sheets", loc.Number(len(t.Tiles))))
}

// A tilePen draws one sheet of the pattern and keeps labels off its lines.
type tilePen struct {
	*drawing.Drawing
	loc   *locale.Locale
	taken []box // by labels
	lines []segment
}

type box struct{ left, top, right, bottom float64 }
type segment struct{ a, b drawing.Point }

// tileChart draws one sheet at true size.
func tileChart(loc *locale.Locale, p *sewing.Pattern, t *sewing.Tiling, i int) *drawing.Drawing {
	tile := &t.Tiles[i]
	w, h := t.Window.Width.Millimetres(), t.Window.Length.Millimetres()
	d := &tilePen{Drawing: &drawing.Drawing{Width: w, Height: h + tileHead}, loc: loc}
	d.Say(drawing.Label{Text: sheetOf(loc, i, t), X: 0, Y: 5.4, Size: 4.6, Bold: true, Colour: drawing.Ink})
	drawMap(loc, d.Drawing, t, i, 56, 0.4, 9.4)
	ruler(loc, d.Drawing, w-checkSide-2, 8.4)

	// The frame, and where the next sheets' frames lie on this one.
	at := func(x, y float64) drawing.Point { return drawing.Point{X: x, Y: y + tileHead} }
	d.Area(drawing.Paint{}, drawing.Ink, hair, at(0, 0), at(w, 0), at(w, h), at(0, h))
	lap := sewing.Overlap.Millimetres()
	strip := func(yes bool, a, b drawing.Point) {
		if yes {
			d.Line(drawing.Ink, hair, []float64{0.6, 1.8}, a, b)
		}
	}
	strip(tile.Column > 0, at(lap, 0), at(lap, h))
	strip(tile.Column+1 < t.Columns, at(w-lap, 0), at(w-lap, h))
	strip(tile.Row > 0, at(0, lap), at(w, lap))
	strip(tile.Row+1 < t.Rows, at(0, h-lap), at(w, h-lap))
	for _, c := range tile.Crosses {
		x, y := c.X.Millimetres(), c.Y.Millimetres()
		d.Line(drawing.Ink, hair, nil, at(x-3, y), at(x+3, y))
		d.Line(drawing.Ink, hair, nil, at(x, y-3), at(x, y+3))
		d.Dot(drawing.Paint{}, drawing.Ink, hair, x, y+tileHead, 1.5)
	}
	// The square that proves the print, behind the pattern.
	left, top := 43.0, math.Round(h-checkSide)/2
	square(loc, d.Drawing, left, top+tileHead)
	for _, e := range [4][4]float64{{0, 0, 1, 0}, {1, 0, 1, 1}, {1, 1, 0, 1}, {0, 1, 0, 0}} {
		d.lines = append(d.lines, segment{at(left+e[0]*checkSide, top+e[1]*checkSide), at(left+e[2]*checkSide, top+e[3]*checkSide)})
	}
	d.taken = append(d.taken, box{left, top + tileHead, left + 24, top + tileHead + 6})

	for _, l := range tile.Lines {
		stroke(d.Drawing, l.Style, l.Points, 1, 0, tileHead)
		for k := 1; k < len(l.Points); k++ {
			a, b := mm(l.Points[k-1]), mm(l.Points[k])
			d.lines = append(d.lines, segment{at(a.X, a.Y), at(b.X, b.Y)})
		}
	}
	d.words(p, t, tile)
	return d.Drawing
}

// words says on a sheet what its pieces and lines are.
func (d *tilePen) words(p *sewing.Pattern, t *sewing.Tiling, tile *sewing.Tile) {
	lap := sewing.Overlap.Millimetres()
	w, h := d.Width, d.Height
	for i := range p.Pieces {
		pc := &p.Pieces[i]
		x, y := (t.At[i].X - tile.X).Millimetres(), (t.At[i].Y-tile.Y).Millimetres()+tileHead
		in := box{max(x, lap), max(y, tileHead+lap), min(x+pc.Width.Millimetres(), w-lap), min(y+pc.Length.Millimetres(), h-lap)}
		long, short := longAndShort(sewing.Rect{Width: pc.Width, Length: pc.Length})
		name := d.loc.Label(pieceLabels[pc.Kind])
		cut := d.loc.Label("piece-cut", locale.With("Count", d.loc.Number(pc.Count)))
		size := sizeOf(d.loc, long, short)
		switch wide := in.right - in.left; {
		case wide > 70:
			d.say(in, false, []string{name, cut, size}, 11, 8, 8)
		case wide > 12: // between the folds of a belt
			d.say(in, true, []string{name + " · " + cut + " · " + size}, 6)
		}
	}
	said := map[sewing.Style]bool{}
	for _, l := range tile.Lines {
		label := pens[l.Style].label
		if label == "" || l.Style == sewing.Cut || l.Style == sewing.Grain && len(l.Points) != 2 {
			continue
		}
		a, b := mm(l.Points[0]), mm(l.Points[len(l.Points)-1])
		if math.Hypot(b.X-a.X, b.Y-a.Y) < 12 && l.Style != sewing.Place {
			continue
		}
		text := d.loc.Label(label)
		if l.Style == sewing.Fold && l.Kind == sewing.Body && p.IsUpper(l, t, tile) {
			text = d.loc.Label("pattern-upper")
		} else if said[l.Style] {
			continue
		} else {
			said[l.Style] = true
		}
		m := drawing.Point{X: (a.X + b.X) / 2, Y: (a.Y+b.Y)/2 + tileHead}
		near := box{max(1, m.X-45), max(tileHead+1, m.Y-45), min(w-1, m.X+45), min(h-1, m.Y+45)}
		d.say(near, false, []string{text}, 4)
	}
}

// say writes lines of words in the place within a box that is nearest to its middle and
// free of lines and other words. Where nothing is free it says nothing: the next sheet,
// the table or the key of lines says it.
func (d *tilePen) say(in box, upward bool, text []string, sizes ...float64) {
	const em, line = 0.62, 1.45 // of the size: more than letters take on average
	w, h := 0.0, 0.0
	for i, s := range text {
		w = max(w, em*sizes[i]*float64(utf8.RuneCountInString(s)))
		h += sizes[i] * line
	}
	if upward {
		w, h = h, w
	}
	cx, cy := (in.left+in.right)/2, (in.top+in.bottom)/2
	best, found := math.Inf(1), box{}
	const step = 1.0
	for y := in.top + 1; y+h < in.bottom-1; y += step {
		for x := in.left + 1; x+w < in.right-1; x += step {
			b := box{x, y, x + w, y + h}
			if far := math.Hypot(x+w/2-cx, y+h/2-cy); far < best && d.free(b) {
				best, found = far, b
			}
		}
	}
	if math.IsInf(best, 1) {
		return
	}
	d.taken = append(d.taken, found)
	l := drawing.Label{Anchor: drawing.AtMiddle, Bold: sizes[0] > 4, Upward: upward, Colour: drawing.Ink}
	if upward {
		l.Text, l.Size, l.X, l.Y = text[0], sizes[0], found.left+sizes[0]*1.05, (found.top+found.bottom)/2
		d.Say(l)
		return
	}
	y := found.top
	for i, s := range text {
		y += sizes[i] * line
		l.Text, l.Size, l.X, l.Y = s, sizes[i], (found.left+found.right)/2, y-sizes[i]*0.4
		d.Say(l)
		l.Bold = false
	}
}

func (d *tilePen) free(b box) bool {
	for _, o := range d.taken {
		if b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom {
			return false
		}
	}
	for _, s := range d.lines {
		if s.meets(b) {
			return false
		}
	}
	return true
}

// meets reports whether a segment enters a box, kept a little away from it.
func (s segment) meets(b box) bool {
	const off = 0.8
	b = box{b.left - off, b.top - off, b.right + off, b.bottom + off}
	t0, t1 := 0.0, 1.0
	dx, dy := s.b.X-s.a.X, s.b.Y-s.a.Y
	for _, e := range [4][2]float64{{-dx, s.a.X - b.left}, {dx, b.right - s.a.X}, {-dy, s.a.Y - b.top}, {dy, b.bottom - s.a.Y}} {
		switch p, q := e[0], e[1]; {
		case p == 0 && q < 0:
			return false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	return t0 <= t1
}
