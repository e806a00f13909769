package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

// A third sentence, or a word such as "then", shows that a step goes on. A second
// sentence often says how, or what must not happen. It is said of the source language
// alone, since every language has the same steps.
var stepSeveralActions = &Rule{
	Name:   "step-several-actions",
	Title:  "A step holds several actions",
	Why:    "Hands busy with a baby do the first of them and lose the rest.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "1. Lift the baby, then turn the head.\n",
	After:  "1. Lift the baby.\n2. Turn the head.\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Steps, func(l *lesson.Lesson, part *lesson.Part) {
			if l.Lang != p.Pack.Source {
				return
			}
			for _, it := range part.Items(true) {
				var text string
				for _, b := range it.Blocks {
					text += lesson.Plain(b.Inlines) + " "
				}
				if word := holds(text, p.words(l.Lang).steps); word != "" {
					p.Report(In(l, it.Span), fmt.Sprintf("%q joins two actions", word), "make a step of each")
				} else if n := len(sentencesOf(text)); n > 2 {
					p.Report(In(l, it.Span), fmt.Sprintf("the step has %d sentences", n), "make a step of each action")
				}
			}
		})
	},
}
