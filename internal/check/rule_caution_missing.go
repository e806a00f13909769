package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var cautionMissing = &Rule{
	Name:   "caution-missing",
	Title:  "A lesson has no caution block",
	Why:    "Whoever holds only this page must learn from it when to stop and whom to call.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "# Wrapping\n\n## Steps {.steps}\n",
	After:  "# Wrapping\n\n## Caution {.caution}\n\n- Learn this with a trained health worker beside you.\n\n## Steps {.steps}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			if l.Part(lesson.Caution) == nil {
				p.Report(In(l, l.Span), "the lesson has no caution block",
					"add a heading with {.caution} as its first part, with the dangers and whom to call")
			}
		})
	},
}
