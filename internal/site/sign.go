package site

import (
	"html/template"

	"wardleaf/internal/lesson"
)

// A sign is a warning sign and what to do. Sign is empty when the item is not
// written as "**Sign**, when: what to do".
type sign struct {
	Sign    template.HTML
	Do      template.HTML
	Figures []template.HTML
}

func (r *renderer) signs(b *lesson.Block) []sign {
	var out []sign
	for _, it := range b.Items {
		words, figures := apart(it.Blocks)
		when, do := lesson.SplitSign(words)
		s := sign{Sign: r.inlines(when), Do: r.blocks(do)}
		for k := range figures {
			s.Figures = append(s.Figures, r.figure(&figures[k]))
		}
		out = append(out, s)
	}
	return out
}
