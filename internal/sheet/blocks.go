package sheet

import (
	"fmt"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// This file holds the blocks that sheets are made of.

func words(s string) []lesson.Inline { return []lesson.Inline{{Kind: lesson.Text, Text: s}} }

// Text is a paragraph.
func Text(s string) lesson.Block { return lesson.Block{Kind: lesson.Paragraph, Inlines: words(s)} }

// Bold is a paragraph in bold.
func Bold(s string) lesson.Block {
	return lesson.Block{Kind: lesson.Paragraph, Inlines: []lesson.Inline{{Kind: lesson.Strong, Children: words(s)}}}
}

// Heading is a heading within a page.
func Heading(s string) lesson.Block {
	return lesson.Block{Kind: lesson.Heading, Level: 3, Inlines: words(s)}
}

// Chart is a drawing in millimetres, the words that stand for it, and the data behind
// it, whose first row is the head; both are for those who cannot see it.
func Chart(d *drawing.Drawing, alt string, data [][]string) lesson.Block {
	return lesson.Block{Kind: lesson.Figure, Drawing: d, Alt: alt, Rows: rows(data)}
}

// Table is a ruled table; the first row is its head. ends lists the columns whose
// numbers line up at the end edge. dense makes its rows no higher than their words,
// for tables to read; the others are high enough to write in.
func Table(shares []float64, data [][]string, dense bool, ends ...int) lesson.Block {
	b := lesson.Block{Kind: lesson.Table, Ruled: true, Dense: dense, Shares: shares, Rows: rows(data)}
	if len(data) > 0 {
		b.Align = make([]lesson.Align, len(data[0]))
		for _, c := range ends {
			b.Align[c] = lesson.AlignEnd
		}
	}
	return b
}

func rows(data [][]string) []lesson.Row {
	var out []lesson.Row
	for _, r := range data {
		var row lesson.Row
		for _, c := range r {
			row.Cells = append(row.Cells, words(c))
		}
		out = append(out, row)
	}
	return out
}

// Form is labels with lines to write on, side by side.
func Form(fields ...lesson.Field) lesson.Block {
	return lesson.Block{Kind: lesson.Form, Fields: fields}
}

// Cite is a sentence with its source after it, as a lesson cites one: a link whose
// words are the author and the year.
func Cite(p *pack.Pack, sentence, source string) lesson.Block {
	b := Text(sentence + " ")
	if s := p.Sources[source]; s != nil {
		b.Inlines = append(b.Inlines, lesson.Inline{Kind: lesson.Link, Scheme: "source", Target: source,
			Children: words(fmt.Sprintf("(%s, %d)", s.Author, s.Year))})
	}
	return b
}
