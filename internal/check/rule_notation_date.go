package check

import (
	"fmt"
	"regexp"
	"strconv"

	"wardleaf/internal/finding"
)

var notationDate = &Rule{
	Name:   "notation-date",
	Title:  "A date can be read in two ways",
	Why:    "Some read the day first and some the month, so that a visit or a feed is missed by months.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "Come again on 03/04/2027.\n",
	After:  "Come again on 3 April 2027.\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			for _, at := range numericDate.FindAllStringSubmatchIndex(r.text, -1) {
				part := func(n int) string { return r.text[at[2*n]:at[2*n+1]] }
				a, _ := strconv.Atoi(part(2))
				b, _ := strconv.Atoi(part(4))
				if part(3) == part(5) && a != b && a >= 1 && b >= 1 && a <= 12 && b <= 12 {
					p.Report(r.where(at[2]), fmt.Sprintf("%s can be two days", part(1)), "write the name of the month")
				}
			}
		})
	},
}

var numericDate = regexp.MustCompile(`(?:^|[^0-9./-])(([0-9]{1,2})([/.-])([0-9]{1,2})([/.-])(?:[0-9]{4}|[0-9]{2}))(?:[^0-9/-]|$)`)
