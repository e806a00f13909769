package check

import (
	"slices"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// A beside is one block of a translation and the block that it was made from.
type beside struct {
	translate.Pair
	module   *pack.Module
	l, src   *lesson.Lesson
	critical bool // a caution, or a step that must never be missed
}

// where is the place of the block, with its source beside it.
func (b *beside) where() Where {
	return In(b.l, b.Target.Span).Beside(b.src.File, b.Source.Span, "in the source language")
}

// besides calls fn for every block of every translation that has a source.
func (p *Pass) besides(fn func(beside)) {
	p.pairings(func(pairing *translate.Pairing, l, src *lesson.Lesson) {
		m := pairing.Module
		for _, pair := range pairing.Pairs {
			if pair.Target == nil {
				continue // translation-structure says so
			}
			b := beside{Pair: pair, module: m, l: l, src: src}
			u := pair.Source
			b.critical = u.Role == lesson.Caution || u.Role == lesson.Steps && u.Kind != translate.Alt &&
				slices.ContainsFunc(m.Record.CriticalSteps, func(r pack.StepRef) bool { return r.Part == u.Part && r.Step == u.Step })
			fn(b)
		}
	})
}

// said is the text of inlines in digits 0 to 9, without the names of sources.
func said(ins []lesson.Inline) string { return saidWithout(ins, "source") }

// saidWithout is the text of inlines in digits 0 to 9, without links of some schemes.
func saidWithout(ins []lesson.Inline, schemes ...string) string {
	var text strings.Builder
	var walk func([]lesson.Inline)
	walk = func(ins []lesson.Inline) {
		for _, in := range ins {
			switch {
			case in.Kind == lesson.Text || in.Kind == lesson.CodeSpan:
				text.WriteString(in.Text)
			case in.Kind == lesson.Break:
				text.WriteByte(' ')
			case in.Kind == lesson.Link && slices.Contains(schemes, in.Scheme):
				continue
			}
			walk(in.Children)
		}
	}
	walk(ins)
	return foldDigits(text.String())
}

// sentences pairs the sentences of the two, or the whole blocks when one has more.
func (b *beside) sentences(fn func(text, source string)) {
	t, s := sentencesOf(said(b.Target.Inlines)), sentencesOf(said(b.Source.Inlines))
	if len(t) != len(s) {
		fn(strings.Join(t, " "), strings.Join(s, " "))
		return
	}
	for i := range t {
		fn(t[i], s[i])
	}
}

// sentencesOf takes a text apart, without empty ones.
func sentencesOf(text string) []string {
	var out []string
	for _, s := range sentenceEnd.Split(text, -1) {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}
