package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

var termUnused = &Rule{
	Name:   "term-unused",
	Title:  "A term is kept that no lesson marks",
	Why:    "Its approved wording is compared with nothing.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "terms.yaml: wrap: {en: wrap}\n",
	After:  "en.md: A [wrap](term:wrap) holds the baby.\n",
	Run: func(p *Pass) {
		used := p.linked()
		for _, id := range pack.Sorted(p.Pack.Terms) {
			if v := p.Pack.Terms[id]; !used["term:"+id] {
				p.Report(Where{File: v.File, Span: v.Span}, "nothing refers to "+id, "link to it where it belongs, or take it out")
			}
		}
	},
}
