package drawing

import "fmt"

// geometry lists the elements and the attributes that give each its form.
// The ones before the bar must be there.
var geometry = map[string]struct{ needed, optional []string }{
	"g":        {},
	"path":     {needed: []string{"d"}},
	"circle":   {[]string{"r"}, []string{"cx", "cy"}},
	"ellipse":  {[]string{"rx", "ry"}, []string{"cx", "cy"}},
	"rect":     {[]string{"width", "height"}, []string{"x", "y", "rx", "ry"}},
	"line":     {optional: []string{"x1", "y1", "x2", "y2"}},
	"polyline": {needed: []string{"points"}},
	"polygon":  {needed: []string{"points"}},
	"text":     {[]string{"x", "y", "font-size", "text-anchor"}, []string{"font-weight"}},
	"svg":      {[]string{"xmlns", "viewBox"}, []string{"width", "height"}},
}

// outline draws a shape of SVG 1.1, chapters 8 and 9, in its own coordinates. Problems
// go to the reader. No segments mean that nothing is drawn.
func (r *reader) outline(e *element) []Segment {
	var p pen
	n := func(name string) float64 { return r.number(e, name) }
	switch e.name {
	case "path":
		d := e.find("d")
		segments, f := parsePath(d.value)
		r.fault(d, f)
		return segments
	case "line":
		p.moveTo(Point{n("x1"), n("y1")})
		p.lineTo(Point{n("x2"), n("y2")})
	case "polyline", "polygon":
		a := e.find("points")
		vs, f := numbers(a.value)
		if f == nil && len(vs)%2 == 1 {
			f = whole(a.value, "the last point has no y", "write two numbers for each point")
		}
		r.fault(a, f)
		if f != nil || len(vs) == 0 {
			return nil
		}
		p.moveTo(Point{vs[0], vs[1]})
		for i := 2; i < len(vs); i += 2 {
			p.lineTo(Point{vs[i], vs[i+1]})
		}
		if e.name == "polygon" {
			p.close()
		}
	case "circle":
		radius := r.size(e, "r")
		p.ellipse(n("cx"), n("cy"), radius, radius)
	case "ellipse":
		p.ellipse(n("cx"), n("cy"), r.size(e, "rx"), r.size(e, "ry"))
	case "rect":
		rx, ry := r.size(e, "rx"), r.size(e, "ry")
		if e.find("rx") == nil { // 9.2: one radius stands for both
			rx = ry
		}
		if e.find("ry") == nil {
			ry = rx
		}
		p.rect(n("x"), n("y"), r.size(e, "width"), r.size(e, "height"), rx, ry)
	}
	return p.segments
}

// ellipse draws clockwise from three o'clock, like SVG 1.1's own circles.
func (p *pen) ellipse(cx, cy, rx, ry float64) {
	if rx <= 0 || ry <= 0 {
		return
	}
	quarter := arc{rx: rx, ry: ry, sweep: true}
	p.moveTo(Point{cx + rx, cy})
	p.arcTo(quarter, Point{cx, cy + ry})
	p.arcTo(quarter, Point{cx - rx, cy})
	p.arcTo(quarter, Point{cx, cy - ry})
	p.arcTo(quarter, Point{cx + rx, cy})
	p.close()
}

// rect draws from the left end of the top edge, clockwise. SVG 1.1, section 9.2.
func (p *pen) rect(x, y, width, height, rx, ry float64) {
	if width <= 0 || height <= 0 {
		return
	}
	right, bottom := x+width, y+height
	rx, ry = min(rx, width/2), min(ry, height/2)
	if rx <= 0 || ry <= 0 {
		p.moveTo(Point{x, y})
		p.lineTo(Point{right, y})
		p.lineTo(Point{right, bottom})
		p.lineTo(Point{x, bottom})
		p.close()
		return
	}
	corner := arc{rx: rx, ry: ry, sweep: true}
	p.moveTo(Point{x + rx, y})
	p.lineTo(Point{right - rx, y})
	p.arcTo(corner, Point{right, y + ry})
	p.lineTo(Point{right, bottom - ry})
	p.arcTo(corner, Point{right - rx, bottom})
	p.lineTo(Point{x + rx, bottom})
	p.arcTo(corner, Point{x, bottom - ry})
	p.lineTo(Point{x, y + ry})
	p.arcTo(corner, Point{x + rx, y})
	p.close()
}

// key reads the digit or capital letter that a text element is.
func (r *reader) key(e *element) {
	before := len(r.problems)
	k := Key{Text: string(e.text), Colour: e.style.fill}
	if len(k.Text) != 1 || !(k.Text[0] >= '1' && k.Text[0] <= '9' || k.Text[0] >= 'A' && k.Text[0] <= 'Z') {
		span := e.textSpan
		if len(k.Text) == 0 {
			span = e.span
		}
		r.problem(span, "a text of a figure is one key, a digit from 1 to 9 or a capital letter from A to Z",
			"write the words into the lesson, where they are translated, and put the key there too")
	}
	if a := e.find("text-anchor"); a != nil {
		_, f := choice(a.value, []string{"middle"})
		r.fault(a, f)
	}
	if a := e.find("font-weight"); a != nil {
		i, f := choice(a.value, []string{"normal", "bold", "400", "700"})
		r.fault(a, f)
		k.Bold = i%2 == 1
	}
	size := r.size(e, "font-size")
	at := e.style.matrix.apply(Point{r.number(e, "x"), r.number(e, "y")})
	switch {
	case !e.style.matrix.upright():
		r.problem(e.span, "the key is turned, mirrored or squeezed", "place it outside the transformed group; it stands upright to be read")
	case e.style.stroke.Set:
		r.problem(e.span, "the key has an outline, which blurs it", `add stroke="none"`)
	case !k.Colour.Set:
		r.problem(e.span, "the key has no colour", "give it a fill")
	}
	k.X, k.Y = r.round(e, at.X), r.round(e, at.Y)
	k.Size = r.round(e, size*e.style.matrix.scale())
	if k.Size <= 0 && len(r.problems) == before {
		r.problem(e.span, "the key is too small to be seen", "give it a font-size that can be read in print")
	}
	r.drawing.Shapes = append(r.drawing.Shapes, Shape{Key: &k})
}

// draw adds a shape to the drawing, its transforms applied. What paints nothing is left out.
func (r *reader) draw(e *element) {
	st := e.style
	s := Shape{Path: r.outline(e), Fill: st.fill, EvenOdd: st.evenOdd, Stroke: st.stroke}
	if r.segments += len(s.Path); r.segments > maxSegments {
		r.problem(e.span, fmt.Sprintf("the picture has more than %d segments", maxSegments), "simplify its paths")
		r.stop = true
		return
	}
	if e.name == "line" || !s.Fill.Set { // a line has no inside
		s.Fill, s.EvenOdd = Paint{}, false
	}
	if st.width == 0 {
		s.Stroke = Paint{}
	}
	if len(s.Path) == 0 || !s.Fill.Set && !s.Stroke.Set {
		return
	}
	for i := range s.Path {
		seg := &s.Path[i]
		for j := range points[seg.Op] {
			p := st.matrix.apply(seg.P[j])
			seg.P[j] = Point{r.round(e, p.X), r.round(e, p.Y)}
		}
	}
	if s.Stroke.Set {
		r.stroke(e, &s)
	}
	r.drawing.Shapes = append(r.drawing.Shapes, s)
}

// stroke gives a shape its line.
func (r *reader) stroke(e *element, s *Shape) {
	st := e.style
	scale := st.matrix.scale()
	s.StrokeWidth, s.Cap, s.Join = r.round(e, st.width*scale), st.cap, st.join
	if s.StrokeWidth == 0 {
		r.problem(e.span, "the line is too thin to print", "make it wider, or write stroke=\"none\"")
	}
	if st.dash == nil {
		return
	}
	sum := 0.0
	for _, v := range st.dash {
		v = r.round(e, v*scale)
		s.Dash = append(s.Dash, v)
		sum += v
	}
	if sum < minDash {
		r.problem(e.span, "the dashes are too fine to print", "make them longer, or the line solid")
	}
}
