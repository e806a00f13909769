package check

import (
	"fmt"
	"slices"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// What is known of a language is kept in locales/words.
var wordsUnknown = &Rule{
	Name:   "words-unknown",
	Title:  "The checker knows no words of a language",
	Why:    "A lost \"not\", a changed unit, a comparison turned round and a step in two are not seen in this language; numbers, links and structure are.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "languages: [en, yo]\n",
	After:  "languages: [en, hi]\n",
	Run: func(p *Pass) {
		for _, lang := range p.Pack.Languages {
			if p.words(lang).known || !slices.ContainsFunc(p.Pack.Modules, func(m *pack.Module) bool { return m.Lessons[lang] != nil }) {
				continue
			}
			p.Report(Where{File: p.Pack.File, Span: source.Span{}, Lang: lang}, fmt.Sprintf("no words of %s are known", lang),
				"have two people who read both languages compare each block, and record it with wardleaf basis; silence this when it is agreed")
		}
	},
}
