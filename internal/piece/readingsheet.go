package piece

import (
	"cmp"
	"fmt"

	"wardleaf/internal/lesson"
	"wardleaf/internal/typeset"
)

// readingSheet is for reviewers: every block of a lesson with an id, the source beside
// the translation, and room to write.
func readingSheet(j *Job) (*Result, error) {
	loc := j.Locale
	label := loc.Label("reading-sheet")
	p, err := j.work(9, label)
	if err != nil {
		return nil, err
	}
	w := p.frame.Width()
	strips := p.heading(j.Module)
	strips = append(strips, p.s.Text(label, typeset.BoldLook, 0, w, p.root.Add("P"))...)
	strips = append(strips, p.s.FormLine([]typeset.Field{{Label: loc.Label("reader"), Share: 0.6}, {Label: loc.Label("date"), Share: 0.4}}, w))
	strips = append(strips, p.shortCaution(), p.s.Space(1))

	own := units(j.Module.Lesson)
	source := j.Module.Lessons[p.Pack.Source]
	table := typeset.RuledTable{Columns: []float64{0.1, 0.6, 0.3}, Head: []typeset.Cell{typeset.Head("№"), typeset.Head(loc.Name), typeset.Head(loc.Label("remarks"))}}
	both := loc.Tag != p.Pack.Source && source != nil
	var src []unit
	if both {
		src = units(source)
		table.Columns = []float64{0.1, 0.34, 0.34, 0.22}
		table.Head = []typeset.Cell{typeset.Head("№"), typeset.Head(cmp.Or(p.SourceName, p.Pack.Source)), typeset.Head(loc.Name), typeset.Head(loc.Label("remarks"))}
	}
	var rows [][]typeset.Cell
	for i, u := range own {
		row := []typeset.Cell{typeset.Plain(u.id)}
		if both {
			c := typeset.Cell{Lang: p.Pack.Source}
			if i < len(src) {
				c.Text = src[i].text
			}
			row = append(row, c)
		}
		rows = append(rows, append(row, typeset.Cell{Text: u.text}, typeset.Cell{}))
	}
	strips = append(strips, p.s.Table(table, rows, w, p.root)...)
	return p.done(label+": "+lesson.Plain(j.Module.Lesson.Title), strips, modules(j))
}

// A unit is one block of a lesson with the id that reviewers call it by: its part and
// its place in it, the same in every language.
type unit struct {
	id   string
	text []lesson.Inline
}

func units(l *lesson.Lesson) []unit {
	out := []unit{{"0", l.Title}}
	for i := range l.Lead {
		out = append(out, unit{fmt.Sprintf("0.%d", i+1), l.Lead[i].Inlines})
	}
	for i := range l.Parts {
		p := &l.Parts[i]
		out = append(out, unit{fmt.Sprint(i + 1), p.Heading})
		n := 0
		one := lesson.Lesson{Parts: []lesson.Part{*p}}
		one.Walk(func(b *lesson.Block) {
			words := b.Inlines
			if b.Kind == lesson.Figure {
				words = text(b.Alt)
			}
			if len(words) > 0 {
				n++
				out = append(out, unit{fmt.Sprintf("%d.%d", i+1, n), words})
			}
		})
	}
	return out
}
