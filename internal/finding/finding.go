// Package finding holds what the checker says: one Finding for each thing that is
// wrong, with its place, why it matters and how to mend it, and the printers for
// a list of them. It decides nothing; rules do.
package finding

import (
	"cmp"
	"slices"

	"wardleaf/internal/source"
)

// A Level says how grave a finding is. The words are SARIF 2.1.0's.
type Level int

// Levels, mildest first.
const (
	Note Level = iota
	Warning
	Error
)

func (l Level) String() string { return [...]string{"note", "warning", "error"}[l] }

// A Place is a span of a file. A File with no bytes stands for a file or folder
// that could not be read; its place prints without line and column.
type Place struct {
	File *source.File
	Span source.Span
}

// A Related place helps to understand a finding, such as the sentence in the
// source language that a translation was made from.
type Related struct {
	Place Place
	Text  string
}

// A Finding is one thing that is wrong at one place.
type Finding struct {
	Rule  string // name of the rule, in words: "caution-missing"
	Level Level
	Place Place
	What  string // what is wrong here
	Why   string // why it matters to the reader of the printed page
	Mend  string // what to do about it
	// Lang and Module say which outputs the finding stops; empty means all of them.
	Lang, Module string
	Related      []Related
	// Edits mend it, all of them together, in the file of its place. There are none when
	// a person has to decide.
	Edits []Edit
	// Silenced is the reason for which pack.yaml keeps it out of the way; empty when it does not.
	Silenced string
}

// An Edit puts a text in the place of a span. Texts are put in by their first byte, so
// the edits of one finding do not overlap.
type Edit struct {
	Span source.Span
	Text string
}

// Sort puts findings into their one order: file, place, level (gravest first), rule, text.
func Sort(fs []Finding) {
	slices.SortStableFunc(fs, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.path(), b.path()),
			cmp.Compare(a.Place.Span.Start, b.Place.Span.Start),
			cmp.Compare(b.Level, a.Level),
			cmp.Compare(a.Rule, b.Rule),
			cmp.Compare(a.What, b.What),
		)
	})
}

func (f Finding) path() string {
	if f.Place.File == nil {
		return ""
	}
	return f.Place.File.Path
}

// Count returns how many findings are at a level, without those that are silenced.
func Count(fs []Finding, l Level) int {
	n := 0
	for _, f := range fs {
		if f.Level == l && f.Silenced == "" {
			n++
		}
	}
	return n
}
