package shape

import (
	"slices"
	"testing"
)

// latinLeading is the distance of baselines in Latin text, in thousandths of the
// size. Package typeset sets text so.
const latinLeading = 1360

// TestLeading lays every word of a list above every other, at the leading of the
// script: fewer than one pair in a thousand may come so close that their boxes touch.
func TestLeading(t *testing.T) {
	lib := library(t)
	for _, w := range writings {
		s, leading := w.shaper(t, lib)
		for _, bold := range []bool{false, true} {
			var above, below []float64
			for _, word := range w.listed(t) {
				a, b := extent(s.Shape([]Run{{Text: word, Bold: bold}}, w.base))
				above, below = append(above, a), append(below, b)
			}
			slices.Sort(above)
			touching := 0
			for _, b := range below {
				at, _ := slices.BinarySearch(above, leading*latinLeading-b)
				touching += len(above) - at
			}
			share := 1000 * float64(touching) / float64(len(above)*len(below))
			t.Logf("%s, bold %v: up to %.0f above and %.0f below the baseline, leading %.0f, %.2f per mille touch",
				w.lang, bold, slices.Max(above), slices.Max(below), leading*latinLeading, share)
			if share >= 1 {
				t.Errorf("%s, bold %v: %.2f of 1000 pairs of lines touch; %s needs more leading", w.lang, bold, share, w.script)
			}
		}
	}
}

// extent returns how far a text rises above the baseline and hangs below it, in
// thousandths of the nominal size.
func extent(t *Text) (above, below float64) {
	for _, w := range t.Words {
		unit := 1000 * w.Scale / float64(w.Face.UnitsPerEm)
		for _, c := range w.Clusters {
			for _, g := range c.Glyphs {
				if _, y0, _, y1, ok := w.Face.Bounds(g.ID); ok {
					above = max(above, unit*float64(y1+g.Y))
					below = max(below, -unit*float64(y0+g.Y))
				}
			}
		}
	}
	return above, below
}
