// Package sewing drafts the pieces of a simple carrier and plans how they are cut
// from cloth.
//
// It is pure arithmetic: no page, no words, no fonts. All lengths are whole
// micrometres, so sizes, areas and plans are exact. The drafting is our own. No
// standard covers a carrier for a small baby, so every measure and allowance here is
// common practice without a source, and every sheet made from it says so.
package sewing

import (
	"math"
	"strconv"
)

// Length is a distance on cloth or paper in micrometres.
type Length int64

// Units of length.
const (
	MM Length = 1000
	CM Length = 10 * MM
	M  Length = 100 * CM
)

// Millimetres returns the length in millimetres.
func (l Length) Millimetres() float64 { return float64(l) / float64(MM) }

// Centimetres writes the length in centimetres with no trailing zeros, rounded to
// the nearest tenth of a millimetre.
func (l Length) Centimetres() string {
	tenths := (l + 50) / 100
	return strconv.FormatFloat(float64(tenths)/100, 'f', -1, 64)
}

// A Point is a place on a piece: x to the right, y down.
type Point struct{ X, Y Length }

// A Segment is one step of a Path from where the last one ended: straight to P[0],
// or a cubic curve with the controls P[0] and P[1] to P[2].
type Segment struct {
	Curve bool
	P     [3]Point
}

// End returns the point where the segment ends.
func (s Segment) End() Point {
	if s.Curve {
		return s.P[2]
	}
	return s.P[0]
}

// A Path is a line with a start; a closed one ends where it starts.
type Path struct {
	Start    Point
	Segments []Segment
}

func (p *Path) to(x, y Length) {
	p.Segments = append(p.Segments, Segment{P: [3]Point{{x, y}}})
}

func (p *Path) curve(a, b, c Point) {
	p.Segments = append(p.Segments, Segment{Curve: true, P: [3]Point{a, b, c}})
}

// End returns where the path ends.
func (p Path) End() Point {
	if len(p.Segments) == 0 {
		return p.Start
	}
	return p.Segments[len(p.Segments)-1].End()
}

// Map returns the path with every point moved.
func (p Path) Map(move func(Point) Point) Path {
	out := Path{Start: move(p.Start), Segments: make([]Segment, len(p.Segments))}
	for i, s := range p.Segments {
		out.Segments[i] = Segment{Curve: s.Curve, P: [3]Point{move(s.P[0]), move(s.P[1]), move(s.P[2])}}
	}
	return out
}

func line(x1, y1, x2, y2 Length) Path {
	p := Path{Start: Point{x1, y1}}
	p.to(x2, y2)
	return p
}

func distance(a, b Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	return math.Sqrt(dx*dx + dy*dy)
}
