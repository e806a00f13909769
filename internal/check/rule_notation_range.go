package check

import (
	"regexp"

	"wardleaf/internal/finding"
)

var notationRange = &Rule{
	Name:   "notation-range",
	Title:  "A range is written with a dash",
	Why:    "A dash is read as a minus sign, or missed, and from right to left the two amounts can change places.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "[36.5–37.5\u00a0°C](number:normal-temperature)\n",
	After:  "[36.5 to 37.5\u00a0°C](number:normal-temperature)\n",
	Run: func(p *Pass) {
		p.numberLinks(func(at Where, text string) {
			if dashRange.MatchString(text) {
				p.Report(at, "a dash stands between two amounts", "write the word for \"to\" in this language")
			}
		})
	},
}

// Pd is every dash; U+2212 is the minus sign, and a unit may stand before the dash.
var dashRange = regexp.MustCompile(`[0-9][^0-9,;()]{0,4}?[\p{Pd}\x{2212}][\s\x{00A0}\x{202F}]*[0-9]`)
