package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

// Trainer notes are free, and so are the questions and answers of a quiz, whose
// amounts are invented; the reasons for the answers are not.
var numberUnlinked = &Rule{
	Name:   "number-unlinked",
	Title:  "A clinical amount is written without a link to the number that is kept",
	Why:    "An amount that is typed by hand is not compared with its source, and stays wrong in one language when it is corrected in the others.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "Check again after 2\u00a0hours.\n",
	After:  "Check again after [2\u00a0hours](number:recheck-temperature).\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			if r.role == lesson.TrainerNotes || r.role == lesson.Quiz && !r.quoted {
				return
			}
			for _, n := range numerals(r.text) {
				if s := r.at(n.start); s.scheme != "" {
					continue
				}
				if use, ok := p.words(r.lesson.Lang).unitOf(r.text, n); ok && use.deciding {
					p.Report(r.where(n.start), fmt.Sprintf("%s %s is written without a link", n.text, use.form),
						"keep the amount in numbers.yaml, and write [the amount and its unit](number:its-name)")
				}
			}
		})
	},
}
