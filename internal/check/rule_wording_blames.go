package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

var wordingBlames = &Rule{
	Name:   "wording-blames",
	Title:  "A wording blames the parent",
	Why:    "A mother who is blamed stops asking, and the next danger sign is told too late.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "You failed to feed the baby in time.\n",
	After:  "If a feed was missed, feed now and tell the ward.\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			text := fold(r.text)
			for _, form := range p.words(r.lesson.Lang).blame {
				if at := findWords(text, form); len(at) > 0 {
					p.Report(r.where(0), fmt.Sprintf("%q blames", form), "say what to do now, without saying whose fault it is")
				}
			}
		})
	},
}
