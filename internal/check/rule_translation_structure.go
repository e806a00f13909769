package check

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// Words are not compared, nor how many paragraphs say them. Links are compared within
// one step, question or list item, in any order: languages order a sentence differently.
var translationStructure = &Rule{
	Name:   "translation-structure",
	Title:  "A translation is not built like the lesson it was made from",
	Why:    "A step, a number or a right answer that one language lacks is a different lesson, and a critical step is marked by its number.",
	Level:  finding.Error,
	Needs:  Joined,
	Before: "en.md: 1. Wash your hands. 2. Sit down.\nhi.md: 1. हाथ धोएँ।\n",
	After:  "en.md: 1. Wash your hands. 2. Sit down.\nhi.md: 1. हाथ धोएँ। 2. बैठ जाएँ।\n",
	Run: func(p *Pass) {
		p.Lessons(func(m *pack.Module, l *lesson.Lesson) {
			src := m.Lessons[p.Pack.Source]
			if src == nil || l == src {
				return
			}
			c := comparison{p, l, src}
			if c.parts() {
				c.blocks(l.Lead, src.Lead, l.Span, src.Span)
				for i := range l.Parts {
					c.part(&l.Parts[i], &src.Parts[i])
				}
			}
		})
	},
}

// A comparison is of a translation with its source.
type comparison struct {
	pass   *Pass
	l, src *lesson.Lesson
}

func (c comparison) report(at, src source.Span, mend, what string, args ...any) {
	where := In(c.l, at).Beside(c.src.File, src, "in the source language")
	c.pass.Report(where, fmt.Sprintf(what, args...), mend)
}

// parts compares the roles of parts and reports only the first difference, since
// all after it would differ, too.
func (c comparison) parts() bool {
	for i := range max(len(c.l.Parts), len(c.src.Parts)) {
		switch {
		case i >= len(c.l.Parts):
			s := c.src.Parts[i]
			c.report(c.l.Span, s.Span, "translate it, too", "the part %q (%s) is missing here", lesson.Plain(s.Heading), kindOf(s))
		case i >= len(c.src.Parts):
			t := c.l.Parts[i]
			c.report(t.Span, c.src.Span, "add it to the source language first, or take it out here", "the source language has no such part (%s)", kindOf(t))
		case c.l.Parts[i].Role != c.src.Parts[i].Role:
			t, s := c.l.Parts[i], c.src.Parts[i]
			c.report(t.Span, s.Span, "keep the parts and their order as in the source language",
				"part %d is %s here, and %s in the source language", i+1, kindOf(t), kindOf(s))
		default:
			continue
		}
		return false
	}
	return true
}

func kindOf(p lesson.Part) string {
	if p.Role == lesson.Prose {
		return "of no kind"
	}
	return string(p.Role)
}

func (c comparison) part(t, s *lesson.Part) {
	c.links([]lesson.Block{{Inlines: t.Heading}}, []lesson.Block{{Inlines: s.Heading}}, t.Span, s.Span)
	if !c.blocks(t.Blocks, s.Blocks, t.Span, s.Span) || t.Role != lesson.Quiz {
		return
	}
	tq, sq := t.Questions(), s.Questions()
	for i := range min(len(tq), len(sq)) {
		c.question(&tq[i], &sq[i])
	}
}

func (c comparison) question(t, s *lesson.Question) {
	if len(t.Options) != len(s.Options) {
		c.report(t.Span, s.Span, "give the same answers in the same order",
			"the question has %s to choose from here, and %d in the source language", count(len(t.Options), "answer"), len(s.Options))
		return
	}
	for i := range t.Options {
		if t.Options[i].Right != s.Options[i].Right {
			c.report(t.Options[i].Span, s.Options[i].Span, "find out which of the two is right, and mark that answer in both",
				"this answer is %s here, and %s in the source language", rightness(t.Options[i]), rightness(s.Options[i]))
			return
		}
	}
	if hasWords(s.Reason) && !hasWords(t.Reason) {
		c.report(t.Span, s.Span, "translate the reason, too", "the reason for the answer is missing here")
	}
}

func rightness(o lesson.Option) string {
	if o.Right {
		return "right"
	}
	return "wrong"
}

// blocks compares lists item by item, and the rest as one. It reports false when
// the items could not be paired.
func (c comparison) blocks(t, s []lesson.Block, at, src source.Span) bool {
	for _, ordered := range []bool{true, false} {
		ti, si := (&lesson.Part{Blocks: t}).Items(ordered), (&lesson.Part{Blocks: s}).Items(ordered)
		if len(ti) != len(si) {
			what := "list item"
			if ordered {
				what = "numbered item"
			}
			c.report(at, src, "translate each item as one item", "the part has %s here, and %d in the source language", count(len(ti), what), len(si))
			return false
		}
		for i := range ti {
			c.links(ti[i].Blocks, si[i].Blocks, ti[i].Span, si[i].Span)
		}
	}
	isList := func(b lesson.Block) bool { return b.Kind == lesson.List }
	c.links(slices.DeleteFunc(slices.Clone(t), isList), slices.DeleteFunc(slices.Clone(s), isList), at, src)
	return true
}

// links compares the pictures, and the links that state or cite.
func (c comparison) links(t, s []lesson.Block, at, src source.Span) {
	tf, tl := carried(t)
	sf, sl := carried(s)
	if lacking, extra := differ(tf, sf), differ(sf, tf); len(lacking)+len(extra) > 0 {
		c.report(at, src, "show the same pictures", "the pictures differ from the source language: %s", difference(lacking, extra))
	} else if !slices.Equal(tf, sf) {
		c.report(at, src, "keep their order", "the pictures stand in another order than in the source language")
	}
	if lacking, extra := differ(tl, sl), differ(sl, tl); len(lacking)+len(extra) > 0 {
		c.report(at, src, "state the same numbers, sources and contacts, each as a link",
			"the links differ from the source language: %s", difference(lacking, extra))
	}
}

// carried lists the pictures and the links in blocks that every language must carry.
func carried(bs []lesson.Block) (figures, links []string) {
	l := &lesson.Lesson{Lead: bs}
	l.Walk(func(b *lesson.Block) {
		if b.Kind == lesson.Figure {
			figures = append(figures, b.Source)
		}
	})
	l.WalkInlines(func(in *lesson.Inline) {
		if in.Kind == lesson.Link && slices.Contains([]string{"number", "source", "facility"}, in.Scheme) {
			links = append(links, in.Scheme+":"+in.Target)
		}
	})
	return figures, links
}

// differ lists what is in want more often than in have.
func differ(have, want []string) []string {
	count := map[string]int{}
	for _, h := range have {
		count[h]++
	}
	var out []string
	for _, w := range want {
		if count[w]--; count[w] < 0 {
			out = append(out, w)
		}
	}
	return out
}

func difference(lacking, extra []string) string {
	var out []string
	if len(lacking) > 0 {
		out = append(out, strings.Join(lacking, ", ")+" is missing here")
	}
	if len(extra) > 0 {
		out = append(out, strings.Join(extra, ", ")+" stands only here")
	}
	return strings.Join(out, "; ")
}
