package check

import (
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var figureNoAlt = &Rule{
	Name:   "figure-no-alt",
	Title:  "A picture has no text in its place",
	Why:    "Whoever hears the page read aloud, or whose phone does not show the picture, gets nothing from it.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "![](figures/tucked.svg)\n",
	After:  "![Tuck the edge of the cloth under the baby's feet](figures/tucked.svg)\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.Walk(func(b *lesson.Block) {
				if b.Kind == lesson.Figure && strings.TrimSpace(b.Alt) == "" {
					p.Report(In(l, b.Span), "the picture has no text in its place", "between the square brackets, write what it shows one to do")
				}
			})
		})
	},
}
