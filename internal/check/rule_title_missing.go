package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var titleMissing = &Rule{
	Name:   "title-missing",
	Title:  "A lesson does not begin with its title",
	Why:    "Contents pages, page heads and links call a lesson by its title.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "## Caution {.caution}\n",
	After:  "# Wrapping\n\n## Caution {.caution}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			if len(l.Title) == 0 {
				p.Report(In(l, l.Span), "the lesson does not begin with a title", `write "# " and the title on the first line`)
			}
		})
	},
}
