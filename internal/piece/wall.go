package piece

import (
	"math"
	"sort"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// wallChecklist is one side of one sheet on one module, for the wall: what to check,
// the warning signs with what to do, whom to call, and a place to sign. It says from
// how far off it can be read. What to do at a sign is set as large as the sign or,
// where there is no room for that, smaller, down to what can be read from one metre,
// or run in. What is too long even so is set to be read from as far off as it fits, and reported.
func wallChecklist(j *Job) (*Result, error) {
	return (&wall{Job: j, label: j.Locale.Label("wall-checklist")}).sheet(j.Module.Lesson, modules(j))
}

// sheet sets a lesson that holds what modules have for the wall.
func (w *wall) sheet(l *lesson.Lesson, modules []translate.Module) (*Result, error) {
	j := w.Job
	asked := tenths(j.distance())
	r, err := w.reach(l, asked)
	if err != nil {
		return nil, err
	}
	p, strips, err := w.build(l, r)
	if err != nil {
		return nil, err
	}
	p.label = w.label + " – " + j.Locale.Label("wall-read-from", locale.With("Metres", j.Locale.Decimal(metres(r.far))))
	strips = typeset.Spread(strips, p.frame.Height(), p.s.Grid/2)
	res, err := p.done(w.label+": "+lesson.Plain(l.Title), strips, modules)
	if err != nil || r.far >= asked {
		return res, err
	}
	res.TooLong, err = overfull(l, func(shorter *lesson.Lesson) (bool, error) {
		return w.fits(shorter, reading{asked, min(asked, closest), false})
	}, lesson.Checklist, lesson.WarningSigns)
	res.TooLong.Fits, res.TooLong.Asked = r.far, asked
	return res, err
}

// Distances in tenths of a metre.
const (
	closest = 10 // from which what to do at a sign is read
	least   = 5  // nobody reads a wall from closer; what does not fit even so runs on
)

// A reading says from how far off a sheet is read, and from how far off what to do at
// a sign, which may be run in after the sign.
type reading struct {
	far, do int // tenths of a metre
	runIn   bool
}

type wall struct {
	*Job
	label    string
	headings bool // checklists carry theirs
}

// reach finds the best reading that the sheet has room for: with words that fill the
// sheet, or as far off as asked, or from as far off as there is room for.
func (w *wall) reach(l *lesson.Lesson, asked int) (reading, error) {
	r, found, err := w.first(l, asked, func(i int) reading { return reading{2*asked - i, 2*asked - i, false} })
	if err != nil || found {
		return r, err
	}
	r, found, err = w.first(l, asked-closest+1, func(i int) reading { return reading{asked, asked - i, false} })
	if err != nil || found {
		return r, err
	}
	after, _, err := w.first(l, asked-least, func(i int) reading { return reading{asked - i, asked - i, true} })
	if err != nil {
		return r, err
	}
	apart, _, err := w.first(l, asked-least, func(i int) reading { return reading{asked - i, min(asked-i, closest), false} })
	if after.far >= apart.far {
		return after, err
	}
	return apart, err
}

// first finds the first of n readings that the sheet has room for. They follow each
// other from large to small; the smallest of all is returned when none is found.
func (w *wall) first(l *lesson.Lesson, n int, nth func(int) reading) (r reading, found bool, err error) {
	i := sort.Search(max(n, 0), func(i int) bool {
		ok, e := w.fits(l, nth(i))
		if e != nil {
			err = e
		}
		return ok
	})
	if i >= n {
		return reading{least, least, true}, false, err
	}
	return nth(i), true, err
}

func (w *wall) fits(l *lesson.Lesson, r reading) (bool, error) {
	p, strips, err := w.build(l, r)
	return err == nil && typeset.Height(strips) <= p.frame.Height(), err
}

// build sets the sheet for a reading.
func (w *wall) build(l *lesson.Lesson, r reading) (*press, []typeset.Strip, error) {
	var sizes [3]typeset.Sizes
	for i, tenths := range []int{r.far, r.do, min(r.far, closest)} {
		var err error
		if sizes[i], err = w.afarSizes(measure.MM(float64(tenths) * 100)); err != nil {
			return nil, nil, err
		}
	}
	p, err := newPress(w.Edition, w.Fonts, sizes[0], typeset.SheetFrame(w.Paper, w.Locale.RTL), w.label)
	if err != nil {
		return nil, nil, err
	}
	p.bare, p.mark = true, w.Mark
	act, near := p.s.Resized(sizes[1]), p.s.Resized(sizes[2])
	width := p.frame.Width()
	out := p.s.CloseTitle(l.Title, width, p.root)
	out = append(out, near.ShortCaution(p.Locale.Label("caution"), p.Locale.Label("caution-short"), width, p.root))
	var used []*lesson.Part
	for _, role := range []lesson.Role{lesson.Checklist, lesson.WarningSigns} {
		for i := range l.Parts {
			pt := &l.Parts[i]
			if pt.Role != role {
				continue
			}
			used = append(used, pt)
			if role == lesson.Checklist {
				if w.headings && len(pt.Heading) > 0 {
					out = append(out, p.s.CloseHeading(pt.Heading, width, p.root))
				}
				out = append(out, p.s.Squares(uncitedPart(pt), width, p.root)...)
			} else {
				out = append(out, p.s.WallSigns(uncitedPart(pt), act, r.runIn, width, p.root)...)
			}
		}
	}
	out = append(out, typeset.SpaceBefore(near.Calls(p.calling(), sizes[0].Text, width, p.root), near.Grid/2)...)
	out = append(out, near.FormLine([]typeset.Field{{Label: p.Locale.Label("signed"), Share: 0.62}, {Label: p.Locale.Label("date"), Share: 0.38}}, width))
	return p, append(out, p.sourceLine(near, used, width)...), nil
}

// tenths is a distance in whole tenths of a metre.
func tenths(l measure.Length) int { return int(math.Round(l.Millimetres() / 100)) }

// metres writes tenths of a metre as metres, "2" or "1.5".
func metres(tenths int) string { return strconv.FormatFloat(float64(tenths)/10, 'f', -1, 64) }
