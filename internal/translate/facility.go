package translate

import (
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// Blank stands where a facility has not filled in a contact: a line to write on.
const Blank = "____________"

// fill returns a copy of a lesson in which each facility link is text, followed by
// the contact's value or a line to write on.
func fill(l *lesson.Lesson, p *pack.Pack, loc *locale.Locale) *lesson.Lesson {
	return l.Map(func(in lesson.Inline) []lesson.Inline {
		if in.Kind != lesson.Link || in.Scheme != "facility" {
			return []lesson.Inline{in}
		}
		value := ContactValue(p.Facility.Contact(in.Target), loc)
		return append(in.Children, lesson.Inline{Kind: lesson.Text, Span: in.Span, Text: "\u00a0(" + value + ")"})
	})
}

// ContactValue writes a contact's value in the language's digits, or as a line to
// write on. Spaces in it do not break. Within right-to-left text it is isolated and
// overridden to run from left to right (UAX #9, X4 and X5a): groups of Arabic-Indic
// digits with a space between them would else change places.
func ContactValue(c *pack.Contact, loc *locale.Locale) string {
	if c == nil || c.Value == "" {
		return Blank
	}
	v := strings.ReplaceAll(loc.Digits(c.Value), " ", "\u00a0")
	if loc.RTL {
		return "\u2066\u202d" + v + "\u202c\u2069"
	}
	return v
}
