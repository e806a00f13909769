package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

var numberUnused = &Rule{
	Name:   "number-unused",
	Title:  "A number is kept that no lesson links to",
	Why:    "A number that nobody shows is not read again, and is wrong by the time it is used.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "numbers.yaml: back-rub: {amount: 10, unit: seconds}\n",
	After:  "en.md: rub the back for [10\u00a0seconds](number:back-rub)\n",
	Run: func(p *Pass) {
		used := p.linked()
		for _, id := range pack.Sorted(p.Pack.Numbers) {
			if v := p.Pack.Numbers[id]; !used["number:"+id] {
				p.Report(Where{File: v.File, Span: v.Span}, "nothing refers to "+id, "link to it where it belongs, or take it out")
			}
		}
	},
}
