package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var quizNoRightAnswer = &Rule{
	Name:   "quiz-no-right-answer",
	Title:  "A question has no right answer",
	Why:    "The answer key would mark every answer wrong.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "1. May the nose be covered?\n\n   - [ ] Yes\n   - [ ] No\n",
	After:  "1. May the nose be covered?\n\n   - [ ] Yes\n   - [x] No\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			for _, q := range part.Questions() {
				if len(q.Options) > 1 && q.Right() == 0 {
					p.Report(In(l, q.Span), "no answer is marked as right", "put an x into the box of the right answer")
				}
			}
		})
	},
}
