package typeset

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// This file holds what forms are made of: lines to write on, and ruled tables.

// A Field is a label with a line to write on.
type Field = lesson.Field

// FormLine sets fields side by side.
func (s *Setter) FormLine(fields []Field, width Length) Strip {
	st := Strip{Height: s.Grid + s.half(), Before: s.half()}
	base := st.Height - s.Grid + s.ascent
	gap := s.mm(4)
	room := width - gap*Length(len(fields)-1)
	var x Length
	for _, f := range fields {
		w := room.Scale(f.Share)
		l := s.oneLine(f.Label, s.small(), nil)
		st.line(l, x, base)
		at := l.Width + s.mm(2)
		st.box(x+at, base+s.pt(1.5), w-at, s.pt(0.5), Ink)
		if f.Value != "" {
			look, most := s.text(), w-at-s.mm(2)
			if long := s.width(f.Value, look); long > most {
				look = look.scaled(float64(most) / float64(long))
			}
			st.line(s.oneLine(f.Value, look, nil), x+at+s.mm(1), base)
		}
		x += w + gap
	}
	return st
}

// A Cell is one cell of a ruled table.
type Cell struct {
	Text   []lesson.Inline
	Bold   bool
	End    bool   // short words, set against the end edge so that numbers line up
	Square bool   // an open square to mark, instead of text
	Head   bool   // it says what its row is
	Lang   string // BCP 47, when it differs from the piece's
	// By sets the text when it is in another language, from that language's start edge;
	// nil is the setter of the table.
	By *Setter
}

// Plain makes a cell of plain words.
func Plain(words string) Cell { return Cell{Text: plainText(words)} }

// Head makes a cell of a table's head.
func Head(words string) Cell { return Cell{Text: plainText(words), Bold: true} }

// A Ruled table has columns of given shares of the width, a head that is repeated on
// every page, and rows at least as high as Row.
type RuledTable struct {
	Columns []float64 // shares of the width; they add up to 1
	Head    []Cell
	Row     Length
	Close   bool // rows have no white but that of their lines
}

// Table sets the rows of a ruled table. Rows are not broken.
func (s *Setter) Table(t RuledTable, rows [][]Cell, width Length, tag *page.Tag) []Strip {
	table := tag.Add("Table")
	head := s.row(t, t.Head, true, width, table.Add("TR"))
	head.Keep = true
	out := []Strip{head}
	again := func() Strip { return s.row(t, t.Head, true, width, nil) }
	for _, r := range rows {
		st := s.row(t, r, false, width, table.Add("TR"))
		st.Again = again
		out = append(out, st)
	}
	return out
}

func (s *Setter) row(t RuledTable, cells []Cell, head bool, width Length, tr *page.Tag) Strip {
	pad := s.mm(1.6)
	var st Strip
	var below Length // white below words that need more than the row's height
	if !head {
		st.Height = t.Row
		if t.Close {
			below = s.half() / 4
		}
	}
	var x Length
	for i, c := range cells {
		w := width.Scale(t.Columns[i])
		var td *page.Tag
		if tr != nil {
			if td = tr.Add("TD"); head {
				td.Role, td.Scope = "TH", "Column"
			} else if c.Head {
				td.Role, td.Scope = "TH", "Row"
			}
		}
		if td != nil {
			td.Lang = c.Lang
		}
		switch {
		case c.Square:
			s.square(&st, x+(w-s.mm(4.5))/2, s.ascent)
			st.Height = max(st.Height, s.Grid)
		default:
			by := s
			if c.By != nil {
				by = c.By
			}
			look := by.text()
			if c.Bold {
				look = look.bold()
			}
			room, at := w-2*pad, x+pad
			if c.End {
				if short := by.widest(c.Text, look, room); short < room {
					at, room = at+room-short, short
				}
			}
			lines := by.Paragraph(c.Text, look, at, room, td)
			if by.base != s.base {
				turned(lines, 2*x+w)
			}
			body := join(lines)
			st.overlay(body, 0, 0)
			st.Height = max(st.Height, body.Height+below)
		}
		x += w
	}
	for i := range st.pieces {
		st.pieces[i].y += s.half() / 4
	}
	if !t.Close || head {
		st.Height += s.half() / 2
	}
	line := s.pt(0.4)
	if head {
		line = s.pt(1.2)
	}
	st.box(0, st.Height-line, width, line, Ink)
	x = 0
	for i := range len(cells) - 1 {
		x += width.Scale(t.Columns[i])
		st.box(x, 0, s.pt(0.3), st.Height, Ink)
	}
	st.Before, st.Keep = 0, false
	return st
}

// turned puts what lies at one end of a cell at the other; ends is the sum of the
// distances of both ends from the start edge.
func turned(strips []Strip, ends Length) {
	for i := range strips {
		for _, ps := range [][]piece{strips[i].pieces, strips[i].own} {
			for k := range ps {
				ps[k].x = ends - ps[k].x - ps[k].width
			}
		}
	}
}

// ruledTable sets a table of blocks as a ruled one.
func (s *Setter) ruledTable(b *lesson.Block, x, width Length, tag *page.Tag) []Strip {
	if len(b.Rows) == 0 || len(b.Rows[0].Cells) == 0 {
		return nil
	}
	t := RuledTable{Columns: b.Shares, Row: 2 * s.Grid}
	if b.Dense {
		t.Row = 0
	}
	if b.Row > 0 {
		t.Row, t.Close = measure.MM(b.Row), true
	}
	if len(t.Columns) == 0 {
		for range b.Rows[0].Cells {
			t.Columns = append(t.Columns, 1/float64(len(b.Rows[0].Cells)))
		}
	}
	cells := func(r lesson.Row, head bool) []Cell {
		var out []Cell
		for i, c := range r.Cells {
			out = append(out, Cell{Text: c, Bold: head, Head: b.Heads && i == 0, End: i < len(b.Align) && b.Align[i] == lesson.AlignEnd})
		}
		return out
	}
	t.Head = cells(b.Rows[0], true)
	var rows [][]Cell
	for _, r := range b.Rows[1:] {
		rows = append(rows, cells(r, false))
	}
	var out []Strip
	if b.Caption != "" {
		out = s.Heading(plainText(b.Caption), s.text().bold(), s.half(), 0, width, tag.Add("P"))
	}
	out = append(out, s.Table(t, rows, width, tag)...)
	for i := range out {
		out[i] = shiftedStrip(out[i], x)
	}
	return out
}

// shiftedStrip moves a strip's content from the start edge.
func shiftedStrip(st Strip, dx Length) Strip {
	st.pieces, st.own = shifted(st.pieces, dx), shifted(st.own, dx)
	return st
}

// ShortCaution is the caution of pieces that do not carry a module's own block.
func (s *Setter) ShortCaution(word, text string, width Length, tag *page.Tag) Strip {
	pad := s.mm(2.5)
	ins := []lesson.Inline{{Kind: lesson.Strong, Children: plainText(word + ": ")}, {Kind: lesson.Text, Text: text}}
	body := join(s.Paragraph(ins, s.text(), pad, width-2*pad, tag.Add("P")))
	st := Strip{Height: body.Height + s.half(), Before: s.half()}
	st.overlay(body, 0, s.half()/2-s.pt(1))
	st.frame(0, 0, width, st.Height, s.pt(1.4), Clay)
	return st
}
