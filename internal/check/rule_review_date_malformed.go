package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

var reviewDateMalformed = &Rule{
	Name:   "review-date-malformed",
	Title:  "A date is not an ISO 8601 calendar date",
	Why:    "03/04/2027 is a day in April in one country and in March in another.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "review:\n  due: 25/11/2027\n",
	After:  "review:\n  due: 2027-11-25\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			dates := reviewDates(m)
			for _, s := range m.Record.SignOffs {
				dates = append(dates, namedDate{s.Date, "date"})
			}
			for _, d := range dates {
				if d.Text != "" && d.Time.IsZero() {
					p.Report(InRecord(m, d.Span), fmt.Sprintf("%q is not a date", d.Text), "write year, month and day, such as 2027-11-25")
				}
			}
		}
	},
}

// A namedDate is a date and its name in the record.
type namedDate struct {
	pack.Date
	name string
}

func reviewDates(m *pack.Module) []namedDate {
	return []namedDate{{m.Record.Prepared, "prepared"}, {m.Record.Due, "due"}}
}
