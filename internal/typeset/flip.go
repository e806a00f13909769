package typeset

import (
	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// This file holds what flip charts are made of.

// FlipFrame is a sheet across, bound at its upper edge. Its upper margin is that of
// ISO 838, wide enough for holes or a spiral.
func FlipFrame(paper measure.Size, rtl bool) Frame {
	return Frame{Size: paper.Landscape(), Top: measure.MM(23), Foot: measure.MM(26.5), Inner: measure.MM(16), Outer: measure.MM(16), RTL: rtl}
}

// BindingHoles marks where two holes go in the upper margin, after ISO 838: 6 mm wide,
// 80 mm apart, their centres 12 mm from the edge.
func (f Frame) BindingHoles() []page.Item {
	var out []page.Item
	for _, dx := range []Length{-measure.MM(40), measure.MM(40)} {
		at := page.Point{X: f.Size.Width/2 + dx, Y: measure.MM(12)}
		out = append(out, &page.Path{Segments: circle(at, measure.MM(3)), Stroke: &Leaf, StrokeWidth: measure.Pt(0.3)})
	}
	return out
}

// A Step is one step of a lesson with its number.
type Step struct {
	Item     *lesson.Item
	Number   int
	Critical bool
}

// Scene sets what a group sees, over a whole column: steps in large words, below the
// picture of one of them or, without a picture, in the middle.
func (s *Setter) Scene(steps []Step, figure *lesson.Block, width, height Length, tag *page.Tag) Strip {
	words := s.SceneWords(steps, width, tag)
	out := Strip{Height: height}
	top := (height - words.Height).Scale(0.45)
	if d := s.sceneDrawing(figure); d != nil {
		room := height - words.Height - measure.MM(5)
		w := min(width, room.Scale(d.Width/d.Height))
		pic := s.figure(d, figure.Alt, (width-w)/2, w, tag)
		out.overlay(pic, 0, 0)
		top = height - words.Height
	}
	out.overlay(words, 0, max(top, 0))
	return out
}

// SceneWords sets steps in large words with large numerals.
func (s *Setter) SceneWords(steps []Step, width Length, tag *page.Tag) Strip {
	numeral := s.text().bold().in(Leaf).scaled(1.7)
	indent := s.mm(5)
	for _, st := range steps {
		indent = max(indent, s.width(s.Locale.Number(st.Number), numeral)+s.mm(2.4))
	}
	list := tag.List("Disc")
	var rows []Strip
	for i, step := range steps {
		li := list.Add("LI")
		lbl, body := li.Add("Lbl"), li.Add("LBody")
		var text []Strip
		if step.Critical {
			text = s.Paragraph(plainText(s.Locale.Label("critical-step")), s.small().bold().in(Clay), indent, width-indent, body.Add("P"))
		}
		text = append(text, s.balanced(withoutFigures(step.Item.Blocks), s.text(), indent, width-indent, body)...)
		st := join(text)
		st.line(s.oneLine(s.Locale.Number(step.Number), numeral, lbl), 0, s.ascent+s.Sizes.Text.Scale(0.25))
		st.Height = max(st.Height, s.Grid+s.Sizes.Text.Scale(0.3))
		if step.Critical {
			st.box(-measure.MM(4.4), s.half()/3, measure.MM(1.8), st.Height-s.half()/2, Ink)
		}
		if st.Before, st.Keep = 0, false; i > 0 {
			st.Before = s.half()
		}
		rows = append(rows, st)
	}
	return join(rows)
}

// Seen sets the picture that the group sees, small, with its description, for the trainer.
func (s *Setter) Seen(figure *lesson.Block, width Length, tag *page.Tag) []Strip {
	out := s.Paragraph(plainText(s.Locale.Label("group-sees")), s.text().bold(), 0, width, tag.Add("P"))
	if d := s.sceneDrawing(figure); d != nil {
		pic := s.figure(d, figure.Alt, 0, width, tag)
		pic.Before = s.half()
		out = append(out, pic)
	}
	alt := s.Paragraph(plainText(figure.Alt), s.text(), 0, width, tag.Add("P"))
	return append(out, SpaceBefore(alt, s.half())...)
}

// Talk sets steps as the trainer reads them, without their pictures.
func (s *Setter) Talk(steps []Step, width Length, tag *page.Tag) []Strip {
	list := tag.List("Disc")
	var out []Strip
	for i, step := range steps {
		it := lesson.Item{Blocks: withoutFigures(step.Item.Blocks)}
		st := s.step(&it, step.Number, step.Critical, width, list.Add("LI"))
		if st.Bar = false; step.Critical {
			st.box(-s.mm(2.6), s.half()/3, s.mm(1.1), st.Height-2*s.half()/3, Ink)
		}
		if i > 0 {
			st.Before = s.half()
		}
		out = append(out, st)
	}
	return out
}

// KeyPairs sets the items of a part in two columns, each hung on a short rule.
func (s *Setter) KeyPairs(p *lesson.Part, width Length, tag *page.Tag) []Strip {
	out := s.PartHeading(p.Heading, width, tag)
	indent := s.mm(9.5)
	var cells []cell
	for _, it := range p.Items(false) {
		cells = append(cells, cell{set: func(w Length, t *page.Tag) Strip {
			st := join(s.Blocks(withoutFigures(it.Blocks), s.text(), indent, w-indent, t.Add("LI").Add("LBody")))
			st.box(0, s.ascent-s.Sizes.Text.Scale(0.3), s.mm(6), s.pt(1.6), Leaf)
			return st
		}})
	}
	return append(out, SpaceBefore(s.pairs(cells, width, tag.List("Disc")), 0)...)
}

func (s *Setter) sceneDrawing(figure *lesson.Block) *drawing.Drawing {
	if figure == nil {
		return nil
	}
	return s.Drawing(figure.Source)
}

// Fill is white that pushes what follows to the foot of a column of the given height.
func Fill(before, after []Strip, height Length) Strip {
	return Strip{Height: max(height-Height(before)-Height(after), 0)}
}
