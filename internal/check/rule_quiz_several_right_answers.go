package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var quizSeveralRightAnswers = &Rule{
	Name:   "quiz-several-right-answers",
	Title:  "A question has several right answers",
	Why:    "The answer key holds one letter for each question.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "1. May the nose be covered?\n\n   - [x] Never\n   - [x] No\n",
	After:  "1. May the nose be covered?\n\n   - [ ] At night\n   - [x] Never\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			for _, q := range part.Questions() {
				if q.Right() > 1 {
					p.Report(In(l, q.Span), "more than one answer is marked as right", "leave one box with an x, and make the other answers clearly wrong")
				}
			}
		})
	},
}
