package piece

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	"wardleaf/internal/typeset"
)

// sessionPlan is for the trainer: when each lesson is taught, with which methods, how
// the room should be, how many copies to print, and what to bring. It is set as large
// as it fits on one sheet, both sides; a long pack runs on to as few sides as it can.
func sessionPlan(j *Job) (*Result, error) {
	var best *Result
	for _, text := range []float64{10.5, 10, 9.5, 9} {
		res, err := sessionPlanAt(j, text)
		if err != nil || len(res.Document.Pages) <= 2 && !wordCut(res.Document) {
			return res, err
		}
		if best == nil || len(res.Document.Pages) < len(best.Document.Pages) {
			best = res
		}
	}
	return best, nil
}

// wordCut reports whether a word had to be cut, such as a column's head in large letters.
func wordCut(d *page.Document) bool {
	for _, pg := range d.Pages {
		for _, it := range pg.Items {
			if r, ok := it.(*page.GlyphRun); ok && r.Cut {
				return true
			}
		}
	}
	return false
}

func sessionPlanAt(j *Job, size float64) (*Result, error) {
	loc := j.Locale
	label := loc.Label("session-plan")
	p, err := j.work(size, label)
	if err != nil {
		return nil, err
	}
	w := p.frame.Width()
	rows := timetable(j.Modules, j.Pack.Session)
	strips := p.s.Text(label, typeset.TitleLook, 0, w, p.root.Add("H1"))
	when := loc.Label("plan-group", number(loc, "Group", j.Pack.Session.Group),
		locale.With("Start", loc.Digits(clock(j.Pack.Session.Start))), locale.With("End", loc.Digits(clock(end(rows, j.Pack.Session.Start)))))
	strips = append(strips, p.s.Text(when, typeset.BoldLook, 0, w, p.root.Add("P"))...)
	strips = append(strips, p.s.FormLine([]typeset.Field{{Label: loc.Label("trainer"), Share: 0.4}, {Label: loc.Label("date"), Share: 0.25}, {Label: loc.Label("ward-or-village"), Share: 0.35}}, w))
	strips = append(strips, p.shortCaution(), p.s.Space(1))
	strips = append(strips, p.times(rows)...)
	strips = append(strips, typeset.SpaceBefore(p.s.Text(loc.Label("plan-note"), typeset.TextLook, 0, w, p.root.Add("P")), p.s.Grid/2)...)
	room, copies := p.room(j.Pack.Session.Group, w.Scale(0.46)), p.copies(j.Pack.Session.Group, w.Scale(0.5))
	strips = append(strips, typeset.SpaceBefore([]typeset.Strip{typeset.Beside(room, copies, w.Scale(0.5))}, p.s.Grid)...)
	bring := p.bring()
	above := typeset.Height(strips)
	if len(bring) > 0 && above <= p.frame.Height() && above+typeset.Height(bring) > p.frame.Height() {
		bring[0].Break = typeset.NewPage
	}
	strips = append(strips, bring...)
	return p.done(label, strips, j.Modules)
}

func end(rows []sitting, start int) int {
	if len(rows) == 0 {
		return start
	}
	return rows[len(rows)-1].end
}

// times sets the timetable, with its totals.
func (p *press) times(rows []sitting) []typeset.Strip {
	loc := p.Locale
	t := typeset.RuledTable{
		Columns: []float64{0.16, 0.06, 0.34, 0.1, 0.13, 0.1, 0.11},
		Head: []typeset.Cell{typeset.Head(loc.Label("time")), typeset.Head("№"), typeset.Head(loc.Label("lesson")), typeset.Head(loc.Label("show")),
			typeset.Head(loc.Label("practise")), typeset.Head(loc.Label("quiz")), typeset.Head(loc.Label("minutes-column"))},
	}
	count := func(n int) typeset.Cell { return typeset.Plain(loc.Number(n)) }
	var cells [][]typeset.Cell
	var show, practise, quiz, all, lessons int
	for _, r := range rows {
		when := typeset.Plain(loc.Digits(clock(r.start)) + "–" + loc.Digits(clock(r.end)))
		minutes := r.end - r.start
		all += minutes
		if r.module == nil {
			cells = append(cells, []typeset.Cell{when, {}, typeset.Plain(loc.Label("break")), {}, {}, {}, count(minutes)})
			continue
		}
		lessons++
		show, practise, quiz = show+r.show, practise+r.practise, quiz+r.quiz
		cells = append(cells, []typeset.Cell{when, count(lessons), {Text: r.module.Lesson.Title, Bold: true}, count(r.show), count(r.practise), count(r.quiz), count(minutes)})
	}
	total := func(n int) typeset.Cell { return typeset.Head(loc.Number(n)) }
	cells = append(cells, []typeset.Cell{typeset.Head(loc.Label("total")), {}, {}, total(show), total(practise), total(quiz), total(all)})
	return p.s.Table(t, cells, p.frame.Width(), p.root)
}

// A need is one thing to bring, and the lessons it is for, by number.
type need struct {
	words   []lesson.Inline
	lessons []int
}

// needs are the materials of all lessons; what is worded the same is one thing.
func (p *press) needs() []*need {
	var out []*need
	known := map[string]*need{}
	for i, m := range p.Modules {
		for k := range m.Lesson.Parts {
			if m.Lesson.Parts[k].Role != lesson.Materials {
				continue
			}
			for _, it := range uncitedPart(&m.Lesson.Parts[k]).Items(false) {
				words := inlines(it.Blocks)
				id := alike(words)
				n := known[id]
				if n == nil {
					n = &need{words: words}
					known[id] = n
					out = append(out, n)
				}
				if len(n.lessons) == 0 || n.lessons[len(n.lessons)-1] != i+1 {
					n.lessons = append(n.lessons, i+1)
				}
			}
		}
	}
	return out
}

// alike is the same for words that differ in letter case, white space or the mark at
// their end alone.
func alike(words []lesson.Inline) string {
	return strings.Trim(strings.ToLower(strings.Join(strings.Fields(lesson.Plain(words)), " ")), ".:;,،؛।")
}

// bring sets what is needed, two things to a row; what most lessons need comes first.
func (p *press) bring() []typeset.Strip {
	loc := p.Locale
	t := typeset.RuledTable{Columns: []float64{0.06, 0.3, 0.14, 0.06, 0.3, 0.14}}
	for range 2 {
		t.Head = append(t.Head, typeset.Cell{}, typeset.Head(loc.Label("what-to-bring")), typeset.Head(loc.Label("for-lessons")))
	}
	var rows [][]typeset.Cell
	needs := p.needs()
	slices.SortStableFunc(needs, func(a, b *need) int { return len(b.lessons) - len(a.lessons) })
	for i, n := range needs {
		cells := []typeset.Cell{{Square: true}, {Text: n.words}, typeset.Plain(numbers(loc, n.lessons))}
		if i%2 == 1 {
			rows[i/2] = append(rows[i/2], cells...)
			continue
		}
		rows = append(rows, cells)
	}
	if len(rows) == 0 {
		return nil
	}
	return typeset.SpaceBefore(p.s.Table(t, rows, p.frame.Width(), p.root), 2*p.s.Grid)
}

// numbers writes the numbers of lessons; of more than one, how many they are first.
func numbers(loc *locale.Locale, ns []int) string {
	var out []string
	for _, n := range ns {
		out = append(out, loc.Number(n))
	}
	list := loc.List(out)
	if len(ns) == 1 {
		return list
	}
	return fmt.Sprintf("%s × (%s)", loc.Number(len(ns)), list)
}

// room sets how the room should be for a group and its trainer.
func (p *press) room(group int, width measure.Length) []typeset.Strip {
	loc := p.Locale
	t := typeset.RuledTable{Columns: []float64{0.13, 0.87}, Head: []typeset.Cell{{}, typeset.Head(loc.Label("room"))}}
	var rows [][]typeset.Cell
	for _, words := range []string{
		loc.Label("room-chairs", number(loc, "Number", group+1)), loc.Label("room-pairs", number(loc, "Number", (group+1)/2)),
		loc.Label("room-warm"), loc.Label("room-water"), loc.Label("room-quiet"),
	} {
		rows = append(rows, []typeset.Cell{{Square: true}, typeset.Plain(words)})
	}
	return p.s.Table(t, rows, width, p.root)
}

// copies sets what to print: one of each lesson for the trainer, or one for each of
// the group.
func (p *press) copies(group int, width measure.Length) []typeset.Strip {
	loc, lessons := p.Locale, len(p.Modules)
	t := typeset.RuledTable{
		Columns: []float64{0.12, 0.58, 0.3},
		Head:    []typeset.Cell{{}, typeset.Head(loc.Label("copies")), typeset.Head(loc.Label("copies-number"))},
	}
	var rows [][]typeset.Cell
	row := func(what, copies string) {
		rows = append(rows, []typeset.Cell{{Square: true}, typeset.Plain(what), typeset.Plain(copies)})
	}
	ofEach := func(label string, each int) {
		row(label, fmt.Sprintf("%s × %s = %s", loc.Number(each), loc.Number(lessons), loc.Number(each*lessons)))
	}
	row(loc.Label("attendance"), loc.Number(1))
	ofEach(loc.Label("flip-chart"), 1)
	ofEach(loc.Label("wall-checklist"), 1)
	ofEach(loc.Label("handout"), group)
	ofEach(loc.Label("quiz-paper", locale.With("Version", versionLetter("a"))), group)
	ofEach(loc.Label("quiz-paper", locale.With("Version", versionLetter("b"))), group)
	ofEach(loc.Label("answer-key"), 1)
	ofEach(loc.Label("skills-checklist"), group)
	return p.s.Table(t, rows, width, p.root)
}
