package translate

import (
	"fmt"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/source"
)

// A Unit is one translatable block of a lesson.
type Unit struct {
	// ID tells the units of a lesson apart by its structure, so that the same block
	// has the same ID in every language: "title", "lead.1", "steps-2.heading", or
	// "steps-2.3.1" for the first block of the third step of the second part of
	// steps. It is an NMTOKEN of XML, as XLIFF wants.
	ID      string
	Kind    UnitKind
	Role    lesson.Role // of the part it stands in
	Part    int         // which of the parts with this role, from 1; 0 for title and lead
	Step    int         // which item of its part's ordered lists it belongs to, from 1; 0 for none
	Inlines []lesson.Inline
	Picture string      // alternative text: the picture it stands for
	Span    source.Span // of the text alone, without the marks of its block
}

// A UnitKind says what a unit is to a reader.
type UnitKind string

// The kinds of unit.
const (
	Title     UnitKind = "title"
	Heading   UnitKind = "heading"
	Paragraph UnitKind = "paragraph"
	ListItem  UnitKind = "list item"
	Alt       UnitKind = "alternative text"
	Question  UnitKind = "question"
	Option    UnitKind = "answer"
	Reason    UnitKind = "reason"
	Cell      UnitKind = "table cell"
)

// Units returns the units of a lesson in reading order. Blocks without words and code
// blocks, which are the same in every language, are none.
//
// Children of a part, item or quote are counted from 1; a list is not counted, but
// each of its items is, so that a step keeps its number.
func Units(l *lesson.Lesson) []Unit {
	if l == nil {
		return nil
	}
	w := &unitWalk{file: l.File}
	w.add(Unit{ID: "title", Kind: Title, Inlines: l.Title})
	w.blocks("lead", Unit{Kind: Paragraph}, l.Lead)
	parts := map[lesson.Role]int{}
	for i := range l.Parts {
		p := &l.Parts[i]
		parts[p.Role]++
		name := string(p.Role)
		if p.Role == lesson.Prose {
			name = "prose"
		}
		if n := parts[p.Role]; n > 1 {
			name += "-" + strconv.Itoa(n)
		}
		in := Unit{Role: p.Role, Part: parts[p.Role]}
		heading := in
		heading.ID, heading.Kind, heading.Inlines = name+".heading", Heading, p.Heading
		w.add(heading)
		in.Kind = Paragraph
		w.part = true
		w.blocks(name, in, p.Blocks)
	}
	return w.units
}

type unitWalk struct {
	file  *source.File
	units []Unit
	part  bool // the blocks that follow are a part's own
}

func (w *unitWalk) add(u Unit) {
	if lesson.Plain(u.Inlines) == "" {
		return
	}
	if u.Kind != Alt {
		u.Span = source.Span{Start: u.Inlines[0].Span.Start, End: u.Inlines[len(u.Inlines)-1].Span.End}
	}
	w.units = append(w.units, u)
}

// blocks adds the units in blocks. in is what they have in common.
func (w *unitWalk) blocks(path string, in Unit, bs []lesson.Block) {
	own := w.part
	w.part = false
	child, step := 0, 0
	for i := range bs {
		b := &bs[i]
		if b.Kind == lesson.List {
			for k := range b.Items {
				child++
				item := in
				if own && b.Ordered {
					step++
					item.Step = step
				}
				item.Kind = inItem(in, own, b)
				w.blocks(fmt.Sprintf("%s.%d", path, child), item, b.Items[k].Blocks)
			}
			continue
		}
		child++
		u := in
		u.ID = fmt.Sprintf("%s.%d", path, child)
		switch b.Kind {
		case lesson.Paragraph:
			u.Inlines = b.Inlines
			w.add(u)
		case lesson.Heading:
			u.Kind, u.Inlines = Heading, b.Inlines
			w.add(u)
		case lesson.Quote:
			if in.Kind == Question {
				u.Kind = Reason
			}
			w.blocks(u.ID, u, b.Blocks)
		case lesson.Figure:
			u.Kind, u.Picture, u.Span = Alt, b.Source, altSpan(w.file, b.Span)
			u.Inlines = []lesson.Inline{{Kind: lesson.Text, Text: b.Alt, Span: u.Span}}
			w.add(u)
		case lesson.Table:
			for r, row := range b.Rows {
				for c, cell := range row.Cells {
					u.ID = fmt.Sprintf("%s.%d.%d.%d", path, child, r+1, c+1)
					u.Kind, u.Inlines = Cell, cell
					w.add(u)
				}
			}
		}
	}
}

// inItem is the kind of paragraphs in an item of a list.
func inItem(in Unit, own bool, list *lesson.Block) UnitKind {
	switch {
	case in.Role == lesson.Quiz && own && list.Ordered:
		return Question
	case in.Kind == Question:
		return Option
	}
	return ListItem
}

// altSpan finds the alternative text in the span of a picture: what stands between
// its first brackets.
func altSpan(f *source.File, s source.Span) source.Span {
	start, depth := s.Start+2, 0
	for i := start; i < s.End && i < len(f.Bytes); i++ {
		switch f.Bytes[i] {
		case '\\':
			i++
		case '[':
			depth++
		case ']':
			if depth--; depth < 0 {
				return source.Span{Start: start, End: i}
			}
		}
	}
	return source.Span{Start: min(start, s.End), End: s.End}
}
