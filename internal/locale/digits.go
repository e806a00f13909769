package locale

import (
	"sort"
	"strings"
)

// zeros gives the digit zero of each numbering system of UTS #35 that we use;
// the other nine digits follow it in Unicode.
var zeros = map[string]rune{
	"": '0', "latn": '0',
	"arab": '٠', "arabext": '۰', "deva": '०', "beng": '০', "tamldec": '௦', "telu": '౦',
	"mymr": '၀', "khmr": '០', "thai": '๐',
}

// Decimal writes an amount, such as 2.5, with the language's digits and decimal mark.
func (l *Locale) Decimal(amount string) string {
	return l.Digits(strings.Replace(amount, ".", l.facts.Decimal, 1))
}

// NumberingSystems lists the names that a pack can ask for.
func NumberingSystems() []string {
	var out []string
	for n := range zeros {
		if n != "" {
			out = append(out, n)
		}
	}
	sort.Strings(out)
	return out
}
