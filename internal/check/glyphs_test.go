package check

import (
	"testing"

	"wardleaf/internal/finding"
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

func TestSheets(t *testing.T) {
	p := &pack.Pack{File: source.New("pack.yaml", nil)}
	for sheets, want := range map[int]int{1: 0, 15: 0, 16: 1, 21: 1} {
		got := Sheets(p, "hi", sheets)
		if len(got) != want || want == 1 && (got[0].Rule != "booklet-thick" || got[0].Lang != "hi" || got[0].Level != finding.Note) {
			t.Errorf("%d sheets: %+v", sheets, got)
		}
	}
}
