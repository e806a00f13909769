package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var quizTooFewOptions = &Rule{
	Name:   "quiz-too-few-options",
	Title:  "A question has fewer than two answers to choose from",
	Why:    "With one answer there is nothing to choose, and the question teaches nothing.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "1. May the nose be covered?\n\n   - [x] No\n",
	After:  "1. May the nose be covered?\n\n   - [ ] Yes\n   - [x] No\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			for _, q := range part.Questions() {
				if len(q.Options) < 2 {
					p.Report(In(l, q.Span), "the question has fewer than two answers to choose from", "indented under the question, write each answer on a line that begins with \"- [ ] \", the right one with \"- [x] \"")
				}
			}
		})
	},
}
