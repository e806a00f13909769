package check

import (
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

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
		here, there := p.words(l.Lang), p.words(p.Pack.Source)
		if src == nil || l == src || len(here.turn) == 0 || len(there.turn) == 0 {
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
				g.turn, g.without = here.negations(a[k])
				g.turnOfSource, g.othersOfSource = there.negations(b[k])
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
