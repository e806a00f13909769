package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var headingTwice = &Rule{
	Name:   "heading-twice",
	Title:  "Two parts of a lesson have the same heading",
	Why:    "Whoever is told to look under that heading may find the wrong steps.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "## Steps {.steps}\n…\n## Steps {.steps}\n",
	After:  "## Flat cloth {.steps}\n…\n## Stretchy band {.steps}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			first := map[string]*lesson.Part{}
			for i := range l.Parts {
				part := &l.Parts[i]
				text := fold(lesson.Plain(part.Heading))
				if text == "" {
					continue
				}
				if before := first[text]; before != nil {
					p.Report(In(l, part.Span).Beside(l.File, before.Span, "the first"),
						fmt.Sprintf("there are two parts called %q", lesson.Plain(part.Heading)), "say in each heading what it is for")
					continue
				}
				first[text] = part
			}
		})
	},
}
