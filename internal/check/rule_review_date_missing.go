package check

import "wardleaf/internal/finding"

var reviewDateMissing = &Rule{
	Name:   "review-date-missing",
	Title:  "A record lacks a review date",
	Why:    "Every page shows when its words were prepared and when they must be read again; without the dates nobody knows that a page is out of date.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "review:\n  prepared: 2026-11-25\n",
	After:  "review:\n  prepared: 2026-11-25\n  due: 2027-11-25\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			if m.Unread {
				continue
			}
			for _, d := range reviewDates(m) {
				if d.Text == "" {
					p.Report(InRecord(m, d.Span), "review has no date "+d.name, "under review, write "+d.name+": and a date such as 2027-11-25")
				}
			}
		}
	},
}
