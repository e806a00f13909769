package translate

import (
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

// ContactValue writes a contact's value in the language's digits, kept in
// left-to-right order within right-to-left text, or as a line to write on.
func ContactValue(c *pack.Contact, loc *locale.Locale) string {
	if c == nil || c.Value == "" {
		return Blank
	}
	v := loc.Digits(c.Value)
	if loc.RTL {
		return "\u2066" + v + "\u2069"
	}
	return v
}
