package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

var translationStateUnsigned = &Rule{
	Name:   "translation-state-unsigned",
	Title:  "A translation is said to be reviewed, and nobody has signed it off as it stands",
	Why:    "The pages stop saying that the translation awaits review, though nobody who speaks the language answers for it.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "translations:\n  hi: {state: final}\nsign-offs: []\n",
	After:  "translations:\n  hi: {state: translated}\nsign-offs: []\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			for _, lang := range pack.Sorted(m.Record.Translations) {
				t := m.Record.Translations[lang]
				if t.State != "reviewed" && t.State != "final" || m.Lessons[lang] == nil || translate.SignedOff(p.Pack, m, lang) {
					continue
				}
				at := InRecord(m, t.Span)
				at.Lang = lang
				p.Report(at, fmt.Sprintf("the state is %s, and no sign-off stands for the lesson in %q", t.State, lang),
					"let a clinician who speaks the language read it and run: wardleaf signoff "+m.ID+" --lang "+lang+" --role ROLE; or set the state back to translated")
			}
		}
	},
}
