package piece

import (
	"fmt"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/translate"
)

func lessonsOf(minutes ...int) []translate.Module {
	var out []translate.Module
	for i, n := range minutes {
		out = append(out, translate.Module{Module: &pack.Module{ID: fmt.Sprint(i), Record: pack.Record{Minutes: n}}})
	}
	return out
}

// TestTimetable works cases out by hand: lessons of 25, 25, 30, 35, 35 and 120 minutes
// from nine o'clock sit for 80, 70 and 120 minutes, with breaks of 15 between them.
func TestTimetable(t *testing.T) {
	day := pack.Session{Start: 9 * 60, Group: 8, Break: 15}
	for _, k := range []struct {
		session pack.Session
		minutes []int
		want    string
	}{
		{day, []int{25, 25, 30, 35, 35, 120}, "0:09:00-09:25 1:09:25-09:50 2:09:50-10:20 break:10:20-10:35 3:10:35-11:10 4:11:10-11:45 break:11:45-12:00 5:12:00-14:00"},
		{day, []int{50, 50}, "0:09:00-09:50 1:09:50-10:40"}, // a hundred minutes is about ninety
		{day, []int{50, 51}, "0:09:00-09:50 break:09:50-10:05 1:10:05-10:56"},
		{day, nil, ""},
		{pack.Session{Start: 23*60 + 30, Break: 10}, []int{60, 60}, "0:23:30-00:30 break:00:30-00:40 1:00:40-01:40"},
	} {
		var got []string
		for _, r := range timetable(lessonsOf(k.minutes...), k.session) {
			name := "break"
			if r.module != nil {
				name = r.module.ID
				if r.show+r.practise+r.quiz != r.end-r.start {
					t.Errorf("%v: methods of lesson %s do not add up: %+v", k.minutes, name, r)
				}
			}
			got = append(got, name+":"+clock(r.start)+"-"+clock(r.end))
		}
		if s := strings.Join(got, " "); s != k.want {
			t.Errorf("%v: got %s, want %s", k.minutes, s, k.want)
		}
	}
}

// TestMethods divides as the notes for the trainer of the starter pack do.
func TestMethods(t *testing.T) {
	for minutes, want := range map[int][3]int{
		25: {10, 10, 5}, 30: {10, 15, 5}, 35: {15, 15, 5}, 40: {15, 15, 10}, 90: {40, 40, 10},
		3: {0, 0, 3}, 10: {0, 5, 5}, 1: {0, 0, 1},
	} {
		show, practise, quiz := methods(minutes)
		if got := [3]int{show, practise, quiz}; got != want {
			t.Errorf("%d minutes: got %v, want %v", minutes, got, want)
		}
	}
}

// TestNeeds counts what several lessons need once.
func TestNeeds(t *testing.T) {
	materials := func(items ...string) *lesson.Lesson {
		b := lesson.Block{Kind: lesson.List}
		for _, s := range items {
			b.Items = append(b.Items, lesson.Item{Blocks: []lesson.Block{{Kind: lesson.Paragraph, Inlines: text(s)}}})
		}
		return &lesson.Lesson{Parts: []lesson.Part{{Role: lesson.Materials, Blocks: []lesson.Block{b}}}}
	}
	ms := lessonsOf(10, 10, 10)
	ms[0].Lesson = materials("A doll", "A pen")
	ms[1].Lesson = materials("a  doll;", "A doll", "Soap")
	ms[2].Lesson = materials("A doll.")
	p := &press{Edition: &translate.Edition{Modules: ms}}
	var got []string
	for _, n := range p.needs() {
		got = append(got, fmt.Sprint(lesson.Plain(n.words), n.lessons))
	}
	if s := strings.Join(got, ", "); s != "A doll[1 2 3], A pen[1], Soap[2]" {
		t.Errorf("got %s", s)
	}
}

// TestSessionPlanClock finds the last minute of the starter pack on the plan, in the
// digits of each language: 370 minutes of lessons and four breaks after nine o'clock.
func TestSessionPlanClock(t *testing.T) {
	made(t, "session-plan", []string{"A4"}, func(what string, j *Job, r *Result) {
		minutes := 0
		for _, m := range j.Modules {
			minutes += m.Record.Minutes
		}
		rows := timetable(j.Modules, j.Pack.Session)
		breaks := 0
		for _, s := range rows {
			if s.module == nil {
				breaks++
			}
		}
		last := j.Locale.Digits(clock(j.Pack.Session.Start + minutes + breaks*j.Pack.Session.Break))
		if has := said(elements(r.Document, r.Document.Pages[0])); !strings.Contains(has, last) {
			t.Errorf("%s: %s is not on the plan", what, last)
		}
		if r.Document.Duplex != page.AnyDuplex {
			t.Errorf("%s: a plan may be turned either way", what)
		}
	})
}
