package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// Other languages have no honest formula; sentence-long holds for them, too. Text for
// trainers is not for families.
var readingHard = &Rule{
	Name:   "reading-hard",
	Title:  "A lesson is hard to read for the families it is for",
	Why:    "Who is tired, frightened or new to reading takes short words in short sentences home, and leaves the rest in the ward.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "Maintaining uninterrupted thermoregulation necessitates continuous positional observation.\n",
	After:  "Keep the baby warm. Look at the face often.\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			m, known := measuresOfEase[l.Lang[:min(2, len(l.Lang))]]
			if !known {
				return
			}
			s, w, y := 0, 0, 0
			p.running(func(r running) {
				if r.lesson != l || r.role == lesson.TrainerNotes {
					return
				}
				a, b, c := m.counts(r.text)
				s, w, y = s+a, w+b, y+c
			})
			if w < 100 {
				return // a formula says nothing of a few words
			}
			if score := m.score(float64(s), float64(w), float64(y)); m.hard(score) {
				p.Report(In(l, l.Span), fmt.Sprintf("the lesson has a %s of %.1f; %s is easy to read", m.name, score, m.want),
					"make two sentences of a long one, and use an everyday word for a long one")
			}
		})
	},
}
