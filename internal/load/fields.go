package load

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"golang.org/x/text/language"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// whyStrict is said of every value that cannot be used as it stands.
const whyStrict = "A value that is not understood would be left out of the pages without a word."

// A field reads the value of one name in a record.
type field func(*value)

// group reads a mapping with known names only, in the order of the file.
func (s subject) group(v *value, what string, known map[string]field) {
	if !s.is(v, mapping, what) {
		return
	}
	for _, e := range v.entries {
		if read, ok := known[e.key]; ok {
			read(e.value)
			continue
		}
		names := pack.Sorted(known)
		s.say("record-key-unknown", e.at, fmt.Sprintf("%s has no value called %q", what, e.key), whyStrict,
			finding.Meant(e.key, names)+"use one of: "+strings.Join(names, ", "))
	}
}

// table reads a mapping whose names the writer chose.
func (s subject) table(v *value, what string, read func(id string, at source.Span, v *value)) {
	if !s.is(v, mapping, what) {
		return
	}
	for _, e := range v.entries {
		if s.name(e.key, e.at) {
			read(e.key, e.at, e.value)
		}
	}
}

// is reports whether v is of a kind; nothing at all is quietly not.
func (s subject) is(v *value, k kind, what string) bool {
	if v.kind != k && v.kind != nothing {
		s.say("record-value", v.span, fmt.Sprintf("%s must be %v; this is %v", what, k, v.kind), whyStrict,
			map[kind]string{
				scalar:  "write the value after the colon, on the same line",
				list:    "write [a, b], or one value a line after a hyphen",
				mapping: "write name: value lines below, each indented by two spaces",
			}[k])
	}
	return v.kind == k
}

// missing says that a name must be there.
func (s subject) missing(at source.Span, what, key string) {
	s.say("record-key-missing", at, fmt.Sprintf("%s lacks %s", what, key), whyStrict, "add a line "+key+": ...")
}

var plainName = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// name checks a name that links, files and addresses are made of.
func (s subject) name(name string, at source.Span) bool {
	if plainName.MatchString(name) {
		return true
	}
	s.say("record-value", at, fmt.Sprintf("%q cannot be a name", name),
		"Names become parts of addresses and file names, on every kind of computer.",
		"use small letters a to z, digits and single hyphens")
	return false
}

func (s subject) text(dst *string, what string) field {
	return func(v *value) {
		if s.is(v, scalar, what) {
			*dst = strings.TrimSpace(v.text)
		}
	}
}

func (s subject) oneOf(dst *string, what string, allowed ...string) field {
	return func(v *value) {
		if !s.is(v, scalar, what) {
			return
		}
		if !slices.Contains(allowed, v.text) {
			s.say("record-value", v.span, fmt.Sprintf("%s cannot be %q", what, v.text), whyStrict,
				finding.Meant(v.text, allowed)+"use one of: "+strings.Join(allowed, ", "))
			return
		}
		*dst = v.text
	}
}

func (s subject) whole(dst *int, what string) field { return s.between(dst, what, 1, 9999) }

func (s subject) between(dst *int, what string, low, high int) field {
	return func(v *value) {
		if !s.is(v, scalar, what) {
			return
		}
		n, err := strconv.Atoi(v.text)
		if err != nil || n < low || n > high {
			s.say("record-value", v.span, fmt.Sprintf("%s must be a whole number from %d to %d; this is %q", what, low, high, v.text), whyStrict, "write digits alone, such as 25")
			return
		}
		*dst = n
	}
}

// clock reads a time of day as minutes after midnight.
func (s subject) clock(dst *int, what string) field {
	return func(v *value) {
		if !s.is(v, scalar, what) {
			return
		}
		t, err := time.Parse("15:04", v.text)
		if err != nil {
			s.say("record-value", v.span, fmt.Sprintf("%s must be a time of day; this is %q", what, v.text), whyStrict, `write hours and minutes from 00:00 to 23:59, such as "09:00"`)
			return
		}
		*dst = t.Hour()*60 + t.Minute()
	}
}

var amount = regexp.MustCompile(`^[0-9]+(\.[0-9]+)?$`)

// amount keeps an amount as it was written, digits and a point.
func (s subject) amount(dst *string, what string) field {
	return func(v *value) {
		if !s.is(v, scalar, what) {
			return
		}
		if !amount.MatchString(v.text) {
			s.say("record-value", v.span, fmt.Sprintf("%s must be an amount; this is %q", what, v.text),
				"The amounts shown to families are compared with this one.", "write digits 0 to 9 with a point for the decimals, and the unit on a line of its own")
			return
		}
		*dst = v.text
	}
}

// date keeps what was written; whether it is a date at all is for a rule to say.
func (s subject) date(dst *pack.Date, what string) field {
	return func(v *value) {
		if s.is(v, scalar, what) {
			*dst = pack.Date{Text: v.text, Span: v.span}
			dst.Time, _ = time.Parse(time.DateOnly, v.text)
		}
	}
}

func (s subject) ref(dst *pack.Ref, what string) field {
	return func(v *value) {
		if s.is(v, scalar, what) {
			*dst = pack.Ref{Name: v.text, Span: v.span}
		}
	}
}

func (s subject) refs(dst *[]pack.Ref, what string) field {
	return func(v *value) {
		if !s.is(v, list, what) {
			return
		}
		for _, item := range v.items {
			if !s.is(item, scalar, "each of "+what) {
				continue
			}
			if slices.ContainsFunc(*dst, func(r pack.Ref) bool { return r.Name == item.text }) {
				s.say("record-value", item.span, fmt.Sprintf("%s names %s twice", what, item.text), "It would be printed twice.", "take one of the two out")
				continue
			}
			*dst = append(*dst, pack.Ref{Name: item.text, Span: item.span})
		}
	}
}

// byLanguage reads a mapping from language tags.
func (s subject) byLanguage(what string, read func(tag string, v *value)) field {
	return func(v *value) {
		if !s.is(v, mapping, what) {
			return
		}
		for _, e := range v.entries {
			if s.tag(e.key, e.at) {
				read(e.key, e.value)
			}
		}
	}
}

func (s subject) localized(dst *pack.Localized, what string) field {
	return s.byLanguage(what, func(tag string, v *value) {
		if *dst == nil {
			*dst = pack.Localized{}
		}
		var t string
		s.text(&t, what)(v)
		if t != "" {
			(*dst)[tag] = t
		}
	})
}

// tag checks a BCP 47 language tag, in the one way of writing it that BCP 47 recommends.
func (s subject) tag(tag string, at source.Span) bool {
	t, err := language.Parse(tag)
	if err == nil && t != language.Und && t.String() == tag && !strings.Contains(tag, "-x-") && !strings.Contains(tag, "-u-") {
		return true
	}
	mend := "use a BCP 47 tag, such as en, hi, ar or pt-BR"
	if strings.Contains(tag, " ") {
		mend = `put quotation marks round a text with a comma in it: {en: "Look, listen"}`
	}
	if err == nil && t != language.Und {
		mend = "write " + t.String()
	}
	s.say("record-value", at, fmt.Sprintf("%q is not a language tag as it should be written", tag),
		"Screen readers, fonts and the direction of the text follow from it.", mend)
	return false
}
