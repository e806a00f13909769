package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/impose"
	"wardleaf/internal/pack"
)

var bookletThick = &Rule{
	Name:   "booklet-thick",
	Title:  "A booklet has more sheets than can be stapled with ease",
	Why:    "A stapler that does not reach through leaves loose pages in a family's hands.",
	Level:  finding.Note,
	Needs:  Pages,
	Before: "16 sheets folded into each other\n",
	After:  "15 sheets or fewer\n",
}

// Sheets says when the booklet of a language has more sheets than a stapler takes with ease.
func Sheets(p *pack.Pack, lang string, sheets int) []finding.Finding {
	pass := &Pass{Pack: p, rule: bookletThick}
	mend := "use a stapler with a long arm, or make a pack of fewer lessons"
	if sheets > impose.Most {
		mend = "fold each signature by itself, lay them on each other and bind them with tape, or make a pack of fewer lessons"
	}
	if sheets > impose.Easy {
		pass.Report(Where{File: p.File, Lang: lang}, fmt.Sprintf("the booklet in %s needs %d sheets; %d are stapled with ease", lang, sheets, impose.Easy), mend)
	}
	return pass.findings
}
