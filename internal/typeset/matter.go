package typeset

import (
	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/page"
)

// This file holds what front and back matter is made of.

// Lead sets the sentences between a module's title and its first part.
func (s *Setter) Lead(bs []lesson.Block, width Length, tag *page.Tag) []Strip {
	out := s.Blocks(bs, s.text(), 0, width, tag)
	if n := len(out); n > 0 {
		out[n-1].Keep = true
	}
	return out
}

// Bar is a heavy rule across the column.
func (s *Setter) Bar(width, height Length) Strip {
	st := Strip{Height: s.Rows(height)}
	st.box(0, 0, width, height, Leaf)
	return st
}

// Display sets words times larger than a title, lines close together.
func (s *Setter) Display(words string, times float64, width Length, tag *page.Tag) []Strip {
	return s.Heading(plainText(words), s.title().scaled(times), 0, 0, width, tag)
}

// Centred sets a drawing in the middle of the column, in the room given.
func (s *Setter) Centred(d *drawing.Drawing, alt string, width, column, room Length, tag *page.Tag) Strip {
	pic := s.figure(d, alt, (column-width)/2, width, tag)
	st := Strip{Height: max(room, pic.Height)}
	st.overlay(pic, 0, (st.Height-pic.Height)/2)
	return st
}

// Contact sets whom to call in large type; an empty value is a line to write on.
func (s *Setter) Contact(label, value string, width Length, tag *page.Tag) Strip {
	p := tag.Add("P")
	st := Strip{Height: 2 * s.Grid, Before: s.half()}
	base := 2*s.Grid - s.half()
	l := s.oneLine(label, s.text(), p)
	st.line(l, 0, base)
	x := max(l.Width+s.mm(3), width.Scale(0.42))
	if value == "" {
		st.box(x, base+s.pt(2), width-x, s.pt(0.7), Ink)
		return st
	}
	st.line(s.oneLine(value, s.title().in(Ink), p.Add("Span")), x, base)
	return st
}

// SignsOnly sets the names of warning signs alone, large, under a heading white on ink.
func (s *Setter) SignsOnly(p *lesson.Part, heading string, width Length, tag *page.Tag) []Strip {
	out := []Strip{s.inkBar(plainText(heading), width, tag)}
	pad := s.mm(3)
	list := tag.List("Disc")
	for _, b := range p.Blocks {
		for _, it := range b.Items {
			sign, _, _ := splitSign(it.Blocks)
			if sign == nil {
				continue
			}
			st := join(s.Paragraph(sign[:1], s.text().bold(), pad+s.listIndent(), width-2*pad-s.listIndent(), list.Add("LI").Add("LBody")))
			st.box(pad, s.ascent-s.Sizes.Text.Scale(0.62), s.mm(2.2), s.mm(2.2), Ink)
			st.Before, st.Keep = s.half(), false
			out = append(out, st)
		}
	}
	return out
}

// inkBar is a heading white on ink across the column.
func (s *Setter) inkBar(words []lesson.Inline, width Length, tag *page.Tag) Strip {
	pad := s.mm(3)
	text := join(s.Heading(words, s.part().in(Paper), 0, pad, width-2*pad, tag.Add("H2")))
	bar := Strip{Height: text.Height + s.half()/2, Before: s.Grid, Keep: true}
	bar.box(0, 0, width, bar.Height, Ink)
	bar.overlay(text, 0, s.half()/4)
	return bar
}
