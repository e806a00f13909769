package bidi

import (
	"slices"
	"strings"
	"testing"
)

// The tables below write right-to-left letters as capitals: hebrew turns A to
// Z into U+05D0 to U+05E9, and visual turns them back.
func hebrew(s string) []rune {
	text := []rune(s)
	for i, r := range text {
		if r >= 'A' && r <= 'Z' {
			text[i] = 'א' + r - 'A'
		}
	}
	return text
}

// visual is what a reader sees from left to right, mirroring left out and
// invisible characters dropped.
func visual(text []rune, levels []Level) string {
	var out strings.Builder
	for _, i := range Reorder(levels) {
		r := text[i]
		switch {
		case r >= 'א' && r <= 'ת':
			r = 'A' + r - 'א'
		case classOf(r).in(removed | isolates):
			continue
		}
		out.WriteRune(r)
	}
	return out.String()
}

func TestVisualOrder(t *testing.T) {
	for _, c := range []struct {
		name string
		text string
		base Direction
		want string
	}{
		{"number and unit in right-to-left text", "WEIGHT 1,500 g", RightToLeft, "g 1,500 THGIEW"},
		{"word in left-to-right text", "call ABC now", LeftToRight, "call CBA now"},
		{"a number after it is drawn in", "call ABC 12 now", LeftToRight, "call 12 CBA now"},
		{"an isolate keeps it out", "call \u2068ABC\u2069 12 now", LeftToRight, "call CBA 12 now"},
		{"forced base", "AB!", LeftToRight, "BA!"},
		{"auto base", "12 AB!", Auto, "!BA 12"},
		{"auto looks past isolates", "\u2067AB\u2069 kmc!", Auto, "BA kmc!"},
		{"auto without letters", "12 (3)", Auto, "12 (3)"},
		{"brackets follow the paragraph", "ABC (kmc) DEF", RightToLeft, "FED )kmc( CBA"},
		{"brackets enclose", "ab (CD) ef", LeftToRight, "ab (DC) ef"},
		{"unlike angle brackets pair", "AB \u2329kmc\u3009 DE", RightToLeft, "ED \u3009kmc\u2329 BA"},
		{"decimal", "T 36.5", RightToLeft, "36.5 T"},
		{"range with a hyphen after Hebrew", "T 36-37", RightToLeft, "36-37 T"},
		{"range with a dash reads from the right", "T 36\u201337", RightToLeft, "37\u201336 T"},
		{"range in an isolate", "T \u206636\u201337\u2069", RightToLeft, "36\u201337 T"},
		{"override", "ab \u202Ecde\u202C f", LeftToRight, "ab edc f"},
		{"nested embeddings", "ab \u202BCD \u202Aef GH\u202C IJ\u202C kl", LeftToRight, "ab JI ef HG DC kl"},
		{"empty", "", RightToLeft, ""},
	} {
		text := hebrew(c.text)
		p := Resolve(text, c.base)
		if got := visual(text, p.Line(0, len(text))); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// In Arabic text W2 makes European digits Arabic ones, and then a hyphen no
// longer holds a range together (W4).
func TestRangeAfterArabic(t *testing.T) {
	text := []rune("\u062D 36-37")
	if got, want := Resolve(text, RightToLeft).Line(0, len(text)), []Level{1, 1, 2, 2, 1, 2, 2}; !slices.Equal(got, want) {
		t.Errorf("levels %v, want %v", got, want)
	}
}

// L1 and L2 apply to lines: a space goes to the end of the line it ends.
func TestLines(t *testing.T) {
	text := hebrew("ABC DEF kmc")
	p := Resolve(text, LeftToRight)
	for _, c := range []struct {
		start, end int
		want       string
	}{
		{0, 11, "FED CBA kmc"},
		{0, 4, "CBA "},
		{4, 11, "FED kmc"},
		{4, 8, "FED "},
		{3, 4, " "},
		{5, 5, ""},
	} {
		if got := visual(text[c.start:c.end], p.Line(c.start, c.end)); got != c.want {
			t.Errorf("%d to %d: %q, want %q", c.start, c.end, got, c.want)
		}
	}
}

func TestLineGivesAwayItsSlice(t *testing.T) {
	p := Resolve(hebrew("ABC"), RightToLeft)
	p.Line(0, 3)[1] = 9
	if got := p.Line(0, 3); !slices.Equal(got, []Level{1, 1, 1}) {
		t.Errorf("levels %v after a caller changed its copy", got)
	}
}

func TestSeparatorEndsEverything(t *testing.T) {
	text := hebrew("\u202EABC\u2066k\u2029kmc")
	want := []Level{0, 1, 1, 1, 1, 2, 0, 0, 0, 0}
	if got := Resolve(text, LeftToRight).Line(0, len(text)); !slices.Equal(got, want) {
		t.Errorf("levels %v, want %v", got, want)
	}
}

func TestRemovedFollowTheirNeighbour(t *testing.T) {
	text := hebrew("\u200Dk A\u00ADB\u200DC k") // joiner first, soft hyphen and joiner within
	want := []Level{0, 0, 0, 1, 1, 1, 1, 1, 0, 0}
	if got := Resolve(text, LeftToRight).Line(0, len(text)); !slices.Equal(got, want) {
		t.Errorf("levels %v, want %v", got, want)
	}
}

func TestBase(t *testing.T) {
	for _, c := range []struct {
		text string
		base Direction
		want Level
	}{
		{"", LeftToRight, 0}, {"", RightToLeft, 1}, {"", Auto, 0},
		{"k", RightToLeft, 1}, {"A", LeftToRight, 0}, {"A", Auto, 1},
		{"12\u2029A", Auto, 0},
	} {
		if got := Resolve(hebrew(c.text), c.base).Base(); got != c.want {
			t.Errorf("%q with direction %d: base %d, want %d", c.text, c.base, got, c.want)
		}
	}
}

// The short way out of Resolve skips the class table below firstTurning.
func TestNothingTurnsBelowFirstTurning(t *testing.T) {
	for r := rune(0); r < firstTurning; r++ {
		if classOf(r).in(turning) {
			t.Errorf("%U can lift a level", r)
		}
	}
}

// The depth of isolates and of waiting brackets is bounded by the standard;
// without its limits these texts would take the square of their length.
func TestDeepNestingIsNotSlow(t *testing.T) {
	const n = 200_000
	for name, unit := range map[string]string{
		"isolates": "\u2068", "embeddings": "\u202B", "openers": "(", "closers": ")",
		"pairs": "(A)", "isolated": "\u2068a\u2069", "marks": "(\u0301",
	} {
		text := hebrew("A" + strings.Repeat(unit, n) + strings.Repeat(")", 100))
		if levels := Resolve(text, Auto).Line(0, len(text)); slices.Max(levels) > maxDepth+1 {
			t.Errorf("%s: level %d", name, slices.Max(levels))
		}
	}
}

func TestReorder(t *testing.T) {
	for _, c := range []struct {
		levels []Level
		want   []int
	}{
		{nil, []int{}},
		{[]Level{0, 2, 4}, []int{0, 1, 2}},
		{[]Level{0, 1, 1, 0}, []int{0, 2, 1, 3}},
		{[]Level{1, 2, 2, 1, 0}, []int{3, 1, 2, 0, 4}},
		{[]Level{255, 254, 255}, []int{0, 1, 2}},
	} {
		if got := Reorder(c.levels); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.levels, got, c.want)
		}
	}
}
