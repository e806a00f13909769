package drawing

import (
	"bytes"
	"fmt"
)

// A Label is words in a computed drawing, not yet shaped. A drawing is never mirrored,
// so places and anchors mean left and right in every language; the words themselves run
// as their language does.
type Label struct {
	Text   string  // in the language's words and digits
	X, Y   float64 // where the baseline is anchored
	Size   float64 // font size of Latin; other scripts are set as tall
	Anchor Anchor
	Bold   bool
	Upward bool // a quarter turn anticlockwise: the words are read from below upwards
	Colour Paint
}

// Anchor says which point of a label stands at its place.
type Anchor uint8

// Anchors.
const (
	AtLeft Anchor = iota
	AtMiddle
	AtRight
)

// The three inks on paper, as typeset has them, and a leaf for fine grids, which black
// ink alone prints as black: grids are told from curves by the width of their lines.
var (
	Ink   = Paint{0x1f, 0x1d, 0x1a, true}
	Leaf  = Paint{0x1f, 0x5c, 0x3d, true}
	Clay  = Paint{0x8a, 0x3b, 0x22, true}
	Paper = Paint{0xff, 0xff, 0xff, true}
	Grid  = Paint{0x86, 0xa6, 0x93, true}
)

// Line adds an open line through points.
func (d *Drawing) Line(stroke Paint, width float64, dash []float64, points ...Point) {
	if len(points) < 2 {
		return
	}
	path := make([]Segment, len(points))
	for i, p := range points {
		path[i] = Segment{Op: LineTo, P: [3]Point{{hundredths(p.X), hundredths(p.Y)}}}
	}
	path[0].Op = MoveTo
	d.Shapes = append(d.Shapes, Shape{Path: path, Stroke: stroke, StrokeWidth: width, Dash: dash, Join: RoundJoin})
}

// Rules adds straight lines of one kind as one shape.
func (d *Drawing) Rules(stroke Paint, width float64, lines ...[2]Point) {
	if len(lines) == 0 {
		return
	}
	s := Shape{Stroke: stroke, StrokeWidth: width}
	for _, l := range lines {
		s.Path = append(s.Path,
			Segment{Op: MoveTo, P: [3]Point{{hundredths(l[0].X), hundredths(l[0].Y)}}},
			Segment{Op: LineTo, P: [3]Point{{hundredths(l[1].X), hundredths(l[1].Y)}}})
	}
	d.Shapes = append(d.Shapes, s)
}

// Area adds a closed outline through points.
func (d *Drawing) Area(fill, stroke Paint, width float64, points ...Point) {
	d.Line(stroke, width, nil, points...)
	s := &d.Shapes[len(d.Shapes)-1]
	s.Path = append(s.Path, Segment{Op: Close})
	s.Fill, s.Join = fill, MiterJoin
	if !stroke.Set {
		s.StrokeWidth = 0
	}
}

// Dot adds a round dot.
func (d *Drawing) Dot(fill, stroke Paint, width, x, y, radius float64) {
	const k = 0.5522847498 // of the radius: a quarter of a circle as a cubic curve
	at := func(dx, dy float64) Point { return Point{hundredths(x + dx*radius), hundredths(y + dy*radius)} }
	path := []Segment{
		{Op: MoveTo, P: [3]Point{at(1, 0)}},
		{Op: CubicTo, P: [3]Point{at(1, k), at(k, 1), at(0, 1)}},
		{Op: CubicTo, P: [3]Point{at(-k, 1), at(-1, k), at(-1, 0)}},
		{Op: CubicTo, P: [3]Point{at(-1, -k), at(-k, -1), at(0, -1)}},
		{Op: CubicTo, P: [3]Point{at(k, -1), at(1, -k), at(1, 0)}},
		{Op: Close},
	}
	s := Shape{Path: path, Fill: fill, Stroke: stroke}
	if stroke.Set {
		s.StrokeWidth = width
	}
	d.Shapes = append(d.Shapes, s)
}

// Say adds a label.
func (d *Drawing) Say(l Label) {
	l.X, l.Y = hundredths(l.X), hundredths(l.Y)
	d.Shapes = append(d.Shapes, Shape{Label: &l})
}

// Labels returns the labels of a drawing in the order they are painted.
func (d *Drawing) Labels() []*Label {
	var out []*Label
	for i := range d.Shapes {
		if l := d.Shapes[i].Label; l != nil {
			out = append(out, l)
		}
	}
	return out
}

// anchorNames are the values of text-anchor where text runs from left to right.
var anchorNames = []string{AtLeft: "start", AtMiddle: "middle", AtRight: "end"}

// write writes the label as real text. In a language written from right to left the
// start of a text is at its right.
func (l *Label) write(b *bytes.Buffer, rtl bool) {
	anchor, more := l.Anchor, ""
	if rtl {
		anchor, more = AtRight-l.Anchor, ` direction="rtl"`
	}
	if l.Bold {
		more += ` font-weight="bold"`
	}
	if l.Upward {
		more += fmt.Sprintf(` transform="rotate(-90 %s)"`, spaced(l.X, l.Y))
	}
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s" text-anchor="%s"%s fill="%s">%s</text>`+"\n",
		short(l.X), short(l.Y), short(l.Size), anchorNames[anchor], more, l.Colour, escape(l.Text))
}
