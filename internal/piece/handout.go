package piece

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/typeset"
)

// handout is one sheet, two sides, on one module: the caution, what to do in pictures
// and few words, when to come back now, and whom to call. Text is never smaller than
// 12 points. What does not fit is left out in this order: what is needed, the key
// points, the larger size.
func handout(j *Job) (*Result, error) {
	label := j.Locale.Label("handout")
	var res *Result
	for _, try := range []struct {
		text float64
		keys bool
	}{{13.5, true}, {13, true}, {12.5, true}, {12, true}, {12, false}} {
		p, err := j.work(try.text, label)
		if err != nil {
			return nil, err
		}
		if res, err = p.done(label+": "+lesson.Plain(j.Module.Lesson.Title), p.handout(j, try.keys), modules(j)); err != nil {
			return nil, err
		}
		if len(res.Document.Pages) <= 2 {
			break
		}
	}
	return res, nil
}

func (p *press) handout(j *Job, keys bool) []typeset.Strip {
	w := p.frame.Width()
	p.s.FigureWidth = measure.MM(38)
	out := p.heading(j.Module)
	steps := 0
	var later []typeset.Strip
	for i := range j.Module.Lesson.Parts {
		pt := &j.Module.Lesson.Parts[i]
		switch pt.Role {
		case lesson.Caution:
			out = append(out, p.s.Caution(pt, w, p.root)...)
		case lesson.Steps:
			steps++
			out = append(out, p.s.StepGrid(pt, steps, w, p.root)...)
		case lesson.KeyPoints:
			if keys {
				later = append(later, p.s.Part(pt, &steps, w, p.root)...)
			}
		case lesson.WarningSigns:
			later = append(later, p.s.SignGrid(pt, w, p.root)...)
		}
	}
	return append(append(out, later...), p.contacts(p.root)...)
}
