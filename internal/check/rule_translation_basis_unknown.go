package check

import (
	"fmt"
	"slices"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

var translationBasisUnknown = &Rule{
	Name:   "translation-basis-unknown",
	Title:  "A block that a translation was made from is no longer in the source",
	Why:    "The clinicians have taken advice out; a translation may still give it.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "hi.basis: steps.4.1 0123456789ab # and the source has three steps\n",
	After:  "hi.basis: steps.3.1 0123456789ab\n",
	Run: func(p *Pass) {
		p.pairings(func(pairing *translate.Pairing, l, _ *lesson.Lesson) {
			basis := pairing.Module.Basis[l.Lang]
			if basis == nil {
				return
			}
			for _, id := range pack.Sorted(basis.Units) {
				if !slices.ContainsFunc(pairing.Pairs, func(p translate.Pair) bool { return p.Source.ID == id }) {
					p.Report(Where{File: basis.File, Span: basis.Units[id].Span, Lang: l.Lang, Module: l.Module},
						fmt.Sprintf("the source has no block %s any more", id),
						fmt.Sprintf("see that the translation no longer has it either, then run: wardleaf basis %s %s", l.Lang, l.Module))
				}
			}
		})
	},
}
