package finding

import (
	"testing"

	"wardleaf/internal/source"
)

// TestMend makes edits in their order, and leaves a finding whose edits touch another's for the next time.
func TestMend(t *testing.T) {
	b := source.New("b.md", []byte("5cc and .5 ml"))
	a := source.New("a.md", []byte("one two"))
	of := func(f *source.File, edits ...Edit) Finding {
		return Finding{Place: Place{File: f}, Edits: edits}
	}
	got := Mend([]Finding{
		of(b, Edit{source.Span{Start: 8, End: 8}, "0"}),
		of(b, Edit{source.Span{Start: 1, End: 3}, " ml"}),
		of(b, Edit{source.Span{Start: 0, End: 1}, "6"}), // touches the one before
		of(a, Edit{source.Span{Start: 4, End: 7}, ""}, Edit{source.Span{Start: 0, End: 0}, "two "}),
		of(a),
		{Edits: []Edit{{Text: "x"}}}, // of no file
	})
	if len(got) != 2 || got[0].File != a || string(got[0].Bytes) != "two one " || got[0].Count != 1 {
		t.Errorf("got %+v", got)
	}
	if string(got[1].Bytes) != "5 ml and 0.5 ml" || got[1].Count != 2 {
		t.Errorf("got %q, %d", got[1].Bytes, got[1].Count)
	}
}
