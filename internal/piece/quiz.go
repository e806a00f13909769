package piece

import (
	"fmt"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/quiz"
	"wardleaf/internal/typeset"
)

func quizA(j *Job) (*Result, error) { return quizPaper(j, "a") }
func quizB(j *Job) (*Result, error) { return quizPaper(j, "b") }

// quizPaper sets the questions of a module in the order of a version, with a line for
// the name and the seed the order follows from.
func quizPaper(j *Job, version string) (*Result, error) {
	return onePage(func(size float64) (*Result, error) { return quizPaperIn(j, version, size) }, 11.5, 11, 10.5, 10)
}

// onePage makes a piece in the first of the sizes in which it fits on one page, or
// else in the first of all.
func onePage(make func(size float64) (*Result, error), sizes ...float64) (*Result, error) {
	var first *Result
	for i, size := range sizes {
		r, err := make(size)
		if err != nil {
			return nil, err
		}
		if len(r.Document.Pages) == 1 {
			return r, nil
		}
		if i == 0 {
			first = r
		}
	}
	return first, nil
}

func quizPaperIn(j *Job, version string, size float64) (*Result, error) {
	loc := j.Locale
	label := loc.Label("quiz-paper", locale.With("Version", versionLetter(version)))
	p, err := j.work(size, label)
	if err != nil {
		return nil, err
	}
	w := p.frame.Width()
	seed := quiz.Seed(j.Module.ID, version)
	strips := p.heading(j.Module)
	strips = append(strips, typeset.Stack(p.s.Text(label+" – "+loc.Label("seed", number(loc, "Seed", seed)), typeset.BoldLook, 0, w, p.root.Add("P"))))
	strips = append(strips, p.s.FormLine([]typeset.Field{
		{Label: loc.Label("name"), Share: 0.5}, {Label: loc.Label("date"), Share: 0.25}, {Label: loc.Label("score"), Share: 0.25}}, w))
	strips = append(strips, p.shortCaution())
	strips = append(strips, typeset.SpaceBefore(p.s.Text(loc.Label("quiz-how"), typeset.TextLook, 0, w, p.root.Add("P")), p.s.Grid)...)
	for i, q := range placed(j.Module.Lesson, seed) {
		st := p.s.Question(&q, i+1, w, p.root)
		st.Before = p.s.Grid
		strips = append(strips, st)
	}
	return p.done(label+": "+lesson.Plain(j.Module.Lesson.Title), strips, modules(j))
}

// versionLetter is what a version is called on paper. It is the same in every
// language, so that papers and keys of several languages can be told apart by it.
func versionLetter(version string) string { return map[string]string{"a": "A", "b": "B"}[version] }

func questions(l *lesson.Lesson) []lesson.Question {
	var out []lesson.Question
	for i := range l.Parts {
		if l.Parts[i].Role == lesson.Quiz {
			out = append(out, l.Parts[i].Questions()...)
		}
	}
	return out
}

func order(l *lesson.Lesson, seed int) []quiz.Placed {
	var options []int
	for _, q := range questions(l) {
		options = append(options, len(q.Options))
	}
	return quiz.Version(seed, options)
}

// placed returns the questions of a lesson in the order of a seed.
func placed(l *lesson.Lesson, seed int) []lesson.Question {
	qs := questions(l)
	var out []lesson.Question
	for _, pl := range order(l, seed) {
		q := qs[pl.Question]
		options := q.Options
		q.Options = nil
		for _, o := range pl.Options {
			q.Options = append(q.Options, options[o])
		}
		out = append(out, q)
	}
	return out
}

// answerKey lists the questions in the lesson's own order with their stable ids, where
// each stands in both versions, the right answers and the reasons.
func answerKey(j *Job) (*Result, error) {
	loc, l := j.Locale, j.Module.Lesson
	label := loc.Label("answer-key")
	p, err := j.work(10, label)
	if err != nil {
		return nil, err
	}
	w := p.frame.Width()
	type spot struct{ number, letter string }
	var where [2][]spot
	var seeds [2]string
	for v, version := range []string{"a", "b"} {
		seed := quiz.Seed(j.Module.ID, version)
		seeds[v] = loc.Number(seed)
		where[v] = make([]spot, len(questions(l)))
		for i, pl := range order(l, seed) {
			s := spot{number: loc.Number(i + 1)}
			for k, o := range pl.Options {
				if opts := questions(l)[pl.Question].Options; opts[o].Right {
					s.letter = loc.Letter(k)
				}
			}
			where[v][pl.Question] = s
		}
	}
	strips := p.heading(j.Module)
	strips = append(strips, p.s.Text(fmt.Sprintf("%s – A: %s – B: %s", label, loc.Label("seed", locale.With("Seed", seeds[0])), loc.Label("seed", locale.With("Seed", seeds[1]))), typeset.BoldLook, 0, w, p.root.Add("P"))...)
	strips = append(strips, p.shortCaution())
	table := typeset.RuledTable{
		Columns: []float64{0.08, 0.1, 0.1, 0.36, 0.36},
		Head:    []typeset.Cell{typeset.Head("№"), typeset.Head("A"), typeset.Head("B"), typeset.Head(loc.Label("right-answer")), typeset.Head(loc.Label("reason"))},
	}
	var rows [][]typeset.Cell
	for i, q := range questions(l) {
		var right []lesson.Inline
		for _, o := range q.Options {
			if o.Right {
				right = append(right, inlines(o.Blocks)...)
			}
		}
		answer := append(append(inlines(q.Stem), lesson.Inline{Kind: lesson.Break}), lesson.Inline{Kind: lesson.Strong, Children: right})
		rows = append(rows, []typeset.Cell{
			typeset.Plain(loc.Digits(strconv.Itoa(i + 1))),
			typeset.Head(where[0][i].number + " " + where[0][i].letter),
			typeset.Head(where[1][i].number + " " + where[1][i].letter),
			{Text: answer}, {Text: inlines(q.Reason)},
		})
	}
	strips = append(strips, p.s.Space(1))
	strips = append(strips, p.s.Table(table, rows, w, p.root)...)
	return p.done(label+": "+lesson.Plain(l.Title), strips, modules(j))
}

// inlines runs the paragraphs of blocks together.
func inlines(bs []lesson.Block) []lesson.Inline {
	var out []lesson.Inline
	for _, b := range bs {
		if len(out) > 0 && len(b.Inlines) > 0 {
			out = append(out, lesson.Inline{Kind: lesson.Break})
		}
		out = append(out, b.Inlines...)
	}
	return out
}
