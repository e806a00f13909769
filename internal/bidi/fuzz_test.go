package bidi

import (
	"slices"
	"testing"
)

// FuzzResolve checks laws that hold for any text, base and line.
func FuzzResolve(f *testing.F) {
	for _, s := range []string{
		"", "weight 1,500 g", "\u05D0\u05D1 (kmc) 36\u201337", "\u0627\u0644\u0648\u0632\u0646 12-13 \u0661\u0662",
		"\u2068\u05D0\u2069\u202E(\u202C[\u2067)]\u2069", "\u202B\u0301\u200D\t a\u2029\u05D0", "\xff\xfe",
	} {
		for base := range 3 {
			f.Add(s, uint8(base), uint8(3), uint8(9))
		}
	}
	f.Fuzz(func(t *testing.T, s string, direction, from, to uint8) {
		text := []rune(s)
		base := Direction(direction % 3)
		p := Resolve(text, base)
		if p.Base() > 1 || base != Auto && p.Base() != Level(base) {
			t.Fatalf("base %d for direction %d", p.Base(), base)
		}
		if again := Resolve(text, Direction(p.Base())); !slices.Equal(again.levels, p.levels) {
			t.Fatalf("direction %d gives %v, its base given outright %v", base, p.levels, again.levels)
		}
		start := min(int(from), len(text))
		end := min(max(int(to), start), len(text))
		for _, line := range [][]Level{p.Line(0, len(text)), p.Line(start, end)} {
			checkLine(t, line)
		}
		if len(p.Line(start, end)) != end-start {
			t.Fatalf("%d levels for %d characters", len(p.Line(start, end)), end-start)
		}
		before := p.Base()
		for i, r := range text {
			switch c := classOf(r); {
			case c == classB:
				before = p.Base()
				continue
			case c.in(removed) && p.levels[i] != before:
				t.Fatalf("removed character %d has level %d, the one before it %d", i, p.levels[i], before)
			}
			before = p.levels[i]
		}
	})
}

// checkLine asserts that levels are in bounds, that every index comes out
// exactly once, and that neighbours at one level stay neighbours and run the
// way of that level.
func checkLine(t *testing.T, levels []Level) {
	t.Helper()
	for i, level := range levels {
		if level > maxDepth+1 {
			t.Fatalf("level %d at %d", level, i)
		}
	}
	order := Reorder(levels)
	seen := make([]bool, len(levels))
	place := make([]int, len(levels))
	for at, i := range order {
		if i < 0 || i >= len(seen) || seen[i] {
			t.Fatalf("index %d is outside or twice in %v", i, order)
		}
		seen[i] = true
		place[i] = at
	}
	if len(order) != len(levels) {
		t.Fatalf("%d places for %d levels", len(order), len(levels))
	}
	for i := 1; i < len(levels); i++ {
		if levels[i] != levels[i-1] {
			continue
		}
		step := 1
		if levels[i]&1 == 1 {
			step = -1
		}
		if place[i] != place[i-1]+step {
			t.Fatalf("neighbours %d and %d at level %d stand at %d and %d", i-1, i, levels[i], place[i-1], place[i])
		}
	}
}
