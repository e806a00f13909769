package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var titleTwice = &Rule{
	Name:   "title-twice",
	Title:  "A lesson has a second heading of level 1",
	Why:    "A second title starts no new lesson; its words would stand on the page as a heading of no kind.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "# Wrapping\n\n# Stretchy band\n",
	After:  "# Wrapping\n\n## Stretchy band {.steps}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.Walk(func(b *lesson.Block) {
				if b.Kind == lesson.Heading && b.Level == 1 && len(l.Title) > 0 {
					p.Report(In(l, b.Span), "a second heading of level 1 stands here", "write ## for a part, or ### for a heading inside a part")
				}
			})
		})
	},
}
