// Package drawing holds line drawings as data, and the reader and writer of the
// small part of SVG 1.1 that the pack's figures are made of.
//
// It is not an SVG renderer: no style sheets, no text but single key letters or
// digits, no references, no script. What is outside the subset is refused with its place.
// Drawings that the program computes may hold Labels, which Read never returns.
//
// Every number of a Drawing that Read returns is a whole number of hundredths of a
// drawing unit, at most 100,000 units from 0. So a Drawing that is written and read
// again is the same Drawing, and the printed page and the screen show the same points.
package drawing

// A Drawing is a picture in its own units, y downwards.
type Drawing struct {
	MinX, MinY, Width, Height float64 // the viewBox
	Shapes                    []Shape // painted in this order
}

// A Shape is a path with all transforms already applied, or a key, or a label.
// It is filled first and stroked over its fill.
type Shape struct {
	Path    []Segment // each part of it starts with a MoveTo; a Close ends the part
	Fill    Paint
	EvenOdd bool // fill rule
	Stroke  Paint

	// When Stroke is not set, these are zero.
	StrokeWidth float64 // in drawing units
	Cap         Cap
	Join        Join
	Dash        []float64 // lengths of lines and gaps in turn, an even number; nil is solid

	Key   *Key   // when set, the shape is this key and all else is zero
	Label *Label // when set, the shape is this label and all else is zero
}

// A Key is a digit or capital letter that ties a place in the picture to the text.
// It always stands upright.
type Key struct {
	Text   string  // "1" to "9", "A" to "Z"
	X, Y   float64 // middle of its baseline
	Size   float64 // font size
	Bold   bool
	Colour Paint
}

// A Paint is a colour. The zero Paint paints nothing.
type Paint struct {
	R, G, B uint8
	Set     bool // false: nothing is painted
}

// Op is what a Segment does.
type Op uint8

// The operations of a path. Arcs and quadratic curves are turned into cubics when read.
const (
	MoveTo  Op = iota // one point
	LineTo            // one point
	CubicTo           // three points: two controls and the end
	Close             // no point
)

// points says how many points each operation has.
var points = [...]int{MoveTo: 1, LineTo: 1, CubicTo: 3, Close: 0}

// A Segment is one operation of a path with its absolute points.
type Segment struct {
	Op Op
	P  [3]Point
}

// A Point is a place in drawing units.
type Point struct{ X, Y float64 }

// Cap is the shape of a line's end.
type Cap uint8

// Line ends.
const (
	ButtCap Cap = iota
	RoundCap
	SquareCap
)

// capNames are the values of stroke-linecap.
var capNames = []string{ButtCap: "butt", RoundCap: "round", SquareCap: "square"}

// Join is the shape of a corner.
type Join uint8

// Corners.
const (
	MiterJoin Join = iota // with SVG's own limit, 4; sharper corners are bevelled
	RoundJoin
	BevelJoin
)

// joinNames are the values of stroke-linejoin.
var joinNames = []string{MiterJoin: "miter", RoundJoin: "round", BevelJoin: "bevel"}
