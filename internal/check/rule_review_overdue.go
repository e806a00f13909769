package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

var reviewOverdue = &Rule{
	Name:   "review-overdue",
	Title:  "The review of a lesson is overdue",
	Why:    "Advice that nobody has read again in time may be wrong by now.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "review:\n  prepared: 2019-05-01\n  due: 2020-05-01\n",
	After:  "review:\n  prepared: 2026-05-01\n  due: 2027-05-01\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			due := m.Record.Due
			if !due.Time.IsZero() && due.Time.Before(p.Today) {
				days := int(p.Today.Sub(due.Time).Hours() / 24)
				p.Report(InRecord(m, due.Span), fmt.Sprintf("the review was due on %s, %s ago", due.Text, count(days, "day")),
					"let a clinician read the lesson again, then set prepared and due")
			}
		}
	},
}
