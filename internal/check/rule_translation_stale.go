package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

var translationStale = &Rule{
	Name:   "translation-stale",
	Title:  "The source has changed since this was translated",
	Why:    "Readers of this language would be taught what the clinicians have since corrected.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: 1. Wash your hands with soap. # and \"with soap\" is new\nhi.md: 1. हाथ धोएँ।\n",
	After:  "en.md: 1. Wash your hands with soap.\nhi.md: 1. साबुन से हाथ धोएँ।\n",
	Run: func(p *Pass) {
		p.pairings(func(pairing *translate.Pairing, l, src *lesson.Lesson) {
			for _, pair := range pairing.Stale() {
				where := In(l, pair.Target.Span).Beside(src.File, pair.Source.Span, "what the source says now")
				p.Report(where, fmt.Sprintf("this was translated before the source was changed (%s)", pair.Source.ID),
					fmt.Sprintf("compare the two and correct the translation, then run: wardleaf basis %s %s; or send the change to a translator: wardleaf handoff %[1]s %[2]s", l.Lang, l.Module))
			}
		})
	},
}

// pairings calls fn for every translation beside its source, by module and language.
func (p *Pass) pairings(fn func(pairing *translate.Pairing, l, src *lesson.Lesson)) {
	p.Lessons(func(m *pack.Module, l *lesson.Lesson) {
		if pairing := translate.Paired(p.Pack, m, l.Lang); pairing != nil {
			fn(pairing, l, m.Lessons[p.Pack.Source])
		}
	})
}
