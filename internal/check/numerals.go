package check

import (
	"regexp"
	"strings"
)

// A numeral is an amount with whatever decimal marks were written in and before it.
type numeral struct {
	start, end int
	text       string
}

var numeralText = regexp.MustCompile(`[0-9.,\x{066B}]*[0-9]`)

// numerals finds the numerals of a text in digits 0 to 9.
func numerals(text string) []numeral {
	var out []numeral
	if !strings.ContainsAny(text, "0123456789") {
		return nil
	}
	for _, at := range numeralText.FindAllStringIndex(text, -1) {
		out = append(out, numeral{at[0], at[1], text[at[0]:at[1]]})
	}
	return out
}
