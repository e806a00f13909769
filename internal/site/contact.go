package site

import (
	"strings"

	"wardleaf/internal/translate"
)

// A contact is whom to call. Tel is empty when Value is not a telephone number;
// Value is empty when there is a line to write on. A telephone number is shown in a
// left-to-right override: by UAX #9 its groups would else change places when they are
// written in Arabic digits.
type contact struct{ Label, Value, Tel string }

func contacts(e *translate.Edition) []contact {
	var out []contact
	for i := range e.Pack.Facility.Contacts {
		c := &e.Pack.Facility.Contacts[i]
		out = append(out, contact{c.Label.In(e.Locale.Tag, e.Pack.Source), e.Locale.Digits(c.Value), dialled(c.Value)})
	}
	return out
}

// dialled returns a telephone number as a tel: address holds it (RFC 3966): digits,
// and a plus before them. It is empty for what has any but the usual separators, such
// as a postal address.
func dialled(value string) string {
	var out []rune
	for _, r := range value {
		switch {
		case r >= '0' && r <= '9' || r == '+' && len(out) == 0:
			out = append(out, r)
		case !strings.ContainsRune(" \u00a0-–./()", r):
			return ""
		}
	}
	if len(out) < 2 {
		return ""
	}
	return string(out)
}
