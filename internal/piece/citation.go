package piece

import (
	"strings"

	"wardleaf/internal/lesson"
)

// This file takes citations out of pieces of few words. They are never lost: such a
// piece names its sources in one small line, and the booklet cites each fact.

// uncited returns blocks without the citations that stand in brackets of their own,
// such as " (WHO, 2003; WHO, 2019)". A citation within a sentence stays.
func uncited(bs []lesson.Block) []lesson.Block {
	out := append([]lesson.Block(nil), bs...)
	for i := range out {
		b := &out[i]
		b.Inlines = uncite(b.Inlines)
		b.Blocks = uncited(b.Blocks)
		b.Items = append([]lesson.Item(nil), b.Items...)
		for k := range b.Items {
			b.Items[k].Blocks = uncited(b.Items[k].Blocks)
		}
	}
	return out
}

// uncitedPart is uncited for a part.
func uncitedPart(p *lesson.Part) *lesson.Part {
	out := *p
	out.Blocks = uncited(p.Blocks)
	return &out
}

func uncite(ins []lesson.Inline) []lesson.Inline {
	var out []lesson.Inline
	for i := 0; i < len(ins); i++ {
		in := ins[i]
		end := citation(ins, i)
		if end < 0 || len(out) == 0 || out[len(out)-1].Kind != lesson.Text {
			out = append(out, in)
			continue
		}
		before := &out[len(out)-1]
		head, open := strings.CutSuffix(before.Text, "(")
		tail, closed := strings.CutPrefix(ins[end].Text, ")")
		if !open || !closed {
			out = append(out, in)
			continue
		}
		before.Text = strings.TrimRight(head, " \u00a0\u202f") + tail
		i = end
	}
	return out
}

// citation returns the index of the text that follows the source links from i on,
// which nothing but separators may part; -1 when there is no such run.
func citation(ins []lesson.Inline, i int) int {
	for i < len(ins) && isSource(ins[i]) {
		i++
		if i == len(ins) || ins[i].Kind != lesson.Text {
			return -1
		}
		if strings.Trim(ins[i].Text, " \u00a0\u202f;,؛،፤") != "" {
			if strings.HasPrefix(ins[i].Text, ")") {
				return i
			}
			return -1
		}
		i++
	}
	return -1
}

func isSource(in lesson.Inline) bool { return in.Kind == lesson.Link && in.Scheme == "source" }

// cited returns how parts cite their sources, each once, in the order of the text.
func cited(parts ...*lesson.Part) []string {
	var out []string
	seen := map[string]bool{}
	for _, p := range parts {
		if p == nil {
			continue
		}
		one := lesson.Lesson{Parts: []lesson.Part{*p}}
		one.WalkInlines(func(in *lesson.Inline) {
			if name := lesson.Plain(in.Children); isSource(*in) && !seen[name] {
				seen[name] = true
				out = append(out, name)
			}
		})
	}
	return out
}
