package bidi

// trim is what L1 does with a character.
type trim uint8

const (
	trimNone      trim = iota
	trimSpace          // back to the base level at the end of a line or before a separator
	trimSeparator      // always back to the base level
)

// trimOf looks at the class before any override. Removed characters count as
// spaces, so that one among trailing spaces does not hold the others back.
func trimOf(c class) trim {
	switch {
	case c == classB || c == classS:
		return trimSeparator
	case c == classWS || c.in(isolates|removed):
		return trimSpace
	}
	return trimNone
}

// Line returns the levels of text[start:end] as one line, with L1 applied:
// separators, and spaces before them or at the end of the line, go back to
// the base level. The slice is the caller's own. Bounds outside the paragraph
// panic as in a slice expression.
func (p Paragraph) Line(start, end int) []Level {
	levels := append([]Level(nil), p.levels[start:end]...)
	if p.trims == nil {
		return levels
	}
	trailing := true
	for i := end - 1; i >= start; i-- {
		switch p.trims[i] {
		case trimSeparator:
			trailing = true
			levels[i-start] = p.base
		case trimSpace:
			if trailing {
				levels[i-start] = p.base
			}
		default:
			trailing = false
		}
	}
	return levels
}

// Reorder gives the visual order of a line, from left to right: element i is
// the logical index of what stands at place i (L2). It serves characters and
// whole runs alike.
func Reorder(levels []Level) []int {
	order := make([]int, len(levels))
	var highest, lowestOdd Level = 0, 255
	for i, level := range levels {
		order[i] = i
		highest = max(highest, level)
		if level&1 == 1 {
			lowestOdd = min(lowestOdd, level)
		}
	}
	for level := highest; level >= lowestOdd; level-- {
		for start := 0; start < len(levels); start++ {
			end := start
			for end < len(levels) && levels[end] >= level {
				end++
			}
			reverse(order[start:end])
			start = end
		}
	}
	return order
}

func reverse(s []int) {
	for i, j := 0, len(s)-1; i < j; i, j = i+1, j-1 {
		s[i], s[j] = s[j], s[i]
	}
}
