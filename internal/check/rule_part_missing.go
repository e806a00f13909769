package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// usualParts are those that a printed piece of every module is made of.
var usualParts = []lesson.Role{lesson.Steps, lesson.Checklist, lesson.KeyPoints, lesson.Quiz}

var partMissing = &Rule{
	Name:   "part-missing",
	Title:  "A lesson lacks a part that pieces are made of",
	Why:    "The wall checklist, the quiz paper or the handout of this lesson stays empty.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "## Steps {.steps}\n\n1. Wash your hands.\n",
	After:  "## Steps {.steps}\n\n1. Wash your hands.\n\n## Checklist {.checklist}\n\n- [ ] Hands are clean\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			if l.Lang != p.Pack.Source {
				return // a translation is compared with its source
			}
			for _, role := range usualParts {
				if l.Part(role) == nil {
					p.Report(In(l, l.Span), fmt.Sprintf("the lesson has no part %s", role),
						fmt.Sprintf("add a heading of level 2 with {.%s}", role))
				}
			}
		})
	},
}
