package review

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"wardleaf/internal/pack"
)

// TestEscape holds the examples and rules of RFC 5545, 3.3.11.
func TestEscape(t *testing.T) {
	for _, k := range [][2]string{
		{"Project XYZ Final Review\nConference Room - 3B\nCome Prepared.", `Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`},
		{`a\b;c,d:e"f`, `a\\b\;c\,d:e"f`},
		{"a\r\nb", `a\nb`},
		{`\n`, `\\n`},
		{"tab\tbell\a, delete\x7f", "tab\tbell\\, delete"},
		{"न,म", `न\,म`},
		{"\xff", "\ufffd"},
	} {
		if got := escape(k[0]); got != k[1] {
			t.Errorf("%q: got %q, want %q", k[0], got, k[1])
		}
	}
}

// TestFold holds lines to RFC 5545, 3.1: at most 75 octets without the line end, no
// character split, and the text whole again once each CRLF and blank is taken out.
func TestFold(t *testing.T) {
	for _, k := range []struct {
		text  string
		lines int
	}{
		{"", 1},
		{strings.Repeat("a", 75), 1},
		{strings.Repeat("a", 76), 2},
		{strings.Repeat("a", 75+74), 2},
		{strings.Repeat("a", 75+74+1), 3},
		{strings.Repeat("न", 25), 1}, // three octets each
		{strings.Repeat("न", 26), 2},
		{"a" + strings.Repeat("न", 25), 2},
		{strings.Repeat("a", 74) + "é", 2},
		{strings.Repeat("a", 72) + "\U0001F476", 2}, // four octets
		{strings.Repeat("a", 71) + "\U0001F476", 1},
		{"x" + strings.Repeat(" ", 200), 3},
	} {
		got := fold(k.text)
		if n := strings.Count(got, "\r\n"); n != k.lines {
			t.Errorf("%q: %d lines, want %d", k.text, n, k.lines)
		}
		sound(t, got)
		if back := strings.TrimSuffix(strings.ReplaceAll(got, "\r\n ", ""), "\r\n"); back != k.text {
			t.Errorf("%q came back as %q", k.text, back)
		}
	}
}

// sound checks the lines of an iCalendar stream.
func sound(t *testing.T, stream string) {
	t.Helper()
	lines := strings.Split(strings.TrimSuffix(stream, "\r\n"), "\r\n")
	for _, l := range lines {
		if len(l) > 75 || !utf8.ValidString(l) || strings.ContainsAny(l, "\r\n") {
			t.Errorf("not a sound line (%d octets): %q", len(l), l)
		}
	}
}

func FuzzFold(f *testing.F) {
	f.Add("SUMMARY:" + strings.Repeat("न", 40))
	f.Fuzz(func(t *testing.T, s string) {
		s = escape(s)
		got := fold(s)
		sound(t, got)
		if strings.ReplaceAll(got, "\r\n ", "") != s+"\r\n" {
			t.Errorf("%q did not come back from %q", s, got)
		}
	})
}

func TestICS(t *testing.T) {
	p := &pack.Pack{Title: pack.Localized{"en": "Small, warm; near"}, Version: "1.0", Source: "en"}
	row := Row{Module: "wrapping", Title: strings.Repeat("पट्टी ", 12), Due: day("2026-12-31"), Prepared: day("2026-11-25"), State: Soon}
	rows := []Row{{Module: "undated", State: NoDate}, row}
	got := string(ICS(p, rows, day("2026-11-26")))
	sound(t, got)
	flat := strings.ReplaceAll(got, "\r\n ", "")
	for _, want := range []string{
		"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Wardleaf//",
		"\r\nDTSTAMP:20261126T000000Z\r\n",
		"\r\nDTSTART;VALUE=DATE:20261231\r\nDTEND;VALUE=DATE:20270101\r\n",
		"\r\nSEQUENCE:20261125\r\n",
		"\r\nDESCRIPTION:Small\\, warm\\; near\\, version 1.0.\\nLet ",
		"\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n",
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("no %q in\n%s", want, flat)
		}
	}
	for _, once := range []string{"\r\nBEGIN:VEVENT", "\r\nEND:VEVENT", "\r\nUID:", "\r\nSUMMARY:"} {
		if strings.Count(got, once) != 1 {
			t.Errorf("%d of %q", strings.Count(got, once), once)
		}
	}
	if strings.Contains(got, "undated") {
		t.Error("a module without a date is in the calendar")
	}
	// The same event later: another day and another SEQUENCE, the same UID.
	row.Due, row.Prepared = day("2027-12-31"), day("2026-12-31")
	if uid(got) == "" || uid(string(ICS(p, []Row{row}, day("2027-01-01")))) != uid(got) {
		t.Error("the UID changed")
	}
	other := *p
	other.Title = pack.Localized{"en": "Another pack"}
	if uid(string(ICS(&other, []Row{row}, day("2027-01-01")))) == uid(got) {
		t.Error("two packs share a UID")
	}
	if again := ICS(p, rows, day("2026-11-26")); !bytes.Equal(again, []byte(got)) {
		t.Error("not the same twice")
	}
	if ICS(p, rows[:1], day("2026-11-26")) != nil {
		t.Error("a calendar with nothing in it")
	}
}

func uid(calendar string) string {
	_, rest, _ := strings.Cut(calendar, "\r\nUID:")
	id, _, _ := strings.Cut(rest, "\r\n")
	return id
}
