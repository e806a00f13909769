package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

var sourceUnused = &Rule{
	Name:   "source-unused",
	Title:  "A source is kept that nothing refers to",
	Why:    "A list of sources says what the lessons rest on; one that nothing rests on misleads.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "sources.yaml: manual-2003: {title: Manual}\n",
	After:  "en.md: [manual](source:manual-2003)\n",
	Run: func(p *Pass) {
		used := p.linked()
		for _, n := range p.Pack.Numbers {
			used["source:"+n.Source.Name] = true
		}
		for _, m := range p.Pack.Modules {
			for _, s := range m.Record.Sources {
				used["source:"+s.Name] = true
			}
		}
		for _, id := range pack.Sorted(p.Pack.Sources) {
			if v := p.Pack.Sources[id]; !used["source:"+id] {
				p.Report(Where{File: v.File, Span: v.Span}, "nothing refers to "+id, "link to it where it belongs, or take it out")
			}
		}
	},
}
