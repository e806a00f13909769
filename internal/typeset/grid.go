package typeset

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/page"
)

// This file holds steps and warning signs in two columns, for pieces that teach in
// pictures and few words. They read along the rows, in the order of the lesson.

// A cell sets itself in a width; what it holds is tagged under a parent.
type cell struct {
	set      func(width Length, tag *page.Tag) Strip
	pictured bool
}

// pairs sets cells in rows of two or, across both columns, of one, so that they take
// the least room; a column is never so narrow that words run far below their picture.
// A row is never broken.
func (s *Setter) pairs(cells []cell, width Length, tag *page.Tag) []Strip {
	gap := s.mm(8)
	half := (width - gap) / 2
	most := s.figureWidth().Scale(0.75) + 4*s.Grid
	tight := half-s.figureWidth() < s.mm(12)+s.Sizes.Text.Scale(8)
	n := len(cells)
	narrow, wide := make([]Length, n), make([]Length, n)
	for i, c := range cells {
		narrow[i], wide[i] = c.set(half, &page.Tag{}).Height, c.set(width, &page.Tag{}).Height
		if c.pictured && tight {
			narrow[i] = most + 1
		}
	}
	// least is the room that the cells from i on take, paired whether i begins a pair.
	least, paired := make([]Length, n+1), make([]bool, n)
	for i := n - 1; i >= 0; i-- {
		least[i] = wide[i] + s.half() + least[i+1]
		if i+1 < n && max(narrow[i], narrow[i+1]) <= most {
			if h := max(narrow[i], narrow[i+1]) + s.half() + least[i+2]; h <= least[i] {
				least[i], paired[i] = h, true
			}
		}
	}
	var rows []Strip
	for i := 0; i < n; i++ {
		var row Strip
		if paired[i] {
			row = cells[i].set(half, tag)
			second := cells[i+1].set(half, tag)
			row.overlay(second, half+gap, 0)
			row.Height = max(row.Height, second.Height)
			i++
		} else {
			row = cells[i].set(width, tag)
		}
		row.Before, row.Keep = s.half(), false
		rows = append(rows, row)
	}
	return rows
}

// StepPairs sets the steps of a part in two columns.
func (s *Setter) StepPairs(p *lesson.Part, part int, width Length, tag *page.Tag) []Strip {
	out := s.PartHeading(p.Heading, width, tag)
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List || !b.Ordered {
			out = append(out, s.block(b, s.text(), 0, width, tag)...)
			continue
		}
		var cells []cell
		for k := range b.Items {
			it, number := &b.Items[k], b.Start+k
			critical := s.Critical != nil && s.Critical(part, number)
			cells = append(cells, cell{pictured: it.Figure() != nil, set: func(w Length, t *page.Tag) Strip {
				return s.stepCell(it, number, critical, w, t.Add("LI"))
			}})
		}
		rows := s.pairs(cells, width, tag.List("Decimal"))
		if i == 0 && len(rows) > 0 {
			rows[0].Before = 0
		}
		out = append(out, rows...)
	}
	return out
}

// stepCell sets one step: numeral, words, and the picture at the end side.
func (s *Setter) stepCell(it *lesson.Item, number int, critical bool, width Length, li *page.Tag) Strip {
	st := s.step(it, number, critical, width, li)
	st.Bar = false
	if critical {
		st.box(-s.mm(2.6), s.half()/3, s.mm(1.1), st.Height-2*s.half()/3, Ink)
	}
	return st
}

// SignPairs sets warning signs in two columns under a heading white on ink: what to
// see in bold, what to do on a line below it or, run in, right after it, and the
// picture at the end side.
func (s *Setter) SignPairs(p *lesson.Part, runIn bool, width Length, tag *page.Tag) []Strip {
	out := []Strip{s.closeBar(p.Heading, width, tag)}
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List {
			out = append(out, s.block(b, s.text(), 0, width, tag)...)
			continue
		}
		var cells []cell
		for k := range b.Items {
			it := &b.Items[k]
			cells = append(cells, cell{pictured: it.Figure() != nil, set: func(w Length, t *page.Tag) Strip {
				return s.signCell(it, runIn, w, t.Add("LI"))
			}})
		}
		rows := s.pairs(cells, width, tag.List("Disc"))
		for k := range rows {
			for n := range rows[k].pieces {
				rows[k].pieces[n].y += s.half() / 2
			}
			rows[k].Height += s.half()
			rows[k].Before = 0
			rows[k].Again = func() Strip { return s.closeBar(p.Heading, width, nil) }
			if k+1 < len(rows) {
				rows[k].box(0, rows[k].Height-s.pt(0.3), width, s.pt(0.6), Ink)
			}
		}
		out = append(out, rows...)
	}
	if n := len(out); n > 0 {
		out[n-1].box(0, out[n-1].Height-s.pt(1.2), width, s.pt(1.2), Ink)
	}
	return out
}

func (s *Setter) signCell(it *lesson.Item, runIn bool, width Length, li *page.Tag) Strip {
	body := li.Add("LBody")
	figure := it.Figure()
	room := width
	if figure != nil && s.Drawing(figure.Source) != nil {
		room -= s.figureWidth() + s.mm(3)
	}
	sign, rest, _ := splitSign(it.Blocks)
	var st Strip
	if sign == nil || runIn {
		st = join(s.Blocks(withoutFigures(it.Blocks), s.text(), 0, room, body))
	} else {
		rows := s.Paragraph(sign, s.text(), 0, room, body.Add("P"))
		st = join(append(rows, s.Blocks(rest, s.text(), 0, room, body)...))
	}
	if room < width {
		pic := s.figure(s.Drawing(figure.Source), figure.Alt, width-s.figureWidth(), s.figureWidth(), body)
		st.overlay(pic, 0, 0)
		st.Height = max(st.Height, pic.Height)
	}
	return st
}

func withoutFigures(bs []lesson.Block) []lesson.Block {
	var out []lesson.Block
	for _, b := range bs {
		if b.Kind != lesson.Figure {
			out = append(out, b)
		}
	}
	return out
}

// Gallery sets pictures in columns, each over the words that stand for it.
func (s *Setter) Gallery(pictures []lesson.Block, columns int, width Length, tag *page.Tag) []Strip {
	gap := s.mm(5)
	col := (width - gap*Length(columns-1)) / Length(columns)
	var out []Strip
	for k := 0; k < len(pictures); k += columns {
		st := Strip{Before: s.half()}
		for n, b := range pictures[k:min(k+columns, len(pictures))] {
			d := s.Drawing(b.Source)
			if d == nil {
				continue // a rule has said so already
			}
			sect := tag.Add("Sect")
			rows := []Strip{s.figure(d, b.Alt, 0, col, sect)}
			rows = append(rows, s.Paragraph(plainText(b.Alt), s.text().scaled(0.9), 0, col, sect.Add("P"))...)
			c := join(rows)
			st.overlay(c, (col+gap)*Length(n), 0)
			st.Height = max(st.Height, c.Height)
		}
		out = append(out, st)
	}
	return out
}
