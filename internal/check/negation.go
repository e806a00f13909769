package check

import (
	"slices"
	"strings"
	"unicode"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// Negations are the words that turn a sentence round, and those that only take
// something out of it, by language, as foldUnit leaves them. A word that often means
// something else is left out, as Arabic ما is.
type negations struct{ turn, without []string }

var negationWords = map[string]negations{
	"en": {
		folded("not", "never", "no", "nor", "neither", "none", "nobody", "nothing", "cannot"),
		folded("without", "unless"),
	},
	"hi": {folded("न", "ना", "नहीं", "मत"), folded("बिना", "बगैर", "बग़ैर", "सिवा", "सिवाय")},
	"ar": {
		folded("لا", "ولا", "فلا", "ألا", "وألا", "لئلا", "لم", "ولم", "فلم", "لن", "ولن", "فلن",
			"ليس", "وليس", "فليس", "ليست", "وليست", "فليست", "ليسوا", "لستم", "غير", "وغير", "ممنوع", "تجنبوا"),
		folded("دون", "بدون", "ودون", "وبدون", "بلا", "وبلا", "إلا"),
	},
}

// count counts the words of a text that turn it round, and the others.
func (n negations) count(text string) (turn, without int) {
	text = strings.ReplaceAll(foldUnit(text), "’", "'")
	text = strings.ReplaceAll(text, "या नहीं", "") // "or not": only a question
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return r != '\'' && !unicode.In(r, unicode.L, unicode.M) }) {
		switch {
		case slices.Contains(n.turn, w), strings.HasSuffix(w, "n't"):
			turn++
		case slices.Contains(n.without, w):
			without++
		}
	}
	return turn, without
}

// A gravePair is a sentence that must never be misread, or a whole item, and its
// source, with the number of negations in each.
type gravePair struct {
	where                        Where
	source                       string
	turn, without                int
	turnOfSource, othersOfSource int
}

// gravePairs calls fn for the cautions and the critical steps of every translation
// that has as many as its source, in languages whose negations are listed: sentence
// by sentence, or as whole items when one has more sentences than the other.
func (p *Pass) gravePairs(fn func(gravePair)) {
	p.Lessons(func(m *pack.Module, l *lesson.Lesson) {
		src := m.Lessons[p.Pack.Source]
		here, known := negationWords[baseLanguage(l.Lang)]
		there, sourceKnown := negationWords[baseLanguage(p.Pack.Source)]
		if src == nil || l == src || !known || !sourceKnown {
			return
		}
		at, from := graveItems(m, l), graveItems(m, src)
		if len(at) != len(from) {
			return // translation-structure says so
		}
		for i := range at {
			g := gravePair{where: In(l, at[i].Span).Beside(src.File, from[i].Span, "in the source language")}
			a, b := sentences(at[i]), sentences(from[i])
			if len(a) != len(b) {
				a, b = []string{strings.Join(a, " ")}, []string{strings.Join(b, " ")}
			}
			for k := range a {
				g.source = b[k]
				g.turn, g.without = here.count(a[k])
				g.turnOfSource, g.othersOfSource = there.count(b[k])
				fn(g)
			}
		}
	})
}

// sentences takes the text of an item apart, without empty ones.
func sentences(it lesson.Item) []string {
	var out []string
	for _, b := range it.Blocks {
		for _, s := range sentenceEnd.Split(lesson.Plain(b.Inlines), -1) {
			if s = strings.TrimSpace(s); s != "" {
				out = append(out, s)
			}
		}
	}
	return out
}

func baseLanguage(tag string) string {
	base, _, _ := strings.Cut(tag, "-")
	return base
}

func graveItems(m *pack.Module, l *lesson.Lesson) []lesson.Item {
	var out []lesson.Item
	var steps [][]lesson.Item
	for i := range l.Parts {
		switch l.Parts[i].Role {
		case lesson.Caution:
			out = append(out, l.Parts[i].Items(false)...)
		case lesson.Steps:
			steps = append(steps, l.Parts[i].Items(true))
		}
	}
	for _, r := range m.Record.CriticalSteps {
		if r.Part >= 1 && r.Part <= len(steps) && r.Step >= 1 && r.Step <= len(steps[r.Part-1]) {
			out = append(out, steps[r.Part-1][r.Step-1])
		}
	}
	return out
}

// Negations counts the words of a text that turn it round or take something out of it,
// in a language; known is false when such words are not listed for the language.
func Negations(lang, text string) (n int, known bool) {
	words, known := negationWords[baseLanguage(lang)]
	turn, without := words.count(text)
	return turn + without, known
}
