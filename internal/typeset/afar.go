package typeset

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/page"
)

// This file holds what sheets are made of that are read from afar: few words, large,
// and beside them smaller ones for those who step closer.

// Resized returns a setter for other sizes of text on the same piece. What it cannot
// show counts as missing from the piece.
func (s *Setter) Resized(z Sizes) *Setter {
	r := *s
	r.Sizes = z
	r.Grid = s.Grid.Scale(float64(z.Leading) / float64(s.Sizes.Leading))
	r.ascent = r.Grid.Scale(0.72)
	r.unit = float64(z.Text) / float64(BookletSizes.Text)
	return &r
}

// A Call is whom to call; an empty value is a line to write on.
type Call struct{ Label, Value string }

// Calls sets whom to call two by two: labels as text, values below them in bold of a
// size; both are smaller where the column is too narrow for them.
func (s *Setter) Calls(calls []Call, size, width Length, tag *page.Tag) []Strip {
	gap := s.mm(8)
	col := (width - gap) / 2
	look := s.text().bold()
	look.Size = size
	for _, c := range calls {
		if w := s.width(c.Value, look); w > col {
			look.Size = look.Size.Scale(0.98 * float64(col) / float64(w))
		}
	}
	label := s.text()
	for _, c := range calls {
		if w := s.width(c.Label, label); w > col {
			label = label.scaled(0.98 * float64(col) / float64(w))
		}
	}
	line := s.halves(look.Size.Scale(1.3 * float64(s.Grid) / float64(s.Sizes.Leading)))
	var rows []Strip
	for i, c := range calls {
		p := tag.Add("P")
		st := join(s.Paragraph(plainText(c.Label), label, 0, col, p))
		base := st.Height + line.Scale(0.74)
		st.Height += line
		if c.Value == "" {
			st.box(0, st.Height-s.pt(1), col, s.pt(0.7), Ink)
		} else {
			st.line(s.oneLine(c.Value, look, p.Add("Span")), 0, base)
		}
		if i%2 == 1 {
			last := &rows[len(rows)-1]
			last.overlay(st, col+gap, 0)
			last.Height = max(last.Height, st.Height)
			continue
		}
		st.Before, st.Keep = s.half(), false
		rows = append(rows, st)
	}
	if len(rows) > 0 {
		rows[0].Before = 0
	}
	return rows
}

// CloseTitle sets a title over a heavy rule, close together, its lines about equally long.
func (s *Setter) CloseTitle(ins []lesson.Inline, width Length, tag *page.Tag) []Strip {
	st := join(s.close(ins, s.title(), 0, width, tag.Add("H1")))
	st.Height += s.half()
	st.box(0, st.Height-s.half()+s.pt(0.5), width, s.pt(1.6), Leaf)
	return []Strip{st}
}

// CloseHeading sets a heading over a thin rule, close to what follows.
func (s *Setter) CloseHeading(ins []lesson.Inline, width Length, tag *page.Tag) Strip {
	st := join(s.close(ins, s.part(), 0, width, tag.Add("H2")))
	st.Before, st.Keep = s.half(), true
	st.box(0, st.Height, width, s.pt(0.8), Leaf)
	return st
}

// balance returns the narrowest width at which words take no more lines than at width,
// so that their lines are about equally long and no word is left alone on the last.
func (s *Setter) balance(ins []lesson.Inline, st Style, width Length) Length {
	n := len(s.Lines(ins, st, width, nil))
	for least, step := width/2, width/24; n > 1 && width-step > least; width -= step {
		if len(s.Lines(ins, st, width-step, nil)) > n {
			break
		}
	}
	return width
}

// balanced sets paragraphs with lines about equally long.
func (s *Setter) balanced(bs []lesson.Block, st Style, x, width Length, tag *page.Tag) []Strip {
	var out []Strip
	for i := range bs {
		w := width
		if bs[i].Kind == lesson.Paragraph {
			w = s.balance(bs[i].Inlines, st, width)
		}
		out = append(out, s.block(&bs[i], st, x, w, tag)...)
	}
	return out
}

// close sets few large words with their lines close together and about equally long.
func (s *Setter) close(ins []lesson.Inline, st Style, x, width Length, tag *page.Tag) []Strip {
	width = s.balance(ins, st, width)
	leading := st.Size.Scale(1.2 * float64(s.Grid) / float64(s.Sizes.Leading))
	var out []Strip
	for _, l := range s.Lines(ins, st, width, tag) {
		row := Strip{Height: leading, Keep: true}
		row.line(l, x, leading.Scale(0.76))
		out = append(out, row)
	}
	return out
}

// closeBar is a heading white on ink across the column, close to what follows. Without
// a tag it is an artifact, to be repeated.
func (s *Setter) closeBar(words []lesson.Inline, width Length, tag *page.Tag) Strip {
	if tag != nil {
		tag = tag.Add("H2")
	}
	pad, white := s.mm(3), s.half()/5
	text := join(s.close(words, s.part().in(Paper), pad, width-2*pad, tag))
	bar := Strip{Before: s.half(), Height: text.Height + 2*white + s.half()/2, Keep: true}
	bar.box(0, 0, width, text.Height+2*white, Ink)
	bar.overlay(text, 0, white)
	return bar
}

// Squares sets the items of a checklist alone, a large open square before each.
func (s *Setter) Squares(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	side := s.Sizes.Text.Scale(1.05)
	indent := side + s.mm(2)
	list := tag.List("Disc")
	var out []Strip
	for i, it := range p.Items(false) {
		st := join(s.balanced(withoutFigures(it.Blocks), s.text(), indent, width-indent, list.Add("LI").Add("LBody")))
		st.frame(0, s.ascent-s.Sizes.Text.Scale(0.35)-side/2, side, side, s.pt(0.9), Ink)
		st.Height = max(st.Height, s.Grid)
		if st.Before, st.Keep = s.half()/4, false; i == 0 {
			st.Before = s.half()
		}
		out = append(out, st)
	}
	return out
}

// WallSigns sets warning signs, heading and all: each sign in bold, and what to do in
// the text of another setter, which may be smaller: beside it or below it or, where
// room is scarce, run in.
func (s *Setter) WallSigns(p *lesson.Part, do *Setter, runIn bool, width Length, tag *page.Tag) []Strip {
	lie := below
	switch {
	case runIn:
		lie = after
	case height(s.wallSigns(p, do, beside, width, &page.Tag{})) < height(s.wallSigns(p, do, below, width, &page.Tag{})):
		lie = beside
	}
	return s.wallSigns(p, do, lie, width, tag)
}

// lie is where the words for what to do lie from their sign.
type lie int

const (
	below lie = iota
	beside
	after
)

func (s *Setter) wallSigns(p *lesson.Part, do *Setter, lie lie, width Length, tag *page.Tag) []Strip {
	out := []Strip{s.closeBar(p.Heading, width, tag)}
	list := tag.List("Disc")
	col, gap := width.Scale(0.44), do.mm(4)
	for _, it := range p.Items(false) {
		li := list.Add("LI")
		sign, rest, _ := splitSign(it.Blocks)
		var st Strip
		switch {
		case sign == nil || lie == after:
			st = join(s.Blocks(withoutFigures(it.Blocks), s.text(), 0, width, li.Add("LBody")))
		case lie == beside:
			st = join(s.Paragraph(sign, s.text(), 0, col, li.Add("Lbl")))
			act := join(do.Blocks(rest, do.text(), col+gap, width-col-gap, li.Add("LBody")))
			drop := s.ascent - do.ascent
			st.overlay(act, 0, drop)
			st.Height = max(st.Height, drop+act.Height)
		default:
			st = join(s.Paragraph(sign, s.text(), 0, width, li.Add("Lbl")))
			act := join(do.Blocks(rest, do.text(), 0, width, li.Add("LBody")))
			st.overlay(act, 0, st.Height)
			st.Height += act.Height
		}
		st.Before, st.Keep = 0, false
		st.Height += do.half()
		st.box(0, st.Height-do.half()/2, width, s.pt(0.4), Ink)
		out = append(out, st)
	}
	return out
}

// Spread adds white between strips until they fill a height, the same before each but
// the first; more than most before any would tear them apart.
func Spread(strips []Strip, room, most Length) []Strip {
	if n := Length(len(strips) - 1); n > 0 && room > height(strips) {
		share := min((room-height(strips))/n, most)
		for i := range strips[1:] {
			strips[i+1].Before += share
		}
	}
	return strips
}

// Beside puts strips next to others: the second column begins x from the start edge.
func Beside(first, second []Strip, x Length) Strip {
	st, other := join(first), join(second)
	st.overlay(other, x, 0)
	st.Height = max(st.Height, other.Height)
	st.Keep = false
	return st
}
