// Package bidi resolves and applies embedding levels: the Unicode
// Bidirectional Algorithm, UAX #9, for text that is laid out line by line.
//
// Start at [Resolve], which takes one paragraph. After line breaking, ask
// [Paragraph.Line] for the levels of each line, cut the line where the level
// changes, shape the pieces, and put them in the order [Reorder] gives.
// An odd level reads from right to left.
//
// The rules live in files in the order in which they run: explicit.go
// (P2 to X9), sequence.go (X10), weak.go (W1 to W7), bracket.go (N0),
// neutral.go (N1 to I2), line.go (L1, L2). Rule numbers stand beside the
// branches. Character classes come from golang.org/x/text/unicode/bidi; only
// its class table is used, since its ordering ignores a forced base direction
// and throws levels away.
//
// Characters which rule X9 removes (embeddings, overrides, their ends, and
// class BN such as ZERO WIDTH JOINER and SOFT HYPHEN) keep their place: no
// rule sees them, and afterwards each takes the level of the character before
// it in the paragraph, or the base level if there is none. So they never cut
// a run that would otherwise be whole. A joiner that stands between text of
// two directions goes with the text before it.
//
// The package does not split text into paragraphs (P1), find line ends
// (package linebreak), place combining marks (L3) or swap mirrored glyphs
// (L4): the shaper does the last two.
package bidi

// Direction is how the base level of a paragraph is chosen.
type Direction int

const (
	LeftToRight Direction = iota // base level 0
	RightToLeft                  // base level 1
	Auto                         // the first strong character decides (P2, P3); left to right if there is none
)

// Level is an embedding level. Even levels read from left to right, odd ones
// from right to left. Resolve gives 0 to 126: maxDepth and one more from
// rule I1 or I2.
type Level uint8

// direction is the class of strong text at this level (X10).
func (l Level) direction() class {
	if l&1 == 1 {
		return classR
	}
	return classL
}

// Paragraph holds the levels of one paragraph before rule L1, and what L1
// needs. It does not change once made.
type Paragraph struct {
	base   Level
	levels []Level
	trims  []trim // nil when L1 would change nothing
}

// Resolve works out the level of each character of one paragraph (P2 to I2).
//
// A paragraph separator belongs to the paragraph that it ends and so stands
// last. If more text follows one, that text is resolved afresh with the same
// base, which under Auto is the one chosen from the text up to the first
// separator.
func Resolve(text []rune, base Direction) Paragraph {
	p := Paragraph{levels: make([]Level, len(text))}
	if base != RightToLeft && !turns(text) {
		return p // every level is 0
	}
	classes := make([]class, len(text))
	p.trims = make([]trim, len(text))
	for i, r := range text {
		classes[i] = classOf(r)
		p.trims[i] = trimOf(classes[i])
	}

	var r resolver
	for start := 0; start < len(text); {
		end := start + 1
		for end < len(text) && classes[end-1] != classB {
			end++
		}
		if start == 0 {
			p.base = baseLevel(classes[:end], base)
		}
		r.paragraph(text[start:end], classes[start:end], p.levels[start:end], p.base)
		start = end
	}
	if len(text) == 0 && base == RightToLeft {
		p.base = 1
	}
	return p
}

// Base is the paragraph embedding level: 0 for left to right, 1 for right to left.
func (p Paragraph) Base() Level { return p.base }

// resolver is the working state for one paragraph. Its slices are reused when
// a text holds several.
type resolver struct {
	text    []rune
	classes []class // as rules X5a to X6a leave them
	levels  []Level
	base    Level
	runs    []levelRun
	seq     sequence
}

func (r *resolver) paragraph(text []rune, classes []class, levels []Level, base Level) {
	r.text, r.classes, r.levels, r.base = text, classes, levels, base
	r.explicit()
	for first := range r.runs {
		if r.runs[first].continues {
			continue // reached from an earlier run
		}
		r.gather(first)
		r.seq.weak()
		r.brackets()
		r.seq.neutral()
		r.implicit()
	}
	// X9: what no rule saw follows its neighbour.
	before := base
	for i, c := range classes {
		if c.in(removed) {
			levels[i] = before
		}
		before = levels[i]
	}
}
