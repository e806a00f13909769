package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/source"
)

var quizQuestionRepeated = &Rule{
	Name:   "quiz-question-repeated",
	Title:  "A question stands in more than one quiz",
	Why:    "Whoever has just read the answer passes without having learnt anything new.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "wrapping: How high does the top edge come?\npositioning: How high does the top edge come?\n",
	After:  "wrapping: How high does the top edge come?\npositioning: Where does the chin lie?\n",
	Run: func(p *Pass) {
		type place struct {
			file *source.File
			span source.Span
		}
		first := map[string]place{}
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			for _, q := range part.Questions() {
				text := ""
				for _, b := range q.Stem {
					text += fold(lesson.Plain(b.Inlines))
				}
				if text == "" {
					continue
				}
				key := l.Lang + " " + text
				if at, before := first[key]; before {
					p.Report(In(l, q.Span).Beside(at.file, at.span, "the first"), fmt.Sprintf("the question %q was asked before", text), "ask something else here")
					continue
				}
				first[key] = place{l.File, q.Span}
			}
		})
	},
}
