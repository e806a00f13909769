package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var quizNoReason = &Rule{
	Name:   "quiz-no-reason",
	Title:  "A question has no reason for its answer",
	Why:    "The reason is what is remembered; the answer key prints it.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "1. May the nose be covered?\n\n   - [ ] Yes\n   - [x] No\n",
	After:  "1. May the nose be covered?\n\n   - [ ] Yes\n   - [x] No\n\n   > The baby must be able to breathe.\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			for _, q := range part.Questions() {
				if !hasWords(q.Reason) {
					p.Report(In(l, q.Span), "the question gives no reason for its answer", "below the answers, indented as they are, write \"> \" and the reason in one or two sentences")
				}
			}
		})
	},
}
