package ward

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
	"wardleaf/internal/table"
)

// ReadSessions reads times of skin-to-skin contact in order of their start: the
// columns date, start and end, or start and end each with its date. An end with a date
// of its own ends on that day. Messages call the file name. With an error among the
// findings there are no sessions: half a log would mislead.
func ReadSessions(name string, b []byte) ([]Session, []finding.Finding) {
	need, also := []string{"date", "start", "end"}, []string{"giver", "note"}
	if !table.Names(b, "date") {
		need = need[1:]
	}
	t := table.Read(name, b, table.Options{Need: need, Also: also, MostRows: mostRows, Why: whyTable})
	type placed struct {
		Session
		at source.Span
	}
	var all []placed
	for _, rw := range t.Rows {
		var day time.Time
		if t.Has("date") {
			text, at := t.Cell(rw, "date")
			var ok bool
			if day, ok = t.Date(text, at); !ok {
				continue
			}
		}
		from, fromAt := t.Cell(rw, "start")
		to, toAt := t.Cell(rw, "end")
		start, ok := moment(t, from, day, fromAt)
		end, ok2 := moment(t, to, day, toAt)
		if !ok || !ok2 {
			continue
		}
		const why = "A session that cannot have been would make the day's hours wrong."
		switch {
		case midnight(start) != day && !day.IsZero():
			t.Say("csv-value", fromAt, "the start has another date than the row", why, "write the time alone, and the date in its column")
		case end.Equal(start):
			t.Say("csv-value", toAt, "the session ends when it starts", why, "mend the time, or take the row out")
		case end.Before(start):
			t.Say("csv-value", toAt, "the session ends before it starts", why,
				fmt.Sprintf("mend the time; if it went past midnight, write the end with its date: %s", end.AddDate(0, 0, 1).Format("2006-01-02 15:04")))
		case end.Sub(start) > 24*time.Hour:
			t.Say("csv-value", toAt, "the session is longer than 24 hours", why, "mend the date; write a longer time as one session a day")
		default:
			all = append(all, placed{Session{start, end}, fromAt})
		}
	}
	slices.SortStableFunc(all, func(a, b placed) int { return a.Start.Compare(b.Start) })
	var out []Session
	latest := 0
	for i, s := range all {
		if i > 0 && s.Start.Before(all[latest].End) {
			f := t.Say("csv-overlap", s.at, "this session begins before another one has ended", "The same hours would be counted twice.", "mend the times, or join the two")
			f.Related = []finding.Related{{Place: finding.Place{File: t.File, Span: all[latest].at}, Text: "the other begins here"}}
		}
		if s.End.After(all[latest].End) {
			latest = i
		}
		if s.Start.Sub(all[0].Start) > 24*time.Hour*mostDays {
			t.Say("csv-value", s.at, fmt.Sprintf("this session is more than %d days after the first", mostDays), whyTable, "mend the date, or give fewer weeks at a time")
			break
		}
		out = append(out, s.Session)
	}
	if t.Failed() {
		out = nil
	}
	finding.Sort(t.Findings)
	return out, t.Findings
}

// moment reads a time of day, or a date and a time parted by a blank or the T of ISO
// 8601. 24:00 is the end of the day.
func moment(t *table.Table, text string, day time.Time, at source.Span) (time.Time, bool) {
	date, clock, both := strings.Cut(strings.Replace(text, "T", " ", 1), " ")
	if !both {
		clock = text
	}
	if both {
		var ok bool
		if day, ok = t.Date(date, at); !ok {
			return day, false
		}
	} else if day.IsZero() {
		t.Say("csv-value", at, fmt.Sprintf("%q has no date", text), whyTable, "write date and time, such as 2026-11-25 06:10, or add a column date")
		return day, false
	}
	if clock == "24:00" {
		return day.AddDate(0, 0, 1), true
	}
	c, err := time.Parse("15:04", clock)
	if err != nil || len(clock) != len("15:04") {
		t.Say("csv-value", at, fmt.Sprintf("%q is not a time of day", clock), whyTable, "write hours and minutes from 00:00 to 24:00, such as 06:10, in the digits 0 to 9")
		return day, false
	}
	return day.Add(time.Duration(c.Hour())*time.Hour + time.Duration(c.Minute())*time.Minute), true
}
