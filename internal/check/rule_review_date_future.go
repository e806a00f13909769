package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

var reviewDateFuture = &Rule{
	Name:   "review-date-future",
	Title:  "Something was done on a day that has not come yet",
	Why:    "A page that claims to have been prepared or signed tomorrow cannot be trusted in anything else.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "review:\n  prepared: 2062-11-25\n",
	After:  "review:\n  prepared: 2026-11-25\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			past := []pack.Date{m.Record.Prepared}
			for _, s := range m.Record.SignOffs {
				past = append(past, s.Date)
			}
			for _, d := range past {
				if d.Time.After(p.Today) {
					p.Report(InRecord(m, d.Span), fmt.Sprintf("%s has not come yet", d.Text), "write the day on which it was done")
				}
			}
		}
	},
}
