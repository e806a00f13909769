package typeset

import (
	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// half is half a grid unit: the white between paragraphs and items.
func (s *Setter) half() Length { return s.Grid / 2 }

// halves rounds a height up to half grid units.
func (s *Setter) halves(h Length) Length { return (h + s.half() - 1) / s.half() * s.half() }

// Paragraph sets inlines as lines of the grid, x from the start edge.
// A paragraph is not broken after its first line nor before its last.
func (s *Setter) Paragraph(ins []lesson.Inline, st Style, x, width Length, tag *page.Tag) []Strip {
	lines := s.Lines(ins, st, width, tag)
	out := make([]Strip, len(lines))
	for i, l := range lines {
		out[i].Height = s.Grid
		out[i].Keep = i+1 < len(lines) && (i == 0 || i == len(lines)-2)
		out[i].line(l, x, s.ascent)
	}
	return out
}

// Heading sets a heading that stays with what follows. before is the white above it.
func (s *Setter) Heading(ins []lesson.Inline, st Style, before, x, width Length, tag *page.Tag) []Strip {
	leading := s.halves(st.Size.Scale(1.22 * float64(s.Grid) / float64(s.Sizes.Leading)))
	lines := s.Lines(ins, st, width, tag)
	out := make([]Strip, len(lines))
	for i, l := range lines {
		out[i].Height = leading
		out[i].Keep = true
		out[i].line(l, x, leading.Scale(0.78))
	}
	if n := len(out); n > 0 {
		out[0].Before = before
		out[n-1].Height += s.half()
	}
	return out
}

// keepEnds keeps the first two and the last two of a list's items together, so
// that none is left alone at the foot or the top of a page. items holds the strips
// of each item.
func keepEnds(items [][]Strip) (out []Strip) {
	for i, it := range items {
		if n := len(it); n > 0 && i+1 < len(items) && (i == 0 || i == len(items)-2) {
			it[n-1].Keep = true
		}
		out = append(out, it...)
	}
	return out
}

// Blocks sets blocks one under the other.
func (s *Setter) Blocks(bs []lesson.Block, st Style, x, width Length, tag *page.Tag) []Strip {
	var out []Strip
	for i := range bs {
		strips := s.block(&bs[i], st, x, width, tag)
		if i > 0 && len(strips) > 0 {
			strips[0].Before = max(strips[0].Before, s.half())
		}
		out = append(out, strips...)
	}
	return out
}

func (s *Setter) block(b *lesson.Block, st Style, x, width Length, tag *page.Tag) []Strip {
	switch b.Kind {
	case lesson.Paragraph, lesson.Code:
		return s.Paragraph(b.Inlines, st, x, width, tag.Add("P"))
	case lesson.Heading:
		role := "H3"
		if b.Level > 3 {
			role = "H4"
		}
		return s.Heading(b.Inlines, st.bold(), s.half(), x, width, tag.Add(role))
	case lesson.List:
		numbering := "Disc"
		if b.Ordered {
			numbering = "Decimal"
		}
		return s.list(b, st, x, width, tag.List(numbering))
	case lesson.Quote:
		strips := s.Blocks(b.Blocks, st, x+s.listIndent(), width-s.listIndent(), tag.Add("BlockQuote"))
		for i := range strips {
			strips[i].box(x+s.mm(1.5), 0, s.pt(1), strips[i].Height, Leaf)
		}
		return strips
	case lesson.Table:
		if b.Ruled {
			return s.ruledTable(b, x, width, tag)
		}
		return s.table(b, st, x, width, tag.Add("Table"))
	case lesson.Form:
		return []Strip{shiftedStrip(s.FormLine(b.Fields, width), x)}
	case lesson.Figure:
		if name := b.Sheet(); name != "" {
			if s.Sheet == nil {
				return nil
			}
			return s.Blocks(s.Sheet(name), st, x, width, tag)
		}
		if b.Drawing != nil {
			w := min(width, measure.MM(b.Drawing.Width))
			return []Strip{s.figure(b.Drawing, b.Alt, x+(width-w)/2, w, tag)}
		}
		d := s.Drawing(b.Source)
		if d == nil {
			return nil // a rule has said so already
		}
		w := min(width.Scale(0.62), s.mm(76))
		return []Strip{s.figure(d, b.Alt, x+(width-w)/2, w, tag)}
	case lesson.Rule:
		r := Strip{Height: s.Grid}
		r.box(x, s.half(), width, s.pt(0.5), Leaf)
		return []Strip{r}
	}
	return nil
}

// figure sets a drawing as a strip of its own.
func (s *Setter) figure(d *drawing.Drawing, alt string, x, width Length, tag *page.Tag) Strip {
	t := tag.Add("Figure")
	t.Alt = alt
	g := s.picture(d, width, t)
	t.BBox = &[4]Length{0, 0, g.Clip.Width, g.Clip.Height}
	st := Strip{Height: s.halves(g.Clip.Height)}
	st.add(x, (st.Height-g.Clip.Height)/2, width, g)
	return st
}

// list sets a plain list: numerals or short dashes hang before the items.
func (s *Setter) list(b *lesson.Block, st Style, x, width Length, tag *page.Tag) []Strip {
	indent := s.listIndent()
	if b.Ordered {
		indent = max(indent, s.width(s.Locale.Number(b.Start+len(b.Items)-1)+".", st)+s.mm(1.8))
	}
	items := make([][]Strip, len(b.Items))
	for i, it := range b.Items {
		li := tag.Add("LI")
		lbl := li.Add("Lbl")
		body := s.Blocks(it.Blocks, st, x+indent, width-indent, li.Add("LBody"))
		if len(body) == 0 {
			body = []Strip{{Height: s.Grid}}
		}
		switch {
		case it.Task != lesson.NoTask:
			s.square(&body[0], x, s.ascent)
		case b.Ordered:
			body[0].line(s.oneLine(s.Locale.Number(b.Start+i)+".", st, lbl), x, s.ascent)
		default:
			body[0].box(x+s.mm(0.6), s.ascent-st.Size.Scale(0.27), s.mm(2), s.pt(0.9), Leaf)
		}
		items[i] = body
	}
	return keepEnds(items)
}

// square adds an open square big enough for a pen, standing on the baseline at y.
func (s *Setter) square(st *Strip, x, baseline Length) {
	side := s.mm(4.5)
	mid := baseline - s.Sizes.Text.Scale(0.33)
	st.frame(x, mid-side/2, side, side, s.pt(0.9), Ink)
}

// table sets a table with columns of equal width and a rule under its head, which is
// repeated on every page that the table goes on to; rows are not broken.
func (s *Setter) table(b *lesson.Block, st Style, x, width Length, tag *page.Tag) []Strip {
	if len(b.Rows) == 0 || len(b.Rows[0].Cells) == 0 {
		return nil
	}
	again := func() Strip { return s.tableRow(&b.Rows[0], st, true, x, width, nil) }
	var out []Strip
	for i := range b.Rows {
		strip := s.tableRow(&b.Rows[i], st, i == 0, x, width, tag.Add("TR"))
		if strip.Keep = i == 0; i > 0 {
			strip.Again = again
		}
		out = append(out, strip)
	}
	return out
}

// tableRow sets one row; tr is nil for a head that is repeated.
func (s *Setter) tableRow(row *lesson.Row, st Style, head bool, x, width Length, tr *page.Tag) Strip {
	gap := s.mm(3)
	n := Length(len(row.Cells))
	col := (width - gap*(n-1)) / n
	look, line := st, s.pt(0.4)
	if head {
		look, line = st.bold(), s.pt(1)
	}
	var strip Strip
	for c, cell := range row.Cells {
		var td *page.Tag
		if tr != nil {
			if td = tr.Add("TD"); head {
				td.Role, td.Scope = "TH", "Column"
			}
		}
		j := join(s.Paragraph(cell, look, x+(col+gap)*Length(c), col, td))
		strip.overlay(j, 0, 0)
		strip.Height = max(strip.Height, j.Height)
	}
	strip.Height += s.half()
	strip.box(x, strip.Height-s.half()/2, width, line, Leaf)
	return strip
}
