package piece

import (
	"math"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/typeset"
)

// wallChecklist is one side of one sheet on one module, for the wall: what to check,
// the warning signs with what to do, whom to call, and a place to sign. It is set for
// the greatest distance at which all of it fits, and says that distance. What to do
// at a sign is first set as large as the sign; where there is no room for that, for
// those who step up to one metre. When even so it cannot be read from as far off as
// the job asks, that is reported.
func wallChecklist(j *Job) (*Result, error) {
	w := &wall{Job: j, label: j.Locale.Label("wall-checklist")}
	l := j.Module.Lesson
	asked := tenths(j.distance())
	w.actsLarge = true
	reach, err := w.reach(l, 2*asked)
	if err == nil && reach < asked {
		w.actsLarge = false
		reach, err = w.reach(l, asked)
	}
	if err != nil {
		return nil, err
	}
	p, strips, err := w.build(l, reach)
	if err != nil {
		return nil, err
	}
	p.label = w.label + " · " + j.Locale.Label("wall-read-from", locale.With("Metres", j.Locale.Decimal(metres(reach))))
	strips = typeset.Spread(strips, p.frame.Height(), measure.MM(12))
	res, err := p.done(w.label+": "+lesson.Plain(l.Title), strips, modules(j))
	if err != nil || reach >= asked {
		return res, err
	}
	res.TooLong, err = overfull(l, func(shorter *lesson.Lesson) (bool, error) {
		return w.fits(shorter, asked)
	}, lesson.Checklist, lesson.WarningSigns)
	res.TooLong.Fits, res.TooLong.Asked = reach, asked
	return res, err
}

type wall struct {
	*Job
	label     string
	actsLarge bool // what to do at a sign is as large as the sign
}

// reach is the greatest distance, in tenths of a metre and up to most, from which the
// sheet can be read. It is never less than the closest that print on a wall is read
// from; a sheet that does not fit even so runs on to a second page.
func (w *wall) reach(l *lesson.Lesson, most int) (int, error) {
	const least = 5
	for d := most; d > least; d-- {
		if ok, err := w.fits(l, d); err != nil || ok {
			return d, err
		}
	}
	return least, nil
}

func (w *wall) fits(l *lesson.Lesson, tenths int) (bool, error) {
	p, strips, err := w.build(l, tenths)
	return err == nil && typeset.Height(strips) <= p.frame.Height(), err
}

// build sets the sheet to be read from a distance.
func (w *wall) build(l *lesson.Lesson, tenths int) (*press, []typeset.Strip, error) {
	far := measure.MM(float64(tenths) * 100)
	large, err := w.afarSizes(far)
	if err != nil {
		return nil, nil, err
	}
	small, err := w.afarSizes(min(far, armsLength))
	if err != nil {
		return nil, nil, err
	}
	p, err := newPress(w.Edition, w.Fonts, large, typeset.WallFrame(w.Paper, w.Locale.RTL), w.label)
	if err != nil {
		return nil, nil, err
	}
	p.bare = true
	near := p.s.Resized(small)
	do := near
	if w.actsLarge {
		do = p.s
	}
	width := p.frame.Width()
	out := p.heading(w.Module)
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
				out = append(out, p.s.Squares(uncitedPart(pt), width, p.root)...)
			} else {
				out = append(out, p.s.WallSigns(uncitedPart(pt), do, width, p.root)...)
			}
		}
	}
	out = append(out, typeset.SpaceBefore(near.Calls(p.calling(), large.Title, width, p.root), near.Grid/2)...)
	out = append(out, near.FormLine([]typeset.Field{{Label: p.Locale.Label("signed"), Share: 0.62}, {Label: p.Locale.Label("date"), Share: 0.38}}, width))
	return p, append(out, p.sourceLine(near, used, width)...), nil
}

// tenths is a distance in whole tenths of a metre.
func tenths(l measure.Length) int { return int(math.Round(l.Millimetres() / 100)) }

// metres writes tenths of a metre as metres, "2" or "1.5".
func metres(tenths int) string { return strconv.FormatFloat(float64(tenths)/10, 'f', -1, 64) }
