package finding

import (
	"bytes"
	"cmp"
	"slices"

	"wardleaf/internal/source"
)

// A Mended file has had the edits of some findings made in it.
type Mended struct {
	File  *source.File // as it was read
	Bytes []byte       // as it is to be written
	Count int          // findings mended
}

// Mend makes the edits that findings carry, file by file in the order of their paths.
// A finding whose edits touch those of an earlier one is left for the next time, since
// its place may have moved.
func Mend(fs []Finding) []Mended {
	type work struct {
		file  *source.File
		edits []Edit
		count int
	}
	var all []*work
	for _, f := range fs {
		if len(f.Edits) == 0 || f.Place.File == nil {
			continue
		}
		i := slices.IndexFunc(all, func(w *work) bool { return w.file == f.Place.File })
		if i < 0 {
			i = len(all)
			all = append(all, &work{file: f.Place.File})
		}
		w := all[i]
		clash := slices.ContainsFunc(f.Edits, func(e Edit) bool {
			return slices.ContainsFunc(w.edits, func(o Edit) bool { return e.Span.Start <= o.Span.End && o.Span.Start <= e.Span.End })
		})
		if !clash {
			w.edits = append(w.edits, f.Edits...)
			w.count++
		}
	}
	slices.SortFunc(all, func(a, b *work) int { return cmp.Compare(a.file.Path, b.file.Path) })
	var out []Mended
	for _, w := range all {
		slices.SortFunc(w.edits, func(a, b Edit) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
		var b bytes.Buffer
		at := 0
		for _, e := range w.edits {
			b.Write(w.file.Bytes[at:e.Span.Start])
			b.WriteString(e.Text)
			at = e.Span.End
		}
		b.Write(w.file.Bytes[at:])
		out = append(out, Mended{w.file, b.Bytes(), w.count})
	}
	return out
}
