package check

import (
	"fmt"
	"regexp"

	"wardleaf/internal/finding"
)

var notationAbbreviation = &Rule{
	Name:   "notation-abbreviation",
	Title:  "An abbreviation beside an amount is easily misread",
	Why:    "In a quick hand or a small print, U is read as 0, cc as 00 and µg as mg; a dose can be wrong by ten or a thousand times.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "5 cc of milk, 400 IU of the drops\n",
	After:  "5\u00a0ml of milk, 400\u00a0units of the drops\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			for _, at := range abbreviated.FindAllStringSubmatchIndex(r.text, -1) {
				word := r.text[at[2]:at[3]]
				where, what, mend := r.where(at[2]), fmt.Sprintf("%s stands beside an amount", word), "write "+abbreviations[word]+" instead"
				if word == "cc" { // it is the same amount in every language
					p.Mend(where, what, mend, r.edit(at[2], word, "ml")...)
					continue
				}
				p.Report(where, what, mend)
			}
		})
	},
}

// A unit may stand between the amount and the abbreviation, as in "5 mg BID".
var abbreviated = regexp.MustCompile(`[0-9][\s\x{00A0}\x{202F}]*(?:(?:mg|ml|g|kg|mcg)[\s\x{00A0}\x{202F}]+)?(cc|\x{00B5}g|\x{03BC}g|IU|iu|U|u|QD|QOD|BID|SC)(?:[^\pL\pM\p{Nd}]|$)`)

// Each is on the list of error-prone abbreviations of the Institute for Safe Medication
// Practices (ISMP). The sign for micro has two code points.
var abbreviations = map[string]string{
	"cc":      "ml",
	"\u00b5g": "mcg, or micrograms in full,",
	"\u03bcg": "mcg, or micrograms in full,",
	"IU":      "units",
	"iu":      "units",
	"U":       "units",
	"u":       "units",
	"QD":      "once a day",
	"QOD":     "every second day",
	"BID":     "two times a day",
	"SC":      "under the skin",
}
