package site

import (
	"testing"

	"wardleaf/internal/lesson"
)

// TestWritable gives a form rows to write on, and leaves the sheet itself as it was.
func TestWritable(t *testing.T) {
	bs := []lesson.Block{{Kind: lesson.Paragraph}, {Kind: lesson.Table, Fill: true, Rows: make([]lesson.Row, 2)}}
	got := writable(bs)
	if len(got[1].Rows) != 13 || len(bs[1].Rows) != 2 || len(got[0].Rows) != 0 {
		t.Errorf("rows: %d of %d, and %d", len(got[1].Rows), len(bs[1].Rows), len(got[0].Rows))
	}
}
