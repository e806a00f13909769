package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
)

var translationChanged = &Rule{
	Name:   "translation-changed",
	Title:  "A translated block was changed since it was last compared with its source",
	Why:    "A word changed in passing, or steps put in another order, read well and teach something else; no rule knows every language well enough to see it.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "hi.basis: steps.1.1 3fa1… 90be…\nhi.md: 1. जल्दी हाथ धोएँ। # and \"जल्दी\" is new\n",
	After:  "hi.basis: steps.1.1 3fa1… 77c2… # written by: wardleaf basis hi wrapping\nhi.md: 1. जल्दी हाथ धोएँ।\n",
	Run: func(p *Pass) {
		p.pairings(func(pairing *translate.Pairing, l, src *lesson.Lesson) {
			for _, pair := range pairing.Touched() {
				p.Report(In(l, pair.Target.Span).Beside(src.File, pair.Source.Span, "the source"),
					fmt.Sprintf("this block is not the one that was last compared with its source (%s)", pair.Source.ID),
					fmt.Sprintf("compare the two with someone who reads both languages, then run: wardleaf basis %s %s", l.Lang, l.Module))
			}
		})
	},
}
