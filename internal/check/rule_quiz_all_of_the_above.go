package check

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var quizAllOfTheAbove = &Rule{
	Name:   "quiz-all-of-the-above",
	Title:  "An answer stands for all or none of the others",
	Why:    "Whoever sees two right answers picks it without knowing the rest, and it means nothing when the answers are put in another order.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "- [x] All of the above\n",
	After:  "- [x] Check the face, the chin and the breathing\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			for _, q := range part.Questions() {
				for _, o := range q.Options {
					var text string
					for _, b := range o.Blocks {
						text += lesson.Plain(b.Inlines)
					}
					text = fold(strings.Trim(text, " .!।"))
					if slices.ContainsFunc(p.words(l.Lang).allOrNone, func(s string) bool { return strings.HasPrefix(text, s) }) {
						p.Report(In(l, o.Span), fmt.Sprintf("the answer is %q", text), "write an answer that stands by itself")
					}
				}
			}
		})
	},
}
