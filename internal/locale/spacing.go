package locale

import (
	"strings"
	"unicode"
)

const (
	narrow  = '\u202f' // narrow no-break space
	noBreak = '\u00a0'
)

// Spacing gives punctuation the spaces that the language sets around it. French has a
// narrow no-break space before ; ! and ?, a no-break space before : and within « »
// (Lexique des règles typographiques en usage à l'Imprimerie nationale, from memory).
// Other languages are left as they are, and so is a colon within a word or an address.
func (l *Locale) Spacing(text string) string {
	if l.Tag != "fr" || !strings.ContainsAny(text, ";:!?«»") {
		return text
	}
	rs := []rune(text)
	var out []rune
	// before puts a space of a kind at the end of what there is, in the place of any other.
	before := func(space rune) {
		for len(out) > 0 && unicode.IsSpace(out[len(out)-1]) {
			out = out[:len(out)-1]
		}
		if len(out) > 0 {
			out = append(out, space)
		}
	}
	for i, r := range rs {
		last := i+1 == len(rs)
		switch {
		case (r == ';' || r == '!' || r == '?') && !(i > 0 && strings.ContainsRune(";!?", rs[i-1])):
			before(narrow)
		case r == ':' && (last || unicode.IsSpace(rs[i+1])), r == '»':
			before(noBreak)
		case i > 0 && rs[i-1] == '«':
			out = append(out, noBreak)
			if unicode.IsSpace(r) {
				continue
			}
		}
		out = append(out, r)
	}
	return string(out)
}
