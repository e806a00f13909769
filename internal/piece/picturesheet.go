package piece

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/typeset"
)

// pictureSheet shows every picture of the pack once with the words that stand for it,
// for those who review pictures or want to hang them up.
func pictureSheet(j *Job) (*Result, error) {
	loc := j.Locale
	label := loc.Label("picture-sheet")
	p, err := j.work(9, label)
	if err != nil {
		return nil, err
	}
	w := p.frame.Width()
	strips := p.s.Text(label, typeset.TitleLook, 0, w, p.root.Add("H1"))
	strips = append(strips, p.shortCaution())
	for _, m := range j.Modules {
		var pictures []lesson.Block
		m.Lesson.Walk(func(b *lesson.Block) {
			if b.Kind == lesson.Figure && b.Sheet() == "" {
				pictures = append(pictures, *b)
			}
		})
		if len(pictures) == 0 {
			continue
		}
		head := p.s.PartHeading(m.Lesson.Title, w, p.root)
		head[0].Anchor = &typeset.Anchor{Name: "module-" + m.ID, Title: lesson.Plain(m.Lesson.Title)}
		strips = append(strips, head...)
		strips = append(strips, p.s.Gallery(pictures, 4, w, p.root)...)
	}
	return p.done(label, strips, j.Modules)
}
