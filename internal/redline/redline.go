// Package redline says what changed between two states of a pack, for a clinician who
// reviews it: per module and language, block by block, with the words that were struck
// and added, and first of all what could hurt somebody when it is wrong.
//
// Compare makes a Redline of two packs; View puts it into the words of a language for
// printers; Text is the printer for a terminal. It is not a tool for merging, it reads
// no files, and it does not judge: every change is for a person to read.
//
// Start at Compare. blocks.go takes a lesson apart, pair.go finds which old block became
// which new one, words.go and edit.go find the words that differ, grave.go says what a
// change touches, beside.go looks at the other languages, records.go compares the rest.
package redline

import (
	"slices"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// A Side is a pack as it was read.
type Side struct {
	Pack *pack.Pack
	// Unread holds the paths of files in which something kept the reader from using
	// them, so that what is missing because of it does not count as taken out.
	Unread map[string]bool
}

// Negations counts the words of a text that say "not" or take something out, in a
// language; known is false when such words are not listed for it.
type Negations func(lang, text string) (n int, known bool)

// A Redline is what changed between two packs. Changes are numbered from 1 in the order
// in which they stand here.
type Redline struct {
	Source  string   // the source language
	Pack    []Change // pack.yaml, facility.yaml, numbers.yaml, sources.yaml, terms.yaml
	Modules []Module // that changed, in the order of the new pack, those taken out last
}

// A Module is what changed in one lesson.
type Module struct {
	ID      string
	Titles  pack.Localized
	Record  []Change // module.yaml
	Lessons []Lesson // that changed, in the order of the pack's languages
}

// A Lesson is what changed in one language of a module.
type Lesson struct {
	Lang    string
	Changes []Change // in reading order; what was taken out stands where it was
	// Unlisted: words that say "not" are not known for the language, so that a lost one
	// is not called out.
	Unlisted bool
}

// A Kind says what happened to a block.
type Kind string

// Kinds.
const (
	New     Kind = "added"
	Gone    Kind = "removed"
	Changed Kind = "changed"
	Moved   Kind = "moved" // and perhaps changed, too
	Unread  Kind = "unread"
)

// A Topic is what a change touches.
type Topic string

// Topics, gravest first.
const (
	Whole        Topic = "whole" // a lesson is new, gone or could not be read
	Number       Topic = "number"
	Negation     Topic = "negation"
	Caution      Topic = "caution"
	CriticalStep Topic = "critical-step"
	RightAnswer  Topic = "right-answer"
	WarningSign  Topic = "warning-sign"

	Role     Topic = "part" // what a part is for
	Link     Topic = "link"
	Figure   Topic = "figure"
	Emphasis Topic = "emphasis"
	Record   Topic = "record"
)

var grave = []Topic{Whole, Number, Negation, Caution, CriticalStep, RightAnswer, WarningSign}

// A Change is one block, or one value of a record, that is not as it was.
type Change struct {
	Number int
	Kind   Kind
	File   string // from the root of the pack
	Place  Place  // in the new pack, or in the old one when it is gone
	From   Place  // where a moved block stood
	Words  []Run
	Marks  []Mark
	Topics []Topic
	Used   []string // numbers.yaml: modules that state the number
	// Unfollowed lists the languages whose own block did not change with a block of the
	// source language; Alone says that a block changed only in a translation.
	Unfollowed []string
	Alone      bool
}

// A Place is where a block stands in its lesson or a value in its file. The zero Place
// is before the first part of a lesson, or the file as a whole.
type Place struct {
	Title   bool        // of the lesson
	Heading string      // of the part
	Role    lesson.Role // of the part
	Number  int         // of the step, item or question; 0 for other blocks
	Option  int         // of the question, from 1; 0 for other blocks
	Reason  bool        // for the right answer of the question
	Picture bool
	Key     string // of a value in a file
}

// A Mark is something about a block that changed beside its words. Was and Now are
// empty for no and Yes for yes where the topic is one that holds or does not.
type Mark struct {
	Topic    Topic
	Was, Now string
}

// Yes is the value of a mark that holds.
const Yes = "yes"

// whole reports whether a change is of a file as a whole.
func (c *Change) whole() bool { return slices.Contains(c.Topics, Whole) }

// Grave reports whether a change is one to be read first.
func (c *Change) Grave() bool {
	return slices.ContainsFunc(c.Topics, func(t Topic) bool { return slices.Contains(grave, t) })
}

// Empty reports whether nothing changed.
func (r *Redline) Empty() bool { return len(r.Pack) == 0 && len(r.Modules) == 0 }

// Compare finds what changed from one pack to another.
func Compare(old, now Side, not Negations) *Redline {
	r := &Redline{Source: now.Pack.Source}
	w := &work{old: old, now: now, not: not}
	r.Pack = w.shared()
	var ids []string
	for _, m := range slices.Concat(now.Pack.Modules, old.Pack.Modules) {
		if !slices.Contains(ids, m.ID) {
			ids = append(ids, m.ID)
		}
	}
	var langs []string
	for _, l := range slices.Concat(now.Pack.Languages, old.Pack.Languages) {
		if !slices.Contains(langs, l) {
			langs = append(langs, l)
		}
	}
	for _, id := range ids {
		if m := w.module(id, langs); len(m.Record)+len(m.Lessons) > 0 {
			r.Modules = append(r.Modules, m)
		}
	}
	n := 0
	r.each(func(_ *Module, _ string, c *Change) {
		n++
		c.Number = n
		slices.SortStableFunc(c.Topics, func(a, b Topic) int { return slices.Index(topics, a) - slices.Index(topics, b) })
		c.Topics = slices.Compact(c.Topics)
		if slices.Contains(c.Topics, Number) && (c.Kind == Changed || c.Kind == Moved) {
			// A digit is hard to read where it is struck through.
			if was, now := numerals(Was(c.Words)), numerals(Now(c.Words)); !slices.Equal(was, now) {
				lost, got := differ(was, now), differ(now, was)
				if len(lost)+len(got) == 0 { // the same in another order
					lost, got = was, now
				}
				c.Marks = append(c.Marks, Mark{Number, strings.Join(lost, ", "), strings.Join(got, ", ")})
			}
		}
	})
	return r
}

var topics = append(slices.Clone(grave), Role, Link, Figure, Emphasis, Record)

// each calls fn for every change in order; module and language are empty where it has none.
func (r *Redline) each(fn func(m *Module, lang string, c *Change)) {
	for i := range r.Pack {
		fn(nil, "", &r.Pack[i])
	}
	for i := range r.Modules {
		m := &r.Modules[i]
		for k := range m.Record {
			fn(m, "", &m.Record[k])
		}
		for k := range m.Lessons {
			for j := range m.Lessons[k].Changes {
				fn(m, m.Lessons[k].Lang, &m.Lessons[k].Changes[j])
			}
		}
	}
}

// work is one comparison.
type work struct {
	old, now Side
	not      Negations
}

func find(p *pack.Pack, id string) *pack.Module {
	for _, m := range p.Modules {
		if m.ID == id {
			return m
		}
	}
	return &pack.Module{ID: id}
}

func (w *work) module(id string, langs []string) Module {
	a, b := find(w.old.Pack, id), find(w.now.Pack, id)
	out := Module{ID: id, Titles: pack.Localized{}}
	for _, lang := range langs {
		if b.Lessons[lang] != nil || b.Lessons == nil && a.Lessons[lang] != nil {
			m := b
			if b.Lessons == nil {
				m = a
			}
			out.Titles[lang] = m.Title(lang)
		}
	}
	out.Record = w.record(a, b)
	var pairs []*pairing
	for _, lang := range langs {
		p := w.lesson(a, b, lang)
		if p == nil {
			continue
		}
		pairs = append(pairs, p)
	}
	beside(pairs, w.now.Pack.Source)
	for _, p := range pairs {
		if len(p.changes) == 0 {
			continue
		}
		_, known := w.not(p.lang, "")
		out.Lessons = append(out.Lessons, Lesson{Lang: p.lang, Changes: p.list(), Unlisted: !known})
	}
	return out
}

// lesson pairs the blocks of a module in a language; nil when neither side has it.
func (w *work) lesson(a, b *pack.Module, lang string) *pairing {
	was, is := a.Lessons[lang], b.Lessons[lang]
	file := b.ID + "/" + lang + ".md"
	p := &pairing{lang: lang}
	one := func(k Kind) *pairing {
		p.changes = []found{{Change: Change{Kind: k, File: file, Topics: []Topic{Whole}}}}
		return p
	}
	switch {
	case was == nil && w.old.Unread[file], is == nil && w.now.Unread[file]:
		return one(Unread)
	case was == nil && is == nil:
		return nil
	case was == nil:
		return one(New)
	case is == nil:
		return one(Gone)
	}
	p.old, p.now = blocks(w.old.Pack, a, was), blocks(w.now.Pack, b, is)
	p.pair()
	w.changes(p, file)
	return p
}
