package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var headingSkips = &Rule{
	Name:   "heading-skips",
	Title:  "A heading skips a level",
	Why:    "A screen reader's list of headings has a gap, and whoever listens looks for a section that is not there.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "## Steps {.steps}\n\n#### By day\n",
	After:  "## Steps {.steps}\n\n### By day\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			for i := range l.Parts {
				level := 2
				(&lesson.Lesson{Parts: l.Parts[i : i+1]}).Walk(func(b *lesson.Block) {
					if b.Kind != lesson.Heading {
						return
					}
					if b.Level > level+1 {
						p.Report(In(l, b.Span), fmt.Sprintf("a heading of level %d follows one of level %d", b.Level, level),
							fmt.Sprintf("make it level %d", level+1))
					}
					level = b.Level
				})
			}
		})
	},
}
