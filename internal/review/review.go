// Package review says which lessons must be read again and when, as rows or as a
// calendar, and writes a reviewer's sign-off into the text of a record.
//
// What a sign-off is bound to is translate.Digest. The calendar is iCalendar
// (RFC 5545). The package reads no files and no clock, and writes nothing.
package review

import (
	"cmp"
	"slices"
	"time"

	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// A State says how a review stands on a day.
type State string

// The states, gravest first.
const (
	NoDate  State = "no date"
	Overdue State = "overdue"
	Soon    State = "due"
	InTime  State = "in time"
)

// soon is how many days ahead a review counts as due and no longer as in time.
const soon = 30

// A Row is the next review of one module.
type Row struct {
	Module, Title string // Title is in the source language
	Due, Prepared time.Time
	Days          int // from today until Due; below zero when overdue
	State         State
	Unsigned      []string // languages whose lesson awaits a sign-off
}

// Due returns the reviews that are due within so many days of today, and those that
// are overdue or have no date; the earliest first, then by module.
func Due(p *pack.Pack, today time.Time, within int) []Row {
	var rows []Row
	for _, m := range p.Modules {
		r := Row{Module: m.ID, Title: m.Title(p.Source), Due: m.Record.Due.Time, Prepared: m.Record.Prepared.Time}
		r.Days = days(r.Due) - days(today)
		switch {
		case r.Due.IsZero():
			r.Days, r.State = 0, NoDate
		case r.Days < 0:
			r.State = Overdue
		case r.Days <= soon:
			r.State = Soon
		default:
			r.State = InTime
		}
		if r.State != NoDate && r.Days > within {
			continue
		}
		for _, lang := range p.Languages {
			if m.Lessons[lang] != nil && !translate.SignedOff(p, m, lang) {
				r.Unsigned = append(r.Unsigned, lang)
			}
		}
		rows = append(rows, r)
	}
	slices.SortFunc(rows, func(a, b Row) int {
		return cmp.Or(a.Due.Compare(b.Due), cmp.Compare(a.Module, b.Module))
	})
	return rows
}

// days counts calendar days, so that no time of day takes one away. time.Duration
// would end after 292 years.
func days(t time.Time) int {
	y, m, d := t.Date()
	return int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60))
}
