package piece

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

func modules(j *Job) []translate.Module { return []translate.Module{*j.Module} }

// skillsChecklist turns the steps of a module into items to be watched: done, partly,
// not done. A critical step that is missed means that the whole is done again.
func skillsChecklist(j *Job) (*Result, error) {
	return onePage(func(size float64) (*Result, error) { return skillsChecklistIn(j, size) }, 11, 10.5, 10)
}

func skillsChecklistIn(j *Job, size float64) (*Result, error) {
	loc := j.Locale
	label := loc.Label("skills-checklist")
	p, err := j.work(size, label)
	if err != nil {
		return nil, err
	}
	w := p.frame.Width()
	strips := p.heading(j.Module)
	strips = append(strips, p.s.Text(label, typeset.BoldLook, 0, w, p.root.Add("P"))...)
	strips = append(strips, p.s.FormLine([]typeset.Field{{Label: loc.Label("name"), Share: 0.4}, {Label: loc.Label("observer"), Share: 0.35}, {Label: loc.Label("date"), Share: 0.25}}, w))
	strips = append(strips, p.shortCaution())
	table := typeset.RuledTable{
		Columns: []float64{0.07, 0.54, 0.13, 0.13, 0.13},
		Head: []typeset.Cell{typeset.Head("№"), typeset.Head(loc.Label("skill")), typeset.Head(loc.Label("done")),
			typeset.Head(loc.Label("partly")), typeset.Head(loc.Label("not-done"))},
	}
	part, items := 0, 0
	for i := range j.Module.Lesson.Parts {
		pt := &j.Module.Lesson.Parts[i]
		if pt.Role != lesson.Steps {
			continue
		}
		part++
		var rows [][]typeset.Cell
		var bars []bool
		for _, b := range pt.Blocks {
			if b.Kind != lesson.List || !b.Ordered {
				continue
			}
			for k, it := range b.Items {
				items++
				critical := p.s.Critical(part, b.Start+k)
				words := inlines(it.Blocks)
				if critical {
					words = append(append([]lesson.Inline{}, words...), lesson.Inline{Kind: lesson.Break},
						lesson.Inline{Kind: lesson.Strong, Children: text(loc.Label("critical-step"))})
				}
				rows = append(rows, []typeset.Cell{typeset.Plain(loc.Number(b.Start + k)), {Text: words}, {Square: true}, {Square: true}, {Square: true}})
				bars = append(bars, critical)
			}
		}
		strips = append(strips, p.s.PartHeading(pt.Heading, w, p.root)...)
		set := p.s.Table(table, rows, w, p.root)
		for k := range bars {
			set[k+1].Bar = bars[k]
		}
		strips = append(strips, set...)
	}
	strips = append(strips, typeset.SpaceBefore(p.s.Text(loc.Label("skills-how", number(loc, "Most", 2*items), number(loc, "Pass", (2*items*p.Pack.PassMark+99)/100)), typeset.TextLook, 0, w, p.root.Add("P")), p.s.Grid)...)
	strips = append(strips, p.s.FormLine([]typeset.Field{{Label: loc.Label("score"), Share: 0.3}, {Label: loc.Label("repeat-on"), Share: 0.35}, {Label: loc.Label("signed"), Share: 0.35}}, w))
	return p.done(label+": "+lesson.Plain(j.Module.Lesson.Title), strips, modules(j))
}
