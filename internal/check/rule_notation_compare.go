package check

import (
	"fmt"
	"regexp"

	"wardleaf/internal/finding"
)

var notationCompare = &Rule{
	Name:   "notation-compare",
	Title:  "A sign for less or more stands beside an amount",
	Why:    "The two signs are taken for one another, and < before an amount can be read as a digit.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "Call if it is < [36.5\u00a0°C](number:cold-act).\n",
	After:  "Call if it is [under 36.5\u00a0°C](number:cold-act).\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			for _, at := range compared.FindAllStringSubmatchIndex(r.text, -1) {
				i := max(at[2], at[4])
				p.Report(r.where(i), fmt.Sprintf("%s stands beside an amount", r.text[i:i+1]),
					"write \"under\" or \"over\" in the words of this language")
			}
		})
	},
}

// A sign with a dash or another sign before it is part of an arrow.
var compared = regexp.MustCompile(`(?:^|[^-=<>])([<>])=?[\s\x{00A0}\x{202F}]*[.,\x{066B}]?[0-9]|[0-9][\s\x{00A0}\x{202F}]*([<>])`)
