package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var translationEmphasis = &Rule{
	Name:   "translation-emphasis",
	Title:  "A caution or critical step is bold in one language and not in the other",
	Why:    "The words that must not be missed are found by their weight.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: **Keep one hand on the baby.**\nhi.md: एक हाथ शिशु पर रखें।\n",
	After:  "en.md: **Keep one hand on the baby.**\nhi.md: **एक हाथ शिशु पर रखें।**\n",
	Run: func(p *Pass) {
		p.besides(func(b beside) {
			t, s := strong(b.Target.Inlines), strong(b.Source.Inlines)
			if b.critical && t != s {
				what := "bold words of the source are not bold here"
				if t {
					what = "bold words here are not bold in the source"
				}
				p.Report(b.where(), what, "make the same words bold in both, between two stars")
			}
		})
	},
}

func strong(ins []lesson.Inline) bool {
	for _, in := range ins {
		if in.Kind == lesson.Strong || strong(in.Children) {
			return true
		}
	}
	return false
}
