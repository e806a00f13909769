package sewing

import "math"

// Overlap is how much of the pattern two neighbouring sheets both show, to glue.
const Overlap = 8 * MM

const (
	edgeRoom = MM / 2 // round the pattern, so that a heavy line at its edge is whole
	between  = 2 * MM // pieces
)

// A Tiling is the pieces of a pattern at true size, laid over sheets of paper.
type Tiling struct {
	Window        Rect // what one sheet shows
	Columns, Rows int
	At            [3]Point // corner of each piece on the whole
	Tiles         []Tile   // those that show a piece, row by row from the top left
}

// A Tile is one sheet: the window from X, Y on. Its lines and crosses are measured from
// the corner of the window, and the lines end at its edges.
type Tile struct {
	Column, Row int
	X, Y        Length
	Lines       []Line
	Crosses     []Point // to lay over the same cross of the neighbour
}

// A Line is a part of a Mark, with curves as chords within 0.02 mm.
type Line struct {
	Kind   Kind
	Style  Style
	Points []Point
}

// Tile lays the pieces over windows of one size. The whole is never scaled, turned or
// mirrored. The body lies above the cap, the belt beside them: three narrow pieces fill
// two columns of office paper.
func (p *Pattern) Tile(window Rect) *Tiling {
	t := &Tiling{Window: window}
	body, belt, hat := p.Pieces[Body], p.Pieces[Belt], p.Pieces[Cap]
	t.At[Body] = Point{edgeRoom, edgeRoom}
	t.At[Cap] = Point{edgeRoom, edgeRoom + body.Length + between}
	t.At[Belt] = Point{edgeRoom + max(body.Width, hat.Width) + between, edgeRoom}
	width := t.At[Belt].X + belt.Width + edgeRoom
	height := max(t.At[Cap].Y+hat.Length, t.At[Belt].Y+belt.Length) + edgeRoom
	step := Rect{window.Width - Overlap, window.Length - Overlap}
	count := func(whole, step Length) int { return max(1, int((whole-Overlap+step-1)/step)) }
	t.Columns, t.Rows = count(width, step.Width), count(height, step.Length)

	var lines []Line
	for i := range p.Pieces {
		at := t.At[i]
		for _, m := range p.Pieces[i].Marks {
			moved := m.Map(func(q Point) Point { return Point{q.X + at.X, q.Y + at.Y} })
			lines = append(lines, Line{Kinds[i], m.Style, moved.Chords()})
		}
	}
	for row := range t.Rows {
		for column := range t.Columns {
			tile := Tile{Column: column, Row: row, X: step.Width * Length(column), Y: step.Length * Length(row)}
			for _, l := range lines {
				for _, part := range Clip(l.Points, tile.X, tile.Y, window) {
					tile.Lines = append(tile.Lines, Line{l.Kind, l.Style, part})
				}
			}
			if t.shows(p, &tile) {
				tile.Crosses = t.crosses(&tile, step)
				t.Tiles = append(t.Tiles, tile)
			}
		}
	}
	return t
}

// shows reports whether any piece lies in the window.
func (t *Tiling) shows(p *Pattern, tile *Tile) bool {
	for i, pc := range p.Pieces {
		at := t.At[i]
		if at.X < tile.X+t.Window.Width && tile.X < at.X+pc.Width && at.Y < tile.Y+t.Window.Length && tile.Y < at.Y+pc.Length {
			return true
		}
	}
	return false
}

// crosses returns the crosses in the middle of the strips that a tile shares with its
// neighbours: two on each, at a quarter and at three quarters.
func (t *Tiling) crosses(tile *Tile, step Rect) []Point {
	var out []Point
	half := Overlap / 2
	for _, q := range []Length{1, 3} {
		x, y := step.Width*q/4/10*10, step.Length*q/4/10*10
		if tile.Column > 0 {
			out = append(out, Point{half, y})
		}
		if tile.Column+1 < t.Columns {
			out = append(out, Point{step.Width + half, y})
		}
		if tile.Row > 0 {
			out = append(out, Point{x, half})
		}
		if tile.Row+1 < t.Rows {
			out = append(out, Point{x, step.Length + half})
		}
	}
	return out
}

// Chords returns the path as points; a curve becomes 64 chords, which for a quarter of
// a circle are nearer than 1/13000 of its radius.
func (p Path) Chords() []Point {
	const n = 64
	out := []Point{p.Start}
	for _, s := range p.Segments {
		if !s.Curve {
			out = append(out, s.P[0])
			continue
		}
		a := out[len(out)-1]
		for i := int64(1); i <= n; i++ {
			j := n - i
			at := func(p0, p1, p2, p3 Length) Length {
				sum := j*j*j*int64(p0) + 3*j*j*i*int64(p1) + 3*j*i*i*int64(p2) + i*i*i*int64(p3)
				return Length((sum + n*n*n/2) / (n * n * n))
			}
			out = append(out, Point{at(a.X, s.P[0].X, s.P[1].X, s.P[2].X), at(a.Y, s.P[0].Y, s.P[1].Y, s.P[2].Y)})
		}
	}
	return out
}

// Clip returns the parts of a line that lie in a window, measured from its corner.
func Clip(points []Point, x, y Length, window Rect) [][]Point {
	var out [][]Point
	joined := false // the last part ends where the next chord begins
	for i := 1; i < len(points); i++ {
		a, b := Point{points[i-1].X - x, points[i-1].Y - y}, Point{points[i].X - x, points[i].Y - y}
		from, to, ok := inside(a, b, window)
		if !ok {
			joined = false
			continue
		}
		if !joined {
			out = append(out, []Point{from})
		}
		out[len(out)-1] = append(out[len(out)-1], to)
		joined = to == b
	}
	return out
}

// inside returns the part of a chord within a window (Liang and Barsky).
func inside(a, b Point, w Rect) (from, to Point, ok bool) {
	t0, t1 := 0.0, 1.0
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	for _, e := range [4]struct{ p, q float64 }{
		{-dx, float64(a.X)}, {dx, float64(w.Width - a.X)}, {-dy, float64(a.Y)}, {dy, float64(w.Length - a.Y)},
	} {
		if e.p == 0 {
			if e.q < 0 {
				return a, b, false
			}
			continue
		}
		t := e.q / e.p
		if e.p < 0 {
			t0 = max(t0, t)
		} else {
			t1 = min(t1, t)
		}
	}
	if t0 >= t1 {
		return a, b, false
	}
	at := func(t float64) Point {
		return Point{a.X + Length(math.Round(t*dx)), a.Y + Length(math.Round(t*dy))}
	}
	from, to = a, b
	if t0 > 0 {
		from = at(t0)
	}
	if t1 < 1 {
		to = at(t1)
	}
	return from, to, true
}

// IsUpper reports whether a line of a tile is the upper edge of the body, which is
// drawn as a fold.
func (p *Pattern) IsUpper(l Line, t *Tiling, tile *Tile) bool {
	y := p.Pieces[Body].Length - p.Pouch - p.Back
	return l.Kind == Body && l.Style == Fold && abs(l.Points[0].Y+tile.Y-t.At[Body].Y-y) <= 2
}

func abs(l Length) Length { return max(l, -l) }
