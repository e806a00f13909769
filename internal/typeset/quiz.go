package typeset

import (
	"math"

	"wardleaf/internal/lesson"
	"wardleaf/internal/page"
)

// quiz sets questions with open circles that hold the script's own letters.
// A question and its options are never broken apart.
func (s *Setter) quiz(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	out := s.PartHeading(p.Heading, width, tag)
	for i, q := range p.Questions() {
		st := s.Question(&q, i+1, width, tag)
		if i > 0 {
			st.Before = s.Grid
		}
		out = append(out, st)
	}
	return out
}

// Question sets a question with its options; it is never broken apart.
func (s *Setter) Question(q *lesson.Question, number int, width Length, tag *page.Tag) Strip {
	indent := s.mm(9.5)
	list := tag.List("Decimal")
	li := list.Add("LI")
	lbl, body := li.Add("Lbl"), li.Add("LBody")
	rows := []Strip{join(s.Blocks(q.Stem, s.text().bold(), indent, width-indent, body))}
	rows[0].line(s.oneLine(s.Locale.Number(number), s.part(), lbl), 0, s.ascent)
	opts := body.List("UpperAlpha")
	for k, o := range q.Options {
		oi := opts.Add("LI")
		olbl := oi.Add("Lbl")
		st := join(s.Blocks(o.Blocks, s.text(), indent+s.mm(8), width-indent-s.mm(8), oi.Add("LBody")))
		s.circle(&st, s.Locale.Letter(k), indent, olbl)
		st.Before = s.half() / 2
		rows = append(rows, st)
	}
	st := join(rows)
	st.Before, st.Keep = 0, false
	return st
}

// circle adds an open circle with a letter in it, level with the first line.
func (s *Setter) circle(st *Strip, letter string, x Length, tag *page.Tag) {
	r := s.mm(2.35)
	cy := s.ascent - s.Sizes.Text.Scale(0.33)
	ring := &page.Path{Segments: circle(page.Point{X: r, Y: cy}, r), Stroke: &Ink, StrokeWidth: s.pt(0.8)}
	st.add(x, 0, 2*r, ring)
	style := s.small().bold()
	l := s.oneLine(letter, style, tag)
	st.line(l, x+r-l.Width/2, cy+style.Size.Scale(0.34))
}

// circle is four cubic curves; the control distance is the usual 4/3 (sqrt 2 - 1) r.
func circle(c page.Point, r Length) []page.Segment {
	k := r.Scale(4.0 / 3 * (math.Sqrt2 - 1))
	at := func(dx, dy Length) page.Point { return page.Point{X: c.X + dx, Y: c.Y + dy} }
	curve := func(a, b, d page.Point) page.Segment {
		return page.Segment{Op: page.CurveTo, P: [3]page.Point{a, b, d}}
	}
	return []page.Segment{
		{Op: page.MoveTo, P: [3]page.Point{at(r, 0)}},
		curve(at(r, k), at(k, r), at(0, r)),
		curve(at(-k, r), at(-r, k), at(-r, 0)),
		curve(at(-r, -k), at(-k, -r), at(0, -r)),
		curve(at(k, -r), at(r, -k), at(r, 0)),
		{Op: page.Close},
	}
}

// Answers sets the right answers of a quiz part, each with its reason.
func (s *Setter) Answers(p *lesson.Part, title []lesson.Inline, width Length, tag *page.Tag) []Strip {
	indent := s.mm(9.5)
	out := s.PartHeading(title, width, tag)
	list := tag.List("Decimal")
	for i, q := range p.Questions() {
		li := list.Add("LI")
		lbl, body := li.Add("Lbl"), li.Add("LBody")
		var rows []Strip
		for k, o := range q.Options {
			if !o.Right {
				continue
			}
			st := join(s.Blocks(o.Blocks, s.text().bold(), indent+s.mm(8), width-indent-s.mm(8), body))
			s.circle(&st, s.Locale.Letter(k), indent, body.Add("Span"))
			rows = append(rows, st)
		}
		rows = append(rows, s.Blocks(q.Reason, s.text(), indent+s.mm(8), width-indent-s.mm(8), body)...)
		st := join(rows)
		st.line(s.oneLine(s.Locale.Number(i+1), s.part(), lbl), 0, s.ascent)
		st.Before, st.Keep = 0, false
		if i > 0 {
			st.Before = s.half()
		}
		out = append(out, st)
	}
	return out
}
