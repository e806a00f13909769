package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

const soon = 60 // days (common practice: a reviewer needs weeks, not days)

var reviewDueSoon = &Rule{
	Name:   "review-due-soon",
	Title:  "The review of a lesson is due within 60 days",
	Why:    "A clinician needs time to read it; once the date is past, nothing of it can be printed.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "review:\n  prepared: 2025-12-20\n  due: 2026-12-20 # and today is 2026-11-25\n",
	After:  "review:\n  prepared: 2026-11-25\n  due: 2027-11-25\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			due := m.Record.Due
			days := int(due.Time.Sub(p.Today).Hours() / 24)
			if !due.Time.IsZero() && days >= 0 && days <= soon {
				p.Report(InRecord(m, due.Span), fmt.Sprintf("the review is due on %s, in %s", due.Text, count(days, "day")),
					"ask a clinician to read the lesson again, then set prepared and due")
			}
		}
	},
}
