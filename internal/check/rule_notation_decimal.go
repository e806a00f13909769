package check

import (
	"fmt"
	"regexp"
	"unicode"
	"unicode/utf8"

	"wardleaf/internal/finding"
)

// The two forms are on the list of error-prone notation of the Institute for Safe
// Medication Practices (ISMP).
var notationDecimal = &Rule{
	Name:   "notation-decimal",
	Title:  "A decimal can be misread by ten times",
	Why:    "A point is easily missed: .5 is read as 5, and 1.0 as 10.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "[.5\u00a0kg](number:bag) and [1.0\u00a0kg](number:other-bag)\n",
	After:  "[0.5\u00a0kg](number:bag) and [1\u00a0kg](number:other-bag)\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			for _, n := range numerals(r.text) {
				if _, unit := p.words(r.lesson.Lang).unitOf(r.text, n); !unit && r.at(n.start).scheme != "number" {
					continue
				}
				before, _ := utf8.DecodeLastRuneInString(r.text[:n.start])
				switch {
				case nakedDecimal.MatchString(n.text) && !unicode.In(before, unicode.L, unicode.M):
					p.Mend(r.where(n.start), fmt.Sprintf("%s has no digit before the decimal mark", n.text),
						"write a zero before the mark", r.edit(n.start, "", p.zero(r.lesson.Lang))...)
				case trailingZero.MatchString(n.text):
					p.Report(r.where(n.start), fmt.Sprintf("%s ends in a zero after the decimal mark", n.text),
						"leave out the last zeros, here and in numbers.yaml, and the mark if no digit is left after it")
				}
			}
		})
	},
}

var (
	nakedDecimal = regexp.MustCompile(`^[.,\x{066B}][0-9]+$`)
	// Three digits after a mark may be thousands, as in 1,500, unless a zero stands before it.
	trailingZero = regexp.MustCompile(`^(?:[0-9]+[.,\x{066B}](?:0|[0-9]0|[0-9]{3,}0)|0+[.,\x{066B}][0-9]*0)$`)
)
