package site

import (
	"html/template"
	"strings"

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
		when, do := splitSign(words)
		s := sign{Sign: r.inlines(when), Do: r.blocks(do)}
		for k := range figures {
			s.Figures = append(s.Figures, r.figure(&figures[k]))
		}
		out = append(out, s)
	}
	return out
}

// splitSign takes the words of an item apart at the first colon after their bold
// start. The colon stays with the sign.
func splitSign(bs []lesson.Block) (when []lesson.Inline, do []lesson.Block) {
	if len(bs) == 0 || bs[0].Kind != lesson.Paragraph || len(bs[0].Inlines) < 2 || bs[0].Inlines[0].Kind != lesson.Strong {
		return nil, bs
	}
	ins := bs[0].Inlines
	for i, in := range ins {
		before, after, found := strings.Cut(in.Text, ":")
		if in.Kind != lesson.Text || !found {
			continue
		}
		head, tail, first := in, in, bs[0]
		head.Text, tail.Text = before+":", strings.TrimLeft(after, " ")
		when = append(append(when, ins[:i]...), head)
		first.Inlines = append([]lesson.Inline{tail}, ins[i+1:]...)
		return when, append([]lesson.Block{first}, bs[1:]...)
	}
	return nil, bs
}
