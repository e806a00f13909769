package piece

import (
	"fmt"

	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// A sitting is one row of a timetable: a lesson or, without one, a break.
type sitting struct {
	module               *translate.Module
	start, end           int // minutes after midnight of the first day
	show, practise, quiz int
}

// longestSitting is how many minutes a group sits without a break: about ninety, with
// room for a lesson that runs a little over (common practice).
const longestSitting = 100

// timetable lays lessons out one after the other from the start of the session. A
// break comes before a lesson that would make the group sit for too long.
func timetable(modules []translate.Module, s pack.Session) []sitting {
	var out []sitting
	now, sat := s.Start, 0
	for i := range modules {
		m := &modules[i]
		n := m.Record.Minutes
		if sat > 0 && sat+n > longestSitting {
			out = append(out, sitting{start: now, end: now + s.Break})
			now += s.Break
			sat = 0
		}
		row := sitting{module: m, start: now, end: now + n}
		row.show, row.practise, row.quiz = methods(n)
		out = append(out, row)
		now += n
		sat += n
	}
	return out
}

// methods divides the minutes of a lesson: a fifth for the quiz, from five minutes to
// ten, and the rest in halves to show and to practise, all in steps of five; what is
// left over goes to practice.
func methods(minutes int) (show, practise, quiz int) {
	quiz = min(max((minutes+12)/25*5, 5), 10, minutes)
	show = (minutes - quiz) / 10 * 5
	return show, minutes - quiz - show, quiz
}

// clock writes minutes after midnight as a time of day of 24 hours.
func clock(minutes int) string {
	return fmt.Sprintf("%02d:%02d", minutes/60%24, minutes%60)
}
