package sheet

import (
	"fmt"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// A voice says numbers and their sources the way one language of a pack does.
type voice struct {
	loc  *locale.Locale
	pack *pack.Pack
}

func (w voice) label(id string, vars ...locale.Var) string { return w.loc.Label(id, vars...) }

// with fills a placeholder with a whole number in the language's digits.
func (w voice) with(name string, n int) locale.Var { return locale.With(name, w.loc.Number(n)) }

// amount writes a clinical number without its unit: 10, or 4 to 5.
func (w voice) amount(n *pack.Number) string {
	if n.Amount != "" {
		return w.loc.Decimal(n.Amount)
	}
	return w.label("range", locale.With("Low", w.loc.Decimal(n.Low)), locale.With("High", w.loc.Decimal(n.High)))
}

// plus marks an amount of a table that is a lower end.
func (w voice) plus(n int, open bool) string {
	if open {
		return w.loc.Number(n) + "+"
	}
	return w.loc.Number(n)
}

// orMore says that an amount is a lower end.
func (w voice) orMore(n int, open bool) string {
	if open {
		return w.label("or-more", locale.With("Amount", w.loc.Number(n)))
	}
	return w.loc.Number(n)
}

// tenths writes tenths as a decimal: -4 is a minus sign (U+2212) and 0.4. A zero after
// the mark is left out, since 15.0 is easily read as 150.
func (w voice) tenths(n int) string {
	sign := ""
	if n < 0 {
		sign, n = "\u2212", -n
	}
	text := fmt.Sprint(n / 10)
	if n%10 != 0 {
		text = fmt.Sprintf("%d.%d", n/10, n%10)
	}
	return w.ltr(sign + w.loc.Decimal(text))
}

// signed writes a whole number that may be negative.
func (w voice) signed(n int) string { return w.tenths(10 * n) }

// ltr keeps a sign before its number where the text runs from right to left.
func (w voice) ltr(s string) string {
	if w.loc.RTL {
		return "\u2066" + s + "\u2069"
	}
	return s
}

// cite says where a clinical number comes from.
func (w voice) cite(n *pack.Number) []lesson.Inline {
	if n.Source.Name == "" {
		return words(w.label("common-practice"))
	}
	return w.from(n.Source.Name, n.Place)
}

// from cites a source in the words that the lessons of this language cite it in, and
// a place in it that has a number, such as "page C-53".
func (w voice) from(id, place string) []lesson.Inline {
	out := []lesson.Inline{{Kind: lesson.Link, Scheme: "source", Target: id, Children: words(w.called(id))}}
	if place = strings.TrimPrefix(strings.TrimPrefix(place, "pages "), "page "); strings.ContainsAny(place, "0123456789") {
		out = append(out, words(w.comma()+w.ltr(strings.ReplaceAll(place, " and ", ", ")))...)
	}
	return out
}

func (w voice) comma() string {
	if w.loc.RTL {
		return "، "
	}
	return ", "
}

// called is what the lessons call a source; else its author and year.
func (w voice) called(id string) string {
	name := ""
	for _, l := range w.lessons() {
		l.WalkInlines(func(in *lesson.Inline) {
			if name == "" && in.Kind == lesson.Link && in.Scheme == "source" && in.Target == id {
				name = lesson.Plain(in.Children)
			}
		})
		if name != "" {
			return name
		}
	}
	if s := w.pack.Sources[id]; s != nil && s.Author != "" {
		return w.ltr(s.Author + ", " + w.loc.Number(s.Year))
	}
	return id
}

// lessons are those of the language, in the order of the pack.
func (w voice) lessons() []*lesson.Lesson {
	var out []*lesson.Lesson
	for _, m := range w.pack.Modules {
		if l := m.Lessons[w.loc.Tag]; l != nil {
			out = append(out, l)
		}
	}
	return out
}

// A grid is a ruled table: what it is called, its head, and rows whose first cell says
// what the row is.
type grid struct {
	caption string
	head    []string
	rows    [][][]lesson.Inline
	shares  []float64
	row     float64 // height of a row to write in, in mm; 0: as high as its words
}

func (g grid) block() lesson.Block {
	b := lesson.Block{Kind: lesson.Table, Ruled: true, Dense: true, Row: g.row, Shares: g.shares, Caption: g.caption, Heads: true}
	head := lesson.Row{}
	for _, h := range g.head {
		head.Cells = append(head.Cells, words(h))
	}
	b.Rows = append(b.Rows, head)
	for _, r := range g.rows {
		b.Rows = append(b.Rows, lesson.Row{Cells: r})
	}
	return b
}

func bold(s string) []lesson.Inline {
	return []lesson.Inline{{Kind: lesson.Strong, Children: words(s)}}
}

// bracketed puts a source in brackets after words.
func bracketed(ins, src []lesson.Inline) []lesson.Inline {
	return append(append(append(ins, words("(")...), src...), words(")")...)
}
