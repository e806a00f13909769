package check

import (
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/piece"
	"wardleaf/internal/source"
	"wardleaf/internal/typeset"
)

// TestGlyphs puts a gap down to its place in the lesson, and one in the facility's
// words to its file.
func TestGlyphs(t *testing.T) {
	l := &lesson.Lesson{Module: "wrapping", Lang: "hi", File: source.New("wrapping/hi.md", []byte("# ab🧼\n"))}
	p := &pack.Pack{Facility: pack.Facility{File: source.New("facility.yaml", []byte("name: {hi: 🧽}\n"))}}
	got := Glyphs(p, "hi", []piece.Missing{
		{Gap: typeset.Gap{Rune: '🧼', Span: source.Span{Start: 4, End: 8}}, Lesson: l},
		{Gap: typeset.Gap{Rune: '🧽'}},
	})
	if len(got) != 2 || place(got[0]) != "facility.yaml:1:1" || place(got[1]) != "wrapping/hi.md:1:5" ||
		got[1].Lang != "hi" || got[1].Module != "wrapping" || got[0].Lang != "hi" || got[0].Rule != "glyph-missing" {
		t.Errorf("got %+v", got)
	}
}
