package piece

import (
	"sort"

	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	"wardleaf/internal/typeset"
)

// flipChart is a chart on one module, held or stood between a group and the trainer,
// and bound at the upper edge of sheets that lie across.
//
// How its sides lie: the group sees the front of a sheet. When that sheet is done, it
// is turned over the top and hangs on the trainer's side. It has made half a turn
// about its upper edge on the way and hangs down again, so that the trainer sees its
// back, with the bound edge still at the top. So the top of a back is at the same
// edge as the top of its front: printed from pages that are all upright, the sheet is
// turned about its short edge. (Turned about the long edge, as a calendar is, the
// trainer would read upside down.)
//
// While the group sees the front of sheet n, the trainer sees the back of sheet n-1,
// which holds the words for that front. Before anything is turned, the trainer sees
// the back of the last sheet: it holds the words for the first front.
func flipChart(j *Job) (*Result, error) {
	label := j.Locale.Label("flip-chart")
	p, err := newPress(j.Edition, j.Fonts, typeset.Sized(measure.Pt(14)), typeset.FlipFrame(j.Paper, j.Locale.RTL), label)
	if err != nil {
		return nil, err
	}
	p.use(j.Module)
	p.bare, p.mark = true, j.Mark
	large, err := j.afarSizes(j.distance())
	if err != nil {
		return nil, err
	}
	f := &chart{press: p, lesson: j.Module.Lesson, large: large}
	pairs := f.pairs()
	var sheets []typeset.Sheet
	for i := range pairs {
		for _, side := range []func(*page.Tag) []typeset.Strip{pairs[i].front, pairs[(i+1)%len(pairs)].talk} {
			sheet := p.column(len(sheets), side(p.root.Add("Sect"))...)
			sheet.Items = append(sheet.Items, p.frame.BindingHoles()...)
			sheets = append(sheets, sheet)
		}
	}
	p.claim(f.lesson)
	p.finish(label+": "+lesson.Plain(f.lesson.Title), sheets, nil, modules(j), false)
	p.res.Document.Duplex = page.FlipShortEdge
	return p.res, nil
}

// A pair is what the group sees, and the words for it.
type pair struct {
	front, talk func(*page.Tag) []typeset.Strip
}

type chart struct {
	*press
	lesson *lesson.Lesson
	large  typeset.Sizes // at the distance of the group
}

func (f *chart) pairs() []pair {
	out := []pair{{f.opening, f.before}}
	part := 0
	for i := range f.lesson.Parts {
		if f.lesson.Parts[i].Role != lesson.Steps {
			continue
		}
		part++
		n, heading := part, lesson.Plain(f.lesson.Parts[i].Heading)
		said := scenes(&f.lesson.Parts[i], func(step int) bool { return f.s.Critical(n, step) })
		seen := scenes(uncitedPart(&f.lesson.Parts[i]), func(step int) bool { return f.s.Critical(n, step) })
		for k := range said {
			out = append(out, pair{
				func(t *page.Tag) []typeset.Strip { return f.picture(heading, seen[k], t) },
				func(t *page.Tag) []typeset.Strip { return f.words(heading, said[k], t) },
			})
		}
	}
	signs := f.signs()
	for i := range signs {
		last := i+1 == len(signs)
		out = append(out, pair{
			func(t *page.Tag) []typeset.Strip { return f.signSide(f.large.Text, signs[i], last, t) },
			func(t *page.Tag) []typeset.Strip { return f.signWords(signs[i], t) },
		})
	}
	return out
}

// fitted returns strips in the largest of sizes that fits the column, or in the
// smallest. Tries are made under tags of their own, and only the one that is used
// under tag.
func (f *chart) fitted(tag *page.Tag, sizes []typeset.Sizes, set func(*typeset.Setter, *page.Tag) []typeset.Strip) []typeset.Strip {
	i := sort.Search(len(sizes)-1, func(i int) bool {
		return typeset.Height(set(f.s.Resized(sizes[i]), &page.Tag{})) <= f.frame.Height()
	})
	return set(f.s.Resized(sizes[i]), tag)
}

// sizes are text sizes from large to small.
func sizes(from, to float64) []typeset.Sizes {
	var out []typeset.Sizes
	for text := max(from, to); text >= to; text -= 0.5 {
		out = append(out, typeset.Sized(measure.Pt(text)))
	}
	return out
}

// opening is the first front: what the lesson is called, and its caution.
func (f *chart) opening(tag *page.Tag) []typeset.Strip {
	w := f.frame.Width()
	return f.fitted(tag, sizes(f.large.Text.Points(), 10), func(s *typeset.Setter, t *page.Tag) []typeset.Strip {
		out := s.CloseTitle(f.lesson.Title, w, t)
		out = append(out, typeset.SpaceBefore(s.Lead(uncited(f.lesson.Lead), w, t), s.Grid/2)...)
		if c := f.lesson.Part(lesson.Caution); c != nil {
			out = append(out, s.Caution(uncitedPart(c), w, t)...)
		}
		return out
	})
}

// picture is the front of a scene. Below a picture, words are as large as they can be
// on two lines, and large enough for the distance of the group unless they would leave
// the picture less than two fifths of the page, as tall scripts do.
func (f *chart) picture(heading string, sc scene, tag *page.Tag) []typeset.Strip {
	w := f.frame.Width()
	head := f.s.Text(heading, typeset.PartLook, 0, w, tag.Add("H2"))
	h := f.frame.Height() - typeset.Height(head)
	most := h
	if sc.figure != nil {
		most = h.Scale(0.32)
	}
	var large []typeset.Sizes
	for text := f.large.Title; text > f.large.Text; text -= measure.Pt(0.5) {
		z := f.large
		z.Text, z.Small, z.Leading = text, text.Scale(0.6), typeset.Sized(text).Leading
		large = append(large, z)
	}
	enough := len(large)
	large = append(large, f.large)
	large = append(large, sizes(f.large.Text.Points()-0.5, 10)...)
	s := f.s.Resized(large[sort.Search(len(large)-1, func(i int) bool {
		tall := f.s.Resized(large[i]).SceneWords(sc.shown, w, &page.Tag{}).Height
		return tall <= most || i >= enough && tall <= h.Scale(0.6)
	})])
	return append(head, s.Scene(sc.shown, sc.figure, w, h, tag))
}

// words is the side of the trainer while the group sees a scene.
func (f *chart) words(heading string, sc scene, tag *page.Tag) []typeset.Strip {
	w, h := f.frame.Width(), f.frame.Height()
	return f.fitted(tag, sizes(14, 8), func(s *typeset.Setter, t *page.Tag) []typeset.Strip {
		say := f.s.Resized(typeset.Sized(s.Sizes.Text.Scale(1.35)))
		head := s.Text(f.Locale.Label("talking-points")+" – "+heading, typeset.PartLook, 0, w, t.Add("H2"))
		narrow, gap := w.Scale(0.28), w.Scale(0.05)
		x := narrow + gap
		if sc.figure == nil {
			x = 0
		}
		talk := say.Talk(sc.talked, w-x, t)
		talk = append(talk, typeset.SpaceBefore(say.Text(f.Locale.Label("ask-group"), typeset.BoldLook, 0, w-x, t.Add("P")), say.Grid)...)
		if sc.figure == nil {
			head = append(head, talk...)
		} else {
			head = append(head, typeset.Beside(s.Seen(sc.figure, narrow, t), talk, x))
		}
		return append(head, f.keys(s, head, h, t)...)
	})
}

// keys sets the key points at the foot of a side of the trainer, to come back to.
func (f *chart) keys(s *typeset.Setter, above []typeset.Strip, height measure.Length, tag *page.Tag) []typeset.Strip {
	k := f.lesson.Part(lesson.KeyPoints)
	if k == nil {
		return nil
	}
	foot := s.KeyPairs(k, f.frame.Width(), tag)
	return append([]typeset.Strip{typeset.Fill(above, foot, height-s.Grid)}, foot...)
}

// before is the side of the trainer while the group sees the first front: how to hold
// the chart, what is needed, and the notes for the trainer.
func (f *chart) before(tag *page.Tag) []typeset.Strip {
	w := f.frame.Width()
	return f.fitted(tag, sizes(16, 8), func(s *typeset.Setter, t *page.Tag) []typeset.Strip {
		head := s.Text(f.Locale.Label("before-you-start"), typeset.PartLook, 0, w, t.Add("H2"))
		narrow, gap := w.Scale(0.38), w.Scale(0.05)
		first := s.Text(f.Locale.Label("flip-how"), typeset.TextLook, 0, narrow, t.Add("P"))
		if m := f.lesson.Part(lesson.Materials); m != nil {
			n := 0
			first = append(first, s.Part(m, &n, narrow, t)...)
		}
		var second []typeset.Strip
		for i := range f.lesson.Parts {
			if f.lesson.Parts[i].Role == lesson.TrainerNotes {
				n := 0
				second = append(second, s.Part(&f.lesson.Parts[i], &n, w-narrow-gap, t)...)
			}
		}
		return append(head, typeset.Beside(first, second, narrow+gap))
	})
}
