package typeset

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// Furniture is what stands on every page around the column.
type Furniture struct {
	Head string   // at the top, away from the spine
	Foot []string // up to two lines under the column
	Page string   // "Page 3 of 60", at the foot, away from the spine
	Band string   // "Awaiting clinical review"; empty when all is signed off
}

// Distances from the foot of the sheet. Nothing stands within 7 mm of its edge.
var (
	bandFoot   = measure.MM(8)
	bandHeight = measure.MM(5.4)
	footLines  = [2]Length{measure.MM(19.6), measure.MM(16)}
	footRule   = measure.MM(23.4)
	headLine   = measure.MM(10.2)
)

// BookletFrame is the A5 page of a booklet.
func BookletFrame(rtl bool) Frame {
	return Frame{Size: measure.A5, Top: measure.MM(14.5), Foot: measure.MM(25.5), Inner: measure.MM(15), Outer: measure.MM(11), RTL: rtl}
}

// WorkFrame is a page of office paper for pieces used flat: forms, handouts, plans.
func WorkFrame(paper measure.Size, rtl bool) Frame {
	return Frame{Size: paper, Top: measure.MM(17), Foot: measure.MM(26.5), Inner: measure.MM(16), Outer: measure.MM(16), RTL: rtl}
}

// SheetFrame is a single sheet: no running head, and the widest column there is.
func SheetFrame(paper measure.Size, rtl bool) Frame {
	return Frame{Size: paper, Top: measure.MM(12), Foot: measure.MM(26.5), Inner: measure.MM(12), Outer: measure.MM(12), RTL: rtl}
}

// Furnish sets the furniture of one page. It is all artifact: no part of the text.
func (s *Setter) Furnish(f Frame, n int, fu Furniture) []page.Item {
	left, width, foot := f.Left(n), f.Width(), f.Size.Height
	var st Strip
	// Away from the spine is the end edge on a recto and the start edge on a verso,
	// in every reading direction.
	outerEnd := n%2 == 0
	outer := func(l Line, y Length) {
		if outerEnd {
			st.line(l, width-l.Width, y)
		} else {
			st.line(l, 0, y)
		}
	}
	inner := func(l Line, y Length) {
		if outerEnd {
			st.line(l, 0, y)
		} else {
			st.line(l, width-l.Width, y)
		}
	}
	if fu.Head != "" {
		outer(s.oneLine(fu.Head, s.foot(), nil), headLine)
	}
	if len(fu.Foot) > 0 || fu.Page != "" {
		st.box(0, foot-footRule, width, measure.Pt(0.5), Leaf)
	}
	for i, t := range fu.Foot {
		if i < len(footLines) {
			inner(s.oneLine(t, s.foot(), nil), foot-footLines[i])
		}
	}
	if fu.Page != "" {
		outer(s.oneLine(fu.Page, s.foot().bold(), nil), foot-footLines[0])
	}
	if fu.Band != "" {
		s.band(&st, fu.Band, foot-bandFoot-bandHeight, width)
	}
	return st.place(left, 0, width, f.RTL)
}

// band is a quiet, unmissable strip.
func (s *Setter) band(st *Strip, text string, y, width Length) {
	style := s.foot().bold().in(Clay)
	l := s.oneLine(text, style, nil)
	if room := width - measure.MM(3); l.Width > room {
		style = style.scaled(float64(room) / float64(l.Width))
		l = s.oneLine(text, style, nil)
	}
	st.frame(0, y, width, bandHeight, measure.Pt(0.8), Clay)
	st.line(l, (width-l.Width)/2, y+bandHeight/2+style.Size.Scale(0.36))
}

// Ruled sets lines to write on down to a height.
func (s *Setter) Ruled(width, height Length) []Strip {
	var out []Strip
	row := 2 * s.Grid
	for y := row; y <= height; y += row {
		st := Strip{Height: row}
		st.box(0, row-measure.Pt(0.5), width, measure.Pt(0.4), Leaf)
		out = append(out, st)
	}
	return out
}

// Text sets plain words in a named look, for what a piece says itself.
func (s *Setter) Text(words string, look Look, x, width Length, tag *page.Tag) []Strip {
	st := s.look(look)
	if look == TitleLook || look == PartLook {
		return s.Heading(plainText(words), st, 0, x, width, tag)
	}
	return s.Paragraph(plainText(words), st, x, width, tag)
}

// A Look is one of the four levels of text, or bold text.
type Look int

// Looks.
const (
	TextLook Look = iota
	BoldLook
	SmallLook
	PartLook
	TitleLook
)

func (s *Setter) look(l Look) Style {
	switch l {
	case BoldLook:
		return s.text().bold()
	case SmallLook:
		return s.small()
	case PartLook:
		return s.part()
	case TitleLook:
		return s.title()
	}
	return s.text()
}

// Entry sets one line of a table of contents: a title and its page number at the end edge.
func (s *Setter) Entry(title []lesson.Inline, number string, target string, width Length, tag *page.Tag) Strip {
	li := tag.Add("LI")
	link := li.Add("LBody").Add("Link")
	link.Alt = lesson.Plain(title)
	st := join(s.Paragraph(title, s.text(), 0, width-measure.MM(14), link))
	n := s.oneLine(number, s.text().bold().in(Leaf), li.Add("Lbl"))
	st.line(n, width-n.Width, st.Height-s.Grid+s.ascent)
	st.Height += s.half()
	st.box(0, st.Height-s.half()/2, width, measure.Pt(0.4), Leaf)
	st.add(0, 0, width, &page.Link{Width: width, Height: st.Height - s.half()/2, URI: "#" + target, Tag: link})
	st.Before, st.Keep = 0, false
	return st
}

// Space is white of a whole number of grid units.
func (s *Setter) Space(units int) Strip { return Strip{Height: s.Grid * Length(units)} }

// Stack is strips as one that is never broken.
func Stack(strips []Strip) Strip { return join(strips) }

// Height is the room that strips take one under the other.
func Height(strips []Strip) Length { return height(strips) }

// SpaceBefore asks for white above the first strip.
func SpaceBefore(strips []Strip, l Length) []Strip {
	if len(strips) > 0 {
		strips[0].Before = l
	}
	return strips
}
