package check

import (
	"fmt"
	"time"

	"wardleaf/internal/finding"
)

// reviewMonths is how long a lesson may go without being read again.
const reviewMonths = 36

var reviewTooFar = &Rule{
	Name:   "review-too-far",
	Title:  "The next review is more than three years away",
	Why:    "Guidance changes within a few years; a page must not outlive it unread.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "review:\n  prepared: 2026-11-25\n  due: 2036-11-25\n",
	After:  "review:\n  prepared: 2026-11-25\n  due: 2027-11-25\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			due, from, name := m.Record.Due, p.Today, "today"
			if prepared := m.Record.Prepared.Time; !prepared.IsZero() && prepared.Before(from) {
				from, name = prepared, "the day it was prepared"
			}
			if last := from.AddDate(0, reviewMonths, 0); due.Time.After(last) {
				p.Report(InRecord(m, due.Span), fmt.Sprintf("%s is more than %d months after %s", due.Text, reviewMonths, name),
					"set a date no later than "+last.Format(time.DateOnly))
			}
		}
	},
}
