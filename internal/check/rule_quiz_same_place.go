package check

import (
	"fmt"
	"slices"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var quizSamePlace = &Rule{
	Name:   "quiz-same-place",
	Title:  "The right answer stands at the same place in every question of a quiz",
	Why:    "After two questions the rest are answered without reading them.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "- [x] Yes\n- [ ] No\n",
	After:  "- [ ] No\n- [x] Yes\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			qs := part.Questions()
			if len(qs) < 4 {
				return
			}
			place := rightPlace(qs[0])
			same := !slices.ContainsFunc(qs, func(q lesson.Question) bool { return rightPlace(q) != place || q.Right() != 1 })
			if same {
				p.Report(In(l, part.Span), fmt.Sprintf("the right answer is number %d in all %d questions", place+1, len(qs)),
					"move the right answer to another place in some of them")
			}
		})
	},
}

func rightPlace(q lesson.Question) int {
	return slices.IndexFunc(q.Options, func(o lesson.Option) bool { return o.Right })
}
