package assemble

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"wardleaf/internal/finding"
	"wardleaf/internal/measure"
)

// small is the small pack with one text of pack.yaml replaced.
func small(t *testing.T, old, new string) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	root := os.DirFS("../../testdata/packs/small")
	err := fs.WalkDir(root, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := fs.ReadFile(root, path)
		if path == "pack.yaml" {
			if !strings.Contains(string(b), old) {
				t.Fatalf("pack.yaml does not hold %q", old)
			}
			b = []byte(strings.Replace(string(b), old, new, 1))
		}
		out[path] = &fstest.MapFile{Data: b}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func options(t *testing.T, pack fs.FS) Options {
	return Options{
		Pack: pack, Name: "small", Out: filepath.Join(t.TempDir(), "out"), Jobs: 2, Paper: measure.A4,
		Today:  time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC),
		Assets: Assets{Locales: os.DirFS("../../locales"), Templates: os.DirFS("../../templates"), Fonts: os.DirFS("../../templates/fonts")},
	}
}

// A language without labels stops itself, at its place, and no other.
func TestLanguageUnknown(t *testing.T) {
	r, err := Run(options(t, small(t, "languages: [en, ar]", "languages: [en, ar, tlh]")))
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, f := range r.Findings {
		if f.Rule == "language-unknown" {
			found++
			if f.Lang != "tlh" || f.Level != finding.Error || f.Place.File.Path != "pack.yaml" {
				t.Errorf("found %+v", f)
			}
		}
	}
	if found != 1 || !r.Published || len(r.Made) != 2 || len(r.Left) != 1 {
		t.Errorf("%d findings; published %v, made %d, left out %v", found, r.Published, len(r.Made), r.Left)
	}
}

// Under strict rules a warning stops everything, and nothing is written.
func TestStrict(t *testing.T) {
	o := options(t, small(t, "modules: [holding]", "modules: [holding]"))
	o.Pack.(fstest.MapFS)["extra/module.yaml"] = &fstest.MapFile{Data: []byte("minutes: 1\n")} // not listed: a warning
	o.Strict = true
	r, err := Run(o)
	if err != nil {
		t.Fatal(err)
	}
	if r.Published || finding.Count(r.Findings, finding.Warning) == 0 {
		t.Errorf("published %v with %d warnings", r.Published, finding.Count(r.Findings, finding.Warning))
	}
	if _, err := os.Stat(o.Out); err == nil {
		t.Error("something was written")
	}
}
