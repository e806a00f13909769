package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

// Languages put the words before or after the amount, and so out of the link. A "not"
// turns them ("do not let more than 3 hours go by"); a condition looks the same ("if it
// takes more than 3 hours, stop"), so this is for a person to judge.
var compareAround = &Rule{
	Name:   "compare-around",
	Title:  "The sentence around a number compares the wrong way round",
	Why:    "\"Under\" for \"at least\" makes a healthy baby of one who needs help.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "Call under [60 breaths](number:fast-breathing) a minute. # kept as at-least 60\n",
	After:  "Call at [60 breaths](number:fast-breathing) a minute or more.\n",
	Run: func(p *Pass) {
		p.comparedLinks(func(r running, link linked, n *pack.Number, said map[bool]bool) {
			if n.Compare == "" || len(said) > 0 {
				return
			}
			x := p.words(r.lesson.Lang)
			from, to := r.sentence(link.start)
			sentence := r.text[from:to]
			if turn, _ := x.negations(sentence); turn > 0 {
				return
			}
			if around := x.comparisons(sentence); len(around) > 0 && !around[upward(n.Compare)] {
				p.Report(r.where(link.start).Beside(n.File, n.Span, "kept here as "+n.Compare+" "+n.Amount),
					fmt.Sprintf("the sentence around %q compares the other way; the number %s is %s %s", r.shown(link), n.ID, n.Compare, n.Amount),
					"write it the way round that the number is kept; if it says what to do beyond the limit, write that in a sentence without the link")
			}
		})
	},
}
