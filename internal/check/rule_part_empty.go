package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var partEmpty = &Rule{
	Name:   "part-empty",
	Title:  "A part holds nothing of its kind",
	Why:    "Steps without numbers, a checklist without boxes and a quiz without questions leave their pages blank.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "## Checklist {.checklist}\n\n- Hands are clean\n",
	After:  "## Checklist {.checklist}\n\n- [ ] Hands are clean\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			for i := range l.Parts {
				if what, mend := lacks(&l.Parts[i]); what != "" {
					p.Report(In(l, l.Parts[i].Span), what, mend)
				}
			}
		})
	},
}

// lacks says what a part of its role must hold and does not.
func lacks(part *lesson.Part) (what, mend string) {
	switch part.Role {
	case lesson.Caution: // caution-empty
	case lesson.Steps:
		if len(part.Items(true)) == 0 {
			return "there is no numbered step in this part", `write each step on a line that begins with "1. "`
		}
	case lesson.Quiz:
		if len(part.Questions()) == 0 {
			return "there is no numbered question in this part", `write each question on a line that begins with "1. "`
		}
	case lesson.Checklist:
		for _, it := range part.Items(false) {
			if it.Task != lesson.NoTask {
				return "", ""
			}
		}
		return "there is no box to tick in this part", `begin each line with "- [ ] "`
	default:
		if !hasWords(part.Blocks) && len(part.Blocks) == 0 {
			return "this part is empty", "write what belongs under the heading, or take the heading out"
		}
	}
	return "", ""
}
