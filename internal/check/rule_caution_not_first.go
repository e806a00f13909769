package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var cautionNotFirst = &Rule{
	Name:   "caution-not-first",
	Title:  "The caution block is not the first part",
	Why:    "Readers begin to act at the first step; a warning after it comes too late.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "## Steps {.steps}\n\n## Caution {.caution}\n",
	After:  "## Caution {.caution}\n\n## Steps {.steps}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			if c := l.Part(lesson.Caution); c != nil && c != &l.Parts[0] {
				p.Report(In(l, c.Span).Beside(l.File, l.Parts[0].Span, "this part comes before it"),
					"the caution block is not the first part of the lesson",
					"move it up, before every other heading of level 2")
			}
		})
	},
}
