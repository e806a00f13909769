package typeset

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/page"
)

// Title sets the title of a module over a heavy rule.
func (s *Setter) Title(ins []lesson.Inline, width Length, tag *page.Tag) []Strip {
	out := s.Heading(ins, s.title(), 0, 0, width, tag.Add("H1"))
	rule := Strip{Height: s.Grid, Keep: true}
	rule.box(0, s.half()-s.pt(1), width, s.pt(2), Leaf)
	return append(out, rule)
}

// PartHeading sets the heading of a part.
func (s *Setter) PartHeading(ins []lesson.Inline, width Length, tag *page.Tag) []Strip {
	return s.Heading(ins, s.part(), s.Grid, 0, width, tag.Add("H2"))
}

// Part sets one part of a module, heading and all. Step counts the module's steps
// parts so far and is raised for each. It leaves quiz answers and trainer notes out.
func (s *Setter) Part(p *lesson.Part, steps *int, width Length, tag *page.Tag) []Strip {
	switch p.Role {
	case lesson.Caution:
		return s.Caution(p, width, tag)
	case lesson.Steps:
		*steps++
		return s.steps(p, *steps, width, tag)
	case lesson.Checklist:
		return s.checklist(p, width, tag)
	case lesson.WarningSigns:
		return s.warningSigns(p, width, tag)
	case lesson.KeyPoints:
		return s.keyPoints(p, width, tag)
	case lesson.Quiz:
		return s.quiz(p, width, tag)
	}
	out := s.PartHeading(p.Heading, width, tag)
	return append(out, s.Blocks(p.Blocks, s.text(), 0, width, tag)...)
}

// Caution sets a caution block: a closed box with its word in bold at the top. It is never broken.
func (s *Setter) Caution(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	pad, line := s.mm(4), s.pt(2)
	sect := tag.Add("Sect")
	inner := s.Heading(p.Heading, s.part().in(Clay), 0, pad, width-2*pad, sect.Add("H2"))
	inner = append(inner, s.Blocks(p.Blocks, s.text(), pad, width-2*pad, sect)...)
	body := join(inner)
	st := Strip{Height: s.Rows(body.Height + 2*s.mm(2.4)), Before: s.half()}
	st.overlay(body, 0, (st.Height-body.Height)/2-s.pt(1))
	st.frame(0, 0, width, st.Height, line, Clay)
	st.rows, st.own = boxed(inner, width, line), nil
	return []Strip{st}
}

// boxed are the rows of a box that is too high for a page: the sides go on from page to page.
func boxed(rows []Strip, width, line Length) []Strip {
	out := append([]Strip(nil), rows...)
	for i := range out {
		h := out[i].Height
		if i+1 < len(out) {
			h += out[i+1].Before
		}
		out[i].pieces = append([]piece(nil), out[i].pieces...)
		out[i].box(0, 0, line, h, Clay)
		out[i].box(width-line, 0, line, h, Clay)
		out[i].Keep = false
	}
	if n := len(out); n > 0 {
		out[0].box(0, 0, width, line, Clay)
		out[n-1].box(0, out[n-1].Height-line, width, line, Clay)
	}
	return out
}

// steps sets an ordered list with large hanging numerals; a picture stands beside
// its words, and a step is never broken.
func (s *Setter) steps(p *lesson.Part, part int, width Length, tag *page.Tag) []Strip {
	out := s.PartHeading(p.Heading, width, tag)
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List || !b.Ordered {
			out = append(out, s.block(b, s.text(), 0, width, tag)...)
			continue
		}
		list := tag.List("Decimal")
		for k := range b.Items {
			st := s.step(&b.Items[k], b.Start+k, s.Critical != nil && s.Critical(part, b.Start+k), width, list.Add("LI"))
			if k > 0 || i > 0 {
				st.Before = s.half()
			}
			out = append(out, st)
		}
	}
	return out
}

func (s *Setter) step(it *lesson.Item, number int, critical bool, width Length, li *page.Tag) Strip {
	indent := s.mm(9.5)
	numeral := s.part().scaled(1.35)
	lbl, body := li.Add("Lbl"), li.Add("LBody")

	var words []lesson.Block
	var figures []*lesson.Block
	for i := range it.Blocks {
		if it.Blocks[i].Kind == lesson.Figure && it.Blocks[i].Sheet() == "" {
			figures = append(figures, &it.Blocks[i])
		} else {
			words = append(words, it.Blocks[i])
		}
	}
	room := width - indent
	if len(figures) > 0 {
		room -= s.figureWidth() + s.mm(4)
	}
	var text []Strip
	if critical {
		text = s.Paragraph(plainText(s.Locale.Label("critical-step")), s.small().bold().in(Clay).scaled(1.12), indent, room, body.Add("P"))
	}
	text = append(text, s.Blocks(words, s.text(), indent, room, body)...)
	st := join(text)
	st.Before, st.Keep, st.Bar = 0, false, critical
	st.line(s.oneLine(s.Locale.Number(number), numeral, lbl), 0, s.ascent+s.Sizes.Text.Scale(0.06))
	var y Length
	for _, f := range figures {
		d := s.Drawing(f.Source)
		if d == nil {
			continue // a rule has said so already
		}
		pic := s.figure(d, f.Alt, width-s.figureWidth(), s.figureWidth(), body)
		st.overlay(pic, 0, y)
		y += pic.Height
	}
	st.Height = max(st.Height, y)
	return st
}

// checklist sets open squares, one line each where it can be, and room to sign.
func (s *Setter) checklist(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	out := s.PartHeading(p.Heading, width, tag)
	indent := s.mm(8)
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List {
			out = append(out, s.block(b, s.text(), 0, width, tag)...)
			continue
		}
		list := tag.List("Square")
		var items [][]Strip
		for k, it := range b.Items {
			st := join(s.Blocks(it.Blocks, s.text(), indent, width-indent, list.Add("LI").Add("LBody")))
			s.square(&st, 0, s.ascent)
			st.Height = max(st.Height, s.Grid)
			if st.Keep = false; k > 0 {
				st.Before = s.half() / 2
			}
			items = append(items, []Strip{st})
		}
		out = append(out, keepEnds(items)...)
	}
	if n := len(out); n > 1 {
		out[n-1].Keep = true
	}
	sign := s.FormLine([]Field{{Label: s.Locale.Label("observer"), Share: 0.62}, {Label: s.Locale.Label("date"), Share: 0.38}}, width)
	return append(out, sign)
}

// warningSigns sets the darkest thing on the page: a heading white on ink, each
// sign at the start side and what to do at the other.
func (s *Setter) warningSigns(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	pad := s.mm(3)
	out := []Strip{s.inkBar(p.Heading, width, tag)}
	col := width.Scale(0.38)
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List {
			out = append(out, s.block(b, s.text(), 0, width, tag)...)
			continue
		}
		list := tag.List("Disc")
		var items [][]Strip
		for _, it := range b.Items {
			items = append(items, []Strip{s.sign(&it, col, pad, width, list.Add("LI"))})
		}
		out = append(out, keepEnds(items)...)
	}
	return out
}

// sign sets one warning sign. An item that starts with its sign in bold is set in
// two columns, its picture under the sign; any other across the whole width.
func (s *Setter) sign(it *lesson.Item, col, pad, width Length, li *page.Tag) Strip {
	var st Strip
	sign, rest, figure := splitSign(it.Blocks)
	if sign == nil {
		st = join(s.Blocks(it.Blocks, s.text(), pad, width-2*pad, li.Add("LBody")))
	} else {
		st = join(s.Paragraph(sign, s.text(), pad, col-pad, li.Add("Lbl")))
		if figure != nil && s.Drawing(figure.Source) != nil {
			pic := s.figure(s.Drawing(figure.Source), figure.Alt, pad, col-2*pad, li)
			st.overlay(pic, 0, st.Height+s.half()/2)
			st.Height += s.half()/2 + pic.Height
		}
		do := join(s.Blocks(rest, s.text(), col+pad, width-col-2*pad, li.Add("LBody")))
		st.overlay(do, 0, 0)
		st.Height = max(st.Height, do.Height)
	}
	st.Height += s.half()
	st.Before, st.Keep = 0, false
	st.box(0, st.Height-s.half()/2-s.pt(0.3), width, s.pt(0.6), Ink)
	for i := range st.pieces {
		st.pieces[i].y += s.half() / 4
	}
	return st
}

// splitSign takes a warning sign apart, and its first picture from what to do. sign is
// nil when the item is not written as a sign.
func splitSign(bs []lesson.Block) (sign []lesson.Inline, rest []lesson.Block, figure *lesson.Block) {
	sign, do := lesson.SplitSign(bs)
	if sign == nil {
		return nil, nil, nil
	}
	for i := range do {
		if b := &do[i]; b.Kind == lesson.Figure && figure == nil {
			figure = b
		} else {
			rest = append(rest, *b)
		}
	}
	return sign, rest, figure
}

// keyPoints sets three to five points hung on short rules, all on one page.
func (s *Setter) keyPoints(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	out := s.PartHeading(p.Heading, width, tag)
	indent := s.mm(9.5)
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List {
			out = append(out, s.block(b, s.text(), 0, width, tag)...)
			continue
		}
		list := tag.List("Disc")
		for k, it := range b.Items {
			st := join(s.Blocks(it.Blocks, s.text(), indent, width-indent, list.Add("LI").Add("LBody")))
			st.box(0, s.ascent-s.Sizes.Text.Scale(0.3), s.mm(6), s.pt(1.6), Leaf)
			if st.Keep = k+1 < len(b.Items); k > 0 {
				st.Before = s.half()
			}
			out = append(out, st)
		}
	}
	return out
}
