package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var checklistUnseen = &Rule{
	Name:   "checklist-unseen",
	Title:  "An item of a checklist cannot be seen by whoever ticks it",
	Why:    "What somebody knows or understands is ticked out of kindness; what they do can be watched.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "- [ ] The mother understands the warning signs\n",
	After:  "- [ ] The mother names three warning signs\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Checklist, func(l *lesson.Lesson, part *lesson.Part) {
			for _, it := range part.Items(false) {
				for _, b := range it.Blocks {
					if word := holds(lesson.Plain(b.Inlines), p.words(l.Lang).unseen); word != "" {
						p.Report(In(l, it.Span), fmt.Sprintf("%q cannot be observed", word), "write what the person does or says, or how the baby looks")
						break
					}
				}
			}
		})
	},
}
