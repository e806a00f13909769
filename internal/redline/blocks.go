package redline

import (
	"crypto/sha256"
	"fmt"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// A block is the smallest part of a lesson that is compared as one: a heading, a
// paragraph, a row of a table, a picture.
type block struct {
	kind  string // title, part, heading, words, row, figure
	group string // what it stands in: step, item, question, option, reason, or ""
	part  int    // from 1; 0 before the first
	place Place
	path  string // its place, the same in every language; unique in the lesson
	text  string // its words

	first           bool // of its step or answer
	critical, right bool
	links           []string // "number:daily-gain", in order
	strong          string   // the words in bold type
	picture         string   // what a figure looks like
	source          string   // of a figure

	bag    map[string]int // its words and how often each stands in it; nil until counted
	length int            // how many words
}

// key is the same for blocks that say the same in the same way.
func (b *block) key() string { return b.kind + "\x00" + b.group + "\x00" + b.text }

// taker takes a lesson apart.
type taker struct {
	p     *pack.Pack
	m     *pack.Module
	now   block // without words: where the next block stands
	count map[string]int
	steps int // steps parts so far
	out   []block
}

func blocks(p *pack.Pack, m *pack.Module, l *lesson.Lesson) []block {
	t := taker{p: p, m: m, count: map[string]int{}}
	t.now.place.Title = true
	t.words("title", l.Title)
	t.now.place.Title = false
	t.blocks(l.Lead)
	for i := range l.Parts {
		part := &l.Parts[i]
		t.now = block{part: i + 1, place: Place{Role: part.Role, Heading: lesson.Plain(part.Heading)}}
		t.words("part", part.Heading)
		if part.Role == lesson.Steps {
			t.steps++
		}
		items := 0
		for k := range part.Blocks {
			b := &part.Blocks[k]
			switch {
			case b.Kind == lesson.List && part.Role == lesson.Quiz && b.Ordered:
				t.questions(b)
			case b.Kind == lesson.List:
				t.items(b, &items, part.Role)
			default:
				t.block(b)
			}
		}
	}
	return t.out
}

// add keeps a block of some words where the taker stands.
func (t *taker) add(kind, text string, fill func(*block)) {
	b := t.now
	b.kind, b.text = kind, strings.Join(strings.Fields(text), " ")
	at := fmt.Sprintf("%d %s %d %d %v %s", b.part, b.group, b.place.Number, b.place.Option, b.place.Reason, kind)
	t.count[at]++
	b.path = fmt.Sprintf("%s %d", at, t.count[at])
	if fill != nil {
		fill(&b)
	}
	t.out = append(t.out, b)
}

func (t *taker) words(kind string, ins []lesson.Inline) {
	if len(ins) == 0 && kind != "part" {
		return
	}
	t.add(kind, lesson.Plain(ins), func(b *block) {
		one := lesson.Lesson{Title: ins}
		one.WalkInlines(func(in *lesson.Inline) {
			switch in.Kind {
			case lesson.Link:
				b.links = append(b.links, in.Scheme+":"+in.Target)
			case lesson.Strong:
				b.strong += lesson.Plain(in.Children) + " "
			}
		})
	})
}

func (t *taker) blocks(bs []lesson.Block) {
	for i := range bs {
		t.block(&bs[i])
	}
}

func (t *taker) block(b *lesson.Block) {
	switch b.Kind {
	case lesson.Heading:
		t.words("heading", b.Inlines)
	case lesson.Figure:
		t.add("figure", b.Alt, func(n *block) {
			n.source, n.place.Picture = b.Source, true
			if f := t.p.Figures[b.Source]; f != nil {
				n.picture = fmt.Sprintf("%x", sha256.Sum256(f.File.Bytes))
			}
		})
	case lesson.Table:
		for _, row := range b.Rows {
			var cells []lesson.Inline
			for i, c := range row.Cells {
				if i > 0 {
					cells = append(cells, lesson.Inline{Kind: lesson.Text, Text: " | "})
				}
				cells = append(cells, c...)
			}
			t.words("row", cells)
		}
	default:
		t.words("words", b.Inlines)
		t.blocks(b.Blocks)
		for i := range b.Items {
			t.blocks(b.Items[i].Blocks)
		}
	}
}

// items are those of one list of a part; n counts the items of the part before it.
func (t *taker) items(b *lesson.Block, n *int, role lesson.Role) {
	before := t.now
	for k := range b.Items {
		*n++
		t.now.group, t.now.place.Number = "item", *n
		if b.Ordered {
			t.now.place.Number = b.Start + k
		}
		if role == lesson.Steps && b.Ordered {
			t.now.group = "step"
			for _, r := range t.m.Record.CriticalSteps {
				if r.Part == t.steps && r.Step == b.Start+k {
					t.now.critical = true
				}
			}
		}
		t.item(b.Items[k].Blocks)
		t.now = before
	}
}

// item keeps the blocks of one step or answer.
func (t *taker) item(bs []lesson.Block) {
	n := len(t.out)
	t.blocks(bs)
	if n < len(t.out) {
		t.out[n].first = true
	}
}

func (t *taker) questions(b *lesson.Block) {
	before := t.now
	one := lesson.Part{Blocks: []lesson.Block{*b}}
	for k, q := range one.Questions() {
		t.now.group, t.now.place.Number = "question", b.Start+k
		t.blocks(q.Stem)
		for i, o := range q.Options {
			t.now.group, t.now.place.Option, t.now.right = "option", i+1, o.Right
			t.item(o.Blocks)
		}
		t.now.group, t.now.place.Option, t.now.right, t.now.place.Reason = "reason", 0, false, true
		t.blocks(q.Reason)
		t.now = before
	}
}
