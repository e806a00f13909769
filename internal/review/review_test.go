package review

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
	"wardleaf/internal/translate"
)

func day(s string) time.Time {
	t, _ := time.Parse(time.DateOnly, s) // zero when s is empty
	return t
}

func module(id, prepared, due string) *pack.Module {
	m := &pack.Module{ID: id, Lessons: map[string]*lesson.Lesson{}}
	for _, lang := range []string{"en", "hi"} {
		m.Lessons[lang] = &lesson.Lesson{Module: id, Lang: lang, File: source.New(id+"/"+lang+".md", []byte("# "+id))}
	}
	m.Lessons["en"].Title = []lesson.Inline{{Text: "The " + id}}
	m.Record.Prepared.Time, m.Record.Due.Time = day(prepared), day(due)
	return m
}

func TestDue(t *testing.T) {
	late := module("late", "2025-01-01", "2026-11-24")
	p := &pack.Pack{Source: "en", Languages: []string{"en", "hi"}, Modules: []*pack.Module{
		module("z-far", "2026-11-25", "2027-02-24"),
		module("b-soon", "2026-11-25", "2026-12-25"),
		module("today", "2026-11-25", "2026-11-25"),
		module("undated", "", ""),
		module("next", "2026-11-25", "2026-12-26"),
		module("last", "2026-11-25", "2027-02-23"),
		module("a-soon", "2026-11-25", "2026-12-25"),
		late,
	}}
	late.Record.SignOffs = []pack.SignOff{{Role: "Nurse", Lang: "en", Digest: translate.Digest(p, late, "en")}}
	var got []string
	rows := Due(p, time.Date(2026, 11, 25, 23, 30, 0, 0, time.UTC), 90)
	for _, r := range rows {
		got = append(got, fmt.Sprintf("%s %d %s", r.Module, r.Days, r.State))
	}
	want := []string{"undated 0 no date", "late -1 overdue", "today 0 due", "a-soon 30 due", "b-soon 30 due", "next 31 in time", "last 90 in time"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
	if r := rows[1]; !slices.Equal(r.Unsigned, []string{"hi"}) || r.Title != "The late" {
		t.Errorf("got %+v", r)
	}
	if rows := Due(&pack.Pack{}, day("2026-11-25"), 90); len(rows) > 0 {
		t.Errorf("an empty pack: %v", rows)
	}
}
