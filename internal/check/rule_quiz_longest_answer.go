package check

import (
	"fmt"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var quizLongestAnswer = &Rule{
	Name:   "quiz-longest-answer",
	Title:  "The right answer is the longest in most questions of a quiz",
	Why:    "Whoever picks the longest answer passes, and nobody learns what the baby's carer really knows.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "- [ ] Run\n- [x] Rub the back and call for help\n",
	After:  "- [ ] Run outside for fresh air with the baby\n- [x] Rub the back and call for help\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Quiz, func(l *lesson.Lesson, part *lesson.Part) {
			qs, longest := part.Questions(), 0
			for _, q := range qs {
				if rightIsLongest(q) {
					longest++
				}
			}
			if len(qs) >= 5 && 10*longest > 6*len(qs) {
				p.Report(In(l, part.Span), fmt.Sprintf("the right answer is the longest in %d of %d questions", longest, len(qs)),
					"make some wrong answers longer, or some right ones shorter")
			}
		})
	},
}

// rightIsLongest reports whether the one right answer is longer, in characters, than any other.
func rightIsLongest(q lesson.Question) bool {
	right, wrong := 0, 0
	for _, o := range q.Options {
		n := 0
		for _, b := range o.Blocks {
			n += utf8.RuneCountInString(lesson.Plain(b.Inlines))
		}
		if o.Right {
			right = n
		} else {
			wrong = max(wrong, n)
		}
	}
	return q.Right() == 1 && len(q.Options) > 1 && right > wrong
}
