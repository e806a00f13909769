package typeset

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/page"
)

// StepGrid sets the steps of a part for pieces that teach in pictures and few words:
// steps with pictures that follow each other stand side by side, each under its
// picture; the others run across the column. A row is never broken.
func (s *Setter) StepGrid(p *lesson.Part, part int, width Length, tag *page.Tag) []Strip {
	out := s.PartHeading(p.Heading, width, tag)
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List || !b.Ordered {
			out = append(out, s.block(b, s.text(), 0, width, tag)...)
			continue
		}
		list := tag.Add("L")
		critical := func(k int) bool { return s.Critical != nil && s.Critical(part, b.Start+k) }
		for k := 0; k < len(b.Items); {
			n := s.beside(b.Items[k:])
			var st Strip
			if n == 1 {
				st = s.step(&b.Items[k], b.Start+k, critical(k), width, list.Add("LI"))
			} else {
				st = s.stepRow(b, k, n, critical, width, list)
			}
			if k > 0 || i > 0 {
				st.Before = s.half()
			}
			out = append(out, st)
			k += n
		}
	}
	return out
}

// beside returns how many of the first items stand side by side: of a run of steps
// with pictures three, or two where that leaves none alone.
func (s *Setter) beside(items []lesson.Item) int {
	run := 0
	for run < len(items) && hasFigure(&items[run]) {
		run++
	}
	switch {
	case run < 2:
		return 1
	case run == 2 || run == 4:
		return 2
	}
	return 3
}

func hasFigure(it *lesson.Item) bool {
	for _, b := range it.Blocks {
		if b.Kind == lesson.Figure {
			return true
		}
	}
	return false
}

// stepRow sets n steps side by side, in columns a third of the width.
func (s *Setter) stepRow(b *lesson.Block, first, n int, critical func(int) bool, width Length, list *page.Tag) Strip {
	gap := s.mm(5)
	col := (width - 2*gap) / 3
	var st Strip
	for k := first; k < first+n; k++ {
		c := s.stepCell(&b.Items[k], b.Start+k, critical(k), col, list.Add("LI"))
		st.overlay(c, (col+gap)*Length(k-first), 0)
		st.Height = max(st.Height, c.Height)
	}
	return st
}

// stepCell sets one step of a grid: numeral and words under the picture.
func (s *Setter) stepCell(it *lesson.Item, number int, critical bool, width Length, li *page.Tag) Strip {
	lbl, body := li.Add("Lbl"), li.Add("LBody")
	var st Strip
	var words []lesson.Block
	for i := range it.Blocks {
		b := &it.Blocks[i]
		d := s.Drawing(b.Source)
		if b.Kind != lesson.Figure || d == nil {
			words = append(words, *b)
			continue
		}
		pic := s.figure(d, b.Alt, 0, width, body)
		st.overlay(pic, 0, st.Height)
		st.Height += pic.Height
	}
	indent := s.mm(8)
	var text []Strip
	if critical {
		text = s.Paragraph(plainText(s.Locale.Label("critical-step")), s.small().bold().in(Clay).scaled(1.12), indent, width-indent, body.Add("P"))
	}
	text = append(text, s.Blocks(words, s.text(), indent, width-indent, body)...)
	set := join(text)
	set.line(s.oneLine(s.Locale.Number(number), s.part().scaled(1.35), lbl), 0, s.ascent+s.Sizes.Text.Scale(0.06))
	if critical {
		set.box(s.mm(-2), s.half()/2, s.mm(1.2), max(set.Height-s.half()/2, s.Grid), Ink)
	}
	st.overlay(set, 0, st.Height)
	st.Height += set.Height
	return st
}

// SignGrid sets warning signs for pieces that teach in pictures: signs with pictures
// side by side under the heading, the others in rows below them.
func (s *Setter) SignGrid(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	var pictured, others []lesson.Item
	for _, b := range p.Blocks {
		for _, it := range b.Items {
			if hasFigure(&it) {
				pictured = append(pictured, it)
			} else {
				others = append(others, it)
			}
		}
	}
	if len(pictured) < 2 {
		return s.warningSigns(p, width, tag)
	}
	pad := s.mm(3)
	gap := s.mm(5)
	col := (width - 2*gap) / 3
	bar := s.inkBar(p.Heading, width, tag)
	out := []Strip{bar}
	list := tag.Add("L")
	for k := 0; k < len(pictured); k += 3 {
		st := Strip{Before: s.half()}
		for n, it := range pictured[k:min(k+3, len(pictured))] {
			c := s.signCell(&it, col, list.Add("LI"))
			st.overlay(c, (col+gap)*Length(n), 0)
			st.Height = max(st.Height, c.Height)
		}
		out = append(out, st)
	}
	last := &out[len(out)-1]
	last.Height += s.half()
	last.box(0, last.Height-s.half()/2, width, s.pt(0.6), Ink)
	for _, it := range others {
		out = append(out, s.sign(&it, width.Scale(0.38), pad, width, list.Add("LI")))
	}
	return out
}

func (s *Setter) signCell(it *lesson.Item, width Length, li *page.Tag) Strip {
	sign, rest, figure := splitSign(it.Blocks)
	if sign == nil || figure == nil || s.Drawing(figure.Source) == nil {
		return join(s.Blocks(it.Blocks, s.text(), 0, width, li.Add("LBody")))
	}
	body := li.Add("LBody")
	w := width.Scale(0.86)
	rows := []Strip{s.figure(s.Drawing(figure.Source), figure.Alt, (width-w)/2, w, body)}
	rows = append(rows, s.Paragraph(sign, s.text(), 0, width, body.Add("P"))...)
	return join(append(rows, s.Blocks(rest, s.text(), 0, width, body)...))
}
