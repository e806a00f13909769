// Package measure holds lengths, points and paper sizes.
//
// Lengths are fixed-point so that two machines lay out the same page.
// It imports nothing of ours.
package measure

import (
	"math"
	"strconv"
)

// Length is a distance in thousandths of a point (1 pt = 1/72 inch).
type Length int64

// Point is one point.
const Point Length = 1000

// Pt returns a length of v points, rounded to the nearest thousandth.
func Pt(v float64) Length { return Length(math.Round(v * 1000)) }

// MM returns a length of v millimetres.
func MM(v float64) Length { return Length(math.Round(v * 72000 / 25.4)) }

// Points returns the length in points.
func (l Length) Points() float64 { return float64(l) / 1000 }

// Millimetres returns the length in millimetres.
func (l Length) Millimetres() float64 { return float64(l) * 25.4 / 72000 }

// Scale returns the length times f, rounded.
func (l Length) Scale(f float64) Length { return Length(math.Round(float64(l) * f)) }

// String writes the length in points with no trailing zeros, as PDF operators want it.
func (l Length) String() string {
	return strconv.FormatFloat(l.Points(), 'f', -1, 64)
}

// A Size is the width and height of a sheet or a page.
type Size struct{ Width, Height Length }

// Landscape returns the size with its longer side across.
func (s Size) Landscape() Size {
	if s.Width < s.Height {
		return Size{s.Height, s.Width}
	}
	return s
}

// Paper sizes: ISO 216 (A series) and ANSI/ASME Y14.1 (Letter).
var (
	A2     = Size{MM(420), MM(594)}
	A3     = Size{MM(297), MM(420)}
	A4     = Size{MM(210), MM(297)}
	A5     = Size{MM(148), MM(210)}
	Letter = Size{MM(215.9), MM(279.4)}
)

// Name returns what a paper size is called, empty when it has no name here.
func (s Size) Name() string {
	switch s {
	case A2:
		return "A2"
	case A3:
		return "A3"
	case A4:
		return "A4"
	case A5:
		return "A5"
	case Letter:
		return "Letter"
	}
	return ""
}
