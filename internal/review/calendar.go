package review

import (
	"crypto/sha256"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"wardleaf/internal/pack"
)

const (
	icsDate = "20060102"
	// foldAt is the most octets of a line, its end not counted (RFC 5545, 3.1).
	foldAt = 75
)

// ICS writes rows as an iCalendar object (RFC 5545), an event of a whole day for each.
// A later file with the same events replaces them in a calendar: a UID stays with its
// module, and SEQUENCE follows the day on which the lesson was prepared. stamp is the
// day on which the file is made. Rows without a date are left out; it is nil when no
// row is left, since a calendar must hold something (3.4).
func ICS(p *pack.Pack, rows []Row, stamp time.Time) []byte {
	var b strings.Builder
	line := func(name, value string) { b.WriteString(fold(name + value)) }
	title := p.Title.In(p.Source, p.Source)
	key := sha256.Sum256([]byte(title)) // tells packs apart that have a module of one name
	line("BEGIN:", "VCALENDAR")
	line("VERSION:", "2.0")
	line("PRODID:", "-//Wardleaf//Review dates//EN")
	line("CALSCALE:", "GREGORIAN")
	events := 0
	for _, r := range rows {
		if r.State == NoDate {
			continue
		}
		events++
		line("BEGIN:", "VEVENT")
		line("UID:", fmt.Sprintf("review-%s-%x@wardleaf.invalid", r.Module, key[:8]))
		line("DTSTAMP:", stamp.Format(icsDate)+"T000000Z")
		line("DTSTART;VALUE=DATE:", r.Due.Format(icsDate))
		line("DTEND;VALUE=DATE:", r.Due.AddDate(0, 0, 1).Format(icsDate)) // the day after the last (3.6.1)
		line("SEQUENCE:", sequence(r.Prepared))
		line("SUMMARY:", escape("Review due: "+r.Title))
		line("DESCRIPTION:", escape(fmt.Sprintf("%s, version %s.\nLet a clinician read the lesson again in every language; then set prepared and due in %s/module.yaml.",
			title, p.Version, r.Module)))
		line("TRANSP:", "TRANSPARENT")
		line("END:", "VEVENT")
	}
	line("END:", "VCALENDAR")
	if events == 0 {
		return nil
	}
	return []byte(b.String())
}

// sequence is a number that rises when a lesson is prepared anew.
func sequence(prepared time.Time) string {
	if prepared.IsZero() {
		return "0"
	}
	return prepared.Format(icsDate)
}

// escape writes a value of type TEXT (RFC 5545, 3.3.11). Controls have no place in
// one, but for the tab.
func escape(s string) string {
	s = strings.NewReplacer("\\", "\\\\", ";", "\\;", ",", "\\,", "\r\n", "\\n", "\n", "\\n").Replace(strings.ToValidUTF8(s, "\ufffd"))
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' || r == 0x7F {
			return -1
		}
		return r
	}, s)
}

// fold ends a content line, and breaks one that is too long before a character, never
// within (RFC 5545, 3.1). The space that begins a continuation counts.
func fold(s string) string {
	var b strings.Builder
	n := 0
	for _, r := range s {
		w := utf8.RuneLen(r)
		if n+w > foldAt {
			b.WriteString("\r\n ")
			n = 1
		}
		b.WriteRune(r)
		n += w
	}
	b.WriteString("\r\n")
	return b.String()
}
