package typeset

import (
	"wardleaf/internal/drawing"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// picture returns a drawing as a group of the given width, cut at its edges. The
// anatomy in a drawing is never mirrored.
func (s *Setter) picture(d *drawing.Drawing, width Length, tag *page.Tag) *page.Group {
	var items []page.Item
	scale := float64(width) / d.Width / 1000 // points a drawing unit
	at := func(p drawing.Point) page.Point {
		return page.Point{X: measure.Pt((p.X - d.MinX) * scale), Y: measure.Pt((p.Y - d.MinY) * scale)}
	}
	for _, sh := range d.Shapes {
		if sh.Key != nil {
			items = append(items, s.key(sh.Key, at(drawing.Point{X: sh.Key.X, Y: sh.Key.Y}), scale, tag)...)
			continue
		}
		if sh.Label != nil {
			items = append(items, s.label(sh.Label, at(drawing.Point{X: sh.Label.X, Y: sh.Label.Y}), scale, tag)...)
			continue
		}
		p := &page.Path{
			Fill: colour(sh.Fill), EvenOdd: sh.EvenOdd, Stroke: colour(sh.Stroke),
			StrokeWidth: measure.Pt(sh.StrokeWidth * scale),
			RoundCap:    sh.Cap == drawing.RoundCap, RoundJoin: sh.Join == drawing.RoundJoin,
			Tag: tag,
		}
		for _, v := range sh.Dash {
			p.Dash = append(p.Dash, measure.Pt(v*scale))
		}
		for _, seg := range sh.Path {
			out := page.Segment{Op: page.Op(seg.Op)}
			for i := range seg.P {
				out.P[i] = at(seg.P[i])
			}
			p.Segments = append(p.Segments, out)
		}
		items = append(items, p)
	}
	return &page.Group{Clip: &measure.Size{Width: width, Height: measure.Pt(d.Height * scale)}, Items: items}
}

// key sets the digit or letter that ties a place in a drawing to the text.
func (s *Setter) key(k *drawing.Key, at page.Point, scale float64, tag *page.Tag) []page.Item {
	st := Style{Size: measure.Pt(k.Size * scale), Bold: true, Colour: Ink}
	if c := colour(k.Colour); c != nil {
		st.Colour = *c
	}
	l := s.oneLine(s.Locale.Digits(k.Text), st, nil)
	for _, it := range l.Items {
		shift(it, at.X-l.Width/2, at.Y)
		if r, ok := it.(*page.GlyphRun); ok {
			r.Tag = tag
		}
	}
	return l.Items
}

// label sets the words of a computed drawing on one line at their place. Each is an
// element of its own below the figure, so that words do not run together when copied.
func (s *Setter) label(l *drawing.Label, at page.Point, scale float64, tag *page.Tag) []page.Item {
	st := Style{Size: measure.Pt(l.Size * scale), Bold: l.Bold, Colour: Ink}
	if c := colour(l.Colour); c != nil {
		st.Colour = *c
	}
	if tag != nil {
		tag = tag.Add("Span")
	}
	line := s.oneLine(l.Text, st, tag)
	back := [...]Length{drawing.AtLeft: 0, drawing.AtMiddle: line.Width / 2, drawing.AtRight: line.Width}[l.Anchor]
	for _, it := range line.Items {
		r, ok := it.(*page.GlyphRun)
		if !ok {
			continue
		}
		along := r.X - back
		if r.X, r.Y, r.Upward = at.X+along, at.Y, l.Upward; l.Upward {
			r.X, r.Y = at.X, at.Y-along
		}
	}
	return line.Items
}

func colour(p drawing.Paint) *page.Colour {
	if !p.Set {
		return nil
	}
	return &page.Colour{R: p.R, G: p.G, B: p.B}
}
