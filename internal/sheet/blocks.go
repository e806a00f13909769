package sheet

import (
	"strconv"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
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
func Cite(loc *locale.Locale, p *pack.Pack, sentence, source string) lesson.Block {
	b := Text(sentence)
	if s := p.Sources[source]; s != nil {
		cited := lesson.Inline{Kind: lesson.Link, Scheme: "source", Target: source, Children: words("\u2068" + s.Author + ", " + loc.Number(s.Year) + "\u2069")}
		b.Inlines = append(b.Inlines, words(" (")[0], cited, words(")")[0])
	}
	return b
}

// Amount is a clinical number of the pack: its amount, or the upper end of its range. It
// is 0 in a pack that lacks it.
func Amount(p *pack.Pack, id string) float64 {
	n := p.Numbers[id]
	if n == nil {
		return 0
	}
	text := n.Amount
	if text == "" {
		text = n.High
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0 // a rule has said so already
	}
	return v
}

// Written is a clinical number of the pack as it is read: "4 to 5" or "15", without its unit.
func Written(loc *locale.Locale, p *pack.Pack, id string) string {
	n := p.Numbers[id]
	switch {
	case n == nil:
		return ""
	case n.Amount != "":
		return loc.Decimal(n.Amount)
	}
	return loc.Label("range", locale.With("Low", loc.Decimal(n.Low)), locale.With("High", loc.Decimal(n.High)))
}

// bullets and numbered are lists of sentences.
func bullets(sentences ...string) lesson.Block { return list(false, sentences) }

func numbered(sentences ...string) lesson.Block { return list(true, sentences) }

func list(ordered bool, sentences []string) lesson.Block {
	b := lesson.Block{Kind: lesson.List, Ordered: ordered, Start: 1}
	for _, s := range sentences {
		b.Items = append(b.Items, lesson.Item{Blocks: []lesson.Block{Text(s)}})
	}
	return b
}
