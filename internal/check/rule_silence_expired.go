package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

var silenceExpired = &Rule{
	Name:   "silence-expired",
	Title:  "The day until which a warning was silenced is past",
	Why:    "A warning that is silenced for ever is forgotten; a day makes someone look again.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "silenced:\n  - {rule: sentence-long, reason: the law's own words, until: 2026-01-31}\n",
	After:  "silenced:\n  - {rule: sentence-long, reason: the law's own words, until: 2027-01-31}\n",
	Run: func(p *Pass) {
		for _, q := range p.Pack.Silenced {
			if !q.Until.Time.IsZero() && q.Until.Time.Before(p.Today) {
				p.Report(Where{File: p.Pack.File, Span: q.Span}, fmt.Sprintf("%s was silenced until %s", q.Rule, q.Until.Text),
					"mend what it finds, or let someone decide again and set a new day")
			}
		}
	},
}
