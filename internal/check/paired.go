package check

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// A beside is one block of a translation and the block that it was made from.
type beside struct {
	translate.Pair
	module   *pack.Module
	l, src   *lesson.Lesson
	critical bool        // a caution, or a step that must never be missed
	text     string      // what the translation says, as said leaves it
	source   string      // what its source says
	phrases  [][2]string // sentence by sentence, or whole when one of the two has more
}

// where is the place of the block, with its source beside it.
func (b *beside) where() Where {
	return In(b.l, b.Target.Span).Beside(b.src.File, b.Source.Span, "in the source language")
}

// besides calls fn for every block of every translation that has a source.
func (p *Pass) besides(fn func(beside)) {
	if p.sides == nil {
		p.eachBeside(func(b beside) { p.sides = append(p.sides, b) })
	}
	for _, b := range p.sides {
		fn(b)
	}
}

func (p *Pass) eachBeside(fn func(beside)) {
	p.pairings(func(pairing *translate.Pairing, l, src *lesson.Lesson) {
		m := pairing.Module
		for _, pair := range pairing.Pairs {
			if pair.Target == nil || pair.Untranslated() && m.Record.Translations[l.Lang].State == "initial" {
				continue // translation-structure says so; or the work has not begun
			}
			b := beside{Pair: pair, module: m, l: l, src: src}
			u := pair.Source
			b.critical = u.Role == lesson.Caution || u.Role == lesson.Steps && u.Kind != translate.Alt &&
				slices.ContainsFunc(m.Record.CriticalSteps, func(r pack.StepRef) bool { return r.Part == u.Part && r.Step == u.Step })
			b.text, b.source = said(pair.Target.Inlines), said(pair.Source.Inlines)
			b.phrases = phrases(b.text, b.source)
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

// phrases pairs the sentences of two texts, or the whole texts when one has more.
func phrases(text, source string) [][2]string {
	t, s := sentencesOf(text), sentencesOf(source)
	if len(t) != len(s) {
		return [][2]string{{strings.Join(t, " "), strings.Join(s, " ")}}
	}
	out := make([][2]string, len(t))
	for i := range t {
		out[i] = [2]string{t[i], s[i]}
	}
	return out
}

// sentencesOf takes a text apart, without empty ones.
func sentencesOf(text string) []string {
	var out []string
	add := func(s string) {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	start := 0
	for _, end := range sentenceEnds(text) {
		add(text[start:end[0]])
		start = end[1]
	}
	add(text[start:])
	return out
}

// sentenceEnds returns where the mark that ends each sentence begins, and where the next
// sentence does. A full stop within a number or a word ends nothing. The others are the
// danda of Devanagari and Bengali, and the marks of Arabic, Urdu and Ethiopic.
func sentenceEnds(text string) [][2]int {
	var out [][2]int
	for i := 0; i < len(text); {
		c, n := utf8.DecodeRuneInString(text[i:])
		if !strings.ContainsRune(".?!।؟۔።፧", c) {
			i += n
			continue
		}
		end := len(text) - len(strings.TrimLeft(text[i+n:], "\"')”’»"))
		next := len(text) - len(strings.TrimLeftFunc(text[end:], unicode.IsSpace))
		if next > end || end == len(text) {
			out = append(out, [2]int{i, next})
			i = next
			continue
		}
		i += n
	}
	return out
}
