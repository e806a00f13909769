package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
)

// A translation with no record at all is said once, not for every block.
var translationBasisMissing = &Rule{
	Name:   "translation-basis-missing",
	Title:  "Nobody recorded what a translation was made from",
	Why:    "When the source changes later, nothing will say that this translation is behind it.",
	Level:  finding.Note,
	Needs:  Joined,
	Before: "wrapping/hi.md and no wrapping/hi.basis\n",
	After:  "wrapping/hi.md and wrapping/hi.basis\n",
	Run: func(p *Pass) {
		p.pairings(func(pairing *translate.Pairing, l, src *lesson.Lesson) {
			mend := fmt.Sprintf("compare it with the source, then run: wardleaf basis %s %s", l.Lang, l.Module)
			if pairing.Module.Basis[l.Lang] == nil {
				p.Report(In(l, l.Span), "nothing says which words of the source this translation was made from", mend)
				return
			}
			for _, pair := range pairing.New() {
				if pair.Target != nil {
					p.Report(In(l, pair.Target.Span).Beside(src.File, pair.Source.Span, "in the source language"),
						fmt.Sprintf("nothing says which words of the source this block was made from (%s)", pair.Source.ID), mend)
				}
			}
		})
	},
}
