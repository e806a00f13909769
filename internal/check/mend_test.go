package check

import (
	"path/filepath"
	"slices"
	"testing"
	"testing/fstest"

	"wardleaf/internal/finding"
)

// TestMendsMend makes the edits that the bad fixtures give rise to: what could be mended
// is not found again, and nothing else is found that was not there before.
func TestMendsMend(t *testing.T) {
	base := archive(t, "testdata/base.txtar")
	mended := map[string]bool{}
	for _, r := range All() {
		if _, exempt := withoutFixtures[r.Name]; exempt {
			continue
		}
		fsys := merge(base, archive(t, filepath.Join("testdata", r.Name, "bad.txtar")))
		before := found(t, fsys)
		for range 10 {
			edits := finding.Mend(found(t, fsys))
			if len(edits) == 0 {
				break
			}
			for _, m := range edits {
				fsys[m.File.Path] = &fstest.MapFile{Data: m.Bytes, Mode: 0o644}
			}
		}
		for _, f := range found(t, fsys) {
			if len(f.Edits) > 0 {
				t.Errorf("%s: %s is still there after it was mended", r.Name, f.Rule)
			}
			if !slices.ContainsFunc(before, func(b finding.Finding) bool { return b.Rule == f.Rule }) && !slices.ContainsFunc(before, unread) {
				t.Errorf("%s: mending gave rise to %s: %s", r.Name, f.Rule, f.What)
			}
		}
		for _, f := range before {
			mended[f.Rule] = mended[f.Rule] || len(f.Edits) > 0
		}
	}
	for _, rule := range []string{"caution-not-first", "digits-other", "hidden-control", "notation-abbreviation", "notation-decimal", "notation-space", "text-not-normalised"} {
		if !mended[rule] {
			t.Errorf("%s mends nothing", rule)
		}
	}
}

// unread reports a finding of a file that was not read on, so that mending it brings the rest to light.
func unread(f finding.Finding) bool { return f.Rule == "hidden-control" }
