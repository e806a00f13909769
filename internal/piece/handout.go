package piece

import (
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/typeset"
)

// handout is one sheet, two sides, on one module: the caution, what to do in pictures
// and few words, when to come back now, and whom to call. Text is never smaller than
// 12 points. Where there is less room, pictures and text grow smaller, down to that
// limit; then the key points are left out, and then the pictures of warning signs.
// What does not fit even so is reported.
func handout(j *Job) (*Result, error) {
	label := j.Locale.Label("handout")
	l := j.Module.Lesson
	set := func(try handoutSize) (*Result, error) {
		p, err := j.sheet(try.text, label)
		if err != nil {
			return nil, err
		}
		return p.done(label+": "+lesson.Plain(l.Title), p.handout(l, try), modules(j))
	}
	var res *Result
	var err error
	for _, try := range handoutSizes {
		if res, err = set(try); err != nil || len(res.Document.Pages) <= handoutSides {
			return res, err
		}
	}
	res.TooLong, err = overfull(l, func(shorter *lesson.Lesson) (bool, error) {
		p, err := j.sheet(12, label)
		if err != nil {
			return false, err
		}
		sheets, _ := typeset.Paginate(p.handout(shorter, handoutSizes[len(handoutSizes)-1]), p.frame, 0)
		return len(sheets) <= handoutSides, nil
	}, lesson.Steps, lesson.WarningSigns)
	return res, err
}

// handoutSides is one sheet of paper.
const handoutSides = 2

type handoutSize struct {
	text, figure float64 // points, and the width of pictures in mm
	runIn        bool    // what to do at a warning sign is run in, not on a line of its own
	keys         bool    // key points are printed
	signs        bool    // warning signs have their pictures
}

var handoutSizes = []handoutSize{
	{16, 46, false, true, true}, {15, 42, false, true, true}, {14, 40, false, true, true}, {13, 36, false, true, true},
	{12.5, 34, false, true, true}, {12, 32, false, true, true}, {12, 30, true, true, true}, {12, 28, true, false, true},
	{12, 28, true, false, false}, {12, 22, true, false, false},
}

func (p *press) handout(l *lesson.Lesson, size handoutSize) []typeset.Strip {
	w := p.frame.Width()
	p.s.FigureWidth = measure.MM(size.figure)
	out := p.s.CloseTitle(l.Title, w, p.root)
	steps := 0
	var later []typeset.Strip
	var used []*lesson.Part
	for i := range l.Parts {
		cites := &l.Parts[i]
		pt := uncitedPart(cites)
		switch pt.Role {
		case lesson.Caution:
			out = append(out, p.s.Caution(pt, w, p.root)...)
		case lesson.Steps:
			steps++
			out = append(out, p.s.StepPairs(pt, steps, w, p.root)...)
		case lesson.KeyPoints:
			if !size.keys {
				continue
			}
			later = append(later, p.s.Part(pt, &steps, w, p.root)...)
		case lesson.WarningSigns:
			if !size.signs {
				pt.Blocks = withoutPictures(pt.Blocks)
			}
			later = append(later, p.s.SignPairs(pt, size.runIn, w, p.root)...)
		default:
			continue
		}
		used = append(used, cites)
	}
	return append(append(append(out, later...), p.calls(p.s, p.s, w)...), p.sourceLine(p.s, used, w)...)
}

// calls sets whom to call side by side: labels in the text of one setter, numbers as
// large as the titles of another.
func (p *press) calls(label, number *typeset.Setter, width measure.Length) []typeset.Strip {
	contacts := p.calling()
	if len(contacts) == 0 {
		return nil
	}
	return append(label.PartHeading(text(p.Locale.Label("whom-to-call")), width, p.root), label.Calls(contacts, number.Sizes.Title, width, p.root)...)
}

// sourceLine names what parts cite, in one small paragraph.
func (p *press) sourceLine(s *typeset.Setter, parts []*lesson.Part, width measure.Length) []typeset.Strip {
	names := cited(parts...)
	if len(names) == 0 {
		return nil
	}
	return typeset.SpaceBefore(s.Text(p.Locale.Label("sources")+": "+strings.Join(names, "; "), typeset.SmallLook, 0, width, p.root.Add("P")), s.Grid/2)
}
