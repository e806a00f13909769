// Package linebreak says where a line of text may or must end (the Unicode
// Line Breaking Algorithm, UAX #14) and where one user-perceived character
// ends and the next begins (grapheme clusters, UAX #29), as rune offsets.
// Both follow Unicode 15.0 through github.com/rivo/uniseg; this package mends
// two faults of it (see mend.go).
//
// Text is the characters of one paragraph in logical order. The package knows
// nothing of widths, fonts or direction and does not choose among the
// opportunities. Words of Thai, Lao, Khmer and Burmese, written without
// spaces, are not told apart: such text breaks only at spaces and at
// ZERO WIDTH SPACE (U+200B). A number stays with its unit if NO-BREAK SPACE
// (U+00A0) stands between them. Hyphenation is not done here, but SOFT HYPHEN
// (U+00AD) gives an opportunity like any other.
//
// Known gaps, all in sequences that real text hardly has, are listed and kept
// under test in gaps_test.go; each costs or adds one opportunity.
package linebreak

import (
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// Break is a place where a line may end, or must.
type Break struct {
	At   int  // the line holds text up to At; the next one starts with text[At]
	Must bool // after a line separator, and at the end of the text
}

// Opportunities lists the breaks of text in order. The last is always the end
// of the text, where Must is true. There is none at 0, so an empty text has
// no breaks at all.
//
// Spaces and line separators belong to the line that they end. A separator
// that is the last character of the text gives one break, not two: whether an
// empty line follows is for the caller to say.
//
// An opportunity can lie within a grapheme cluster only where a mark has no
// letter to stand on, for example after a space.
func Opportunities(text []rune) []Break {
	var breaks []Break
	at := 0
	lines := newSegments(text)
	for {
		segment, must, ok := lines.next()
		if !ok {
			return breaks
		}
		at += utf8.RuneCountInString(segment)
		breaks = append(breaks, Break{At: at, Must: must})
	}
}

// Clusters lists the offsets at which the grapheme clusters of text end, in
// order. The last is the end of the text; an empty text has none.
//
// In this version of Unicode a conjunct of an Indic script is a cluster for
// each consonant. Split text for drawing by what the shaper returns instead.
func Clusters(text []rune) []int {
	var ends []int
	at, state := 0, -1
	for rest := string(text); rest != ""; {
		var cluster string
		cluster, rest, _, state = uniseg.FirstGraphemeClusterInString(rest, state)
		at += utf8.RuneCountInString(cluster)
		ends = append(ends, at)
	}
	return ends
}
