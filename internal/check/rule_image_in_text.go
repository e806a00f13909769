package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var imageInText = &Rule{
	Name:   "image-in-text",
	Title:  "A picture stands inside a line of text",
	Why:    "Pictures are printed on their own; one inside a line would be left out.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "Tuck the edge in ![The edge](figures/tucked.svg) now.\n",
	After:  "Tuck the edge in now.\n\n![The edge](figures/tucked.svg)\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.WalkInlines(func(in *lesson.Inline) {
				if in.Kind == lesson.Image {
					p.Report(In(l, in.Span), "a picture stands inside a line of text", "put it into a paragraph of its own, with a blank line before and after; inside a step or an item, indent it as far as the words of the step")
				}
			})
		})
	},
}
