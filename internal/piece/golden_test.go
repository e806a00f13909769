package piece

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	"wardleaf/internal/translate"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestGolden compares the layout of pieces of a small pack, in a left-to-right and a
// right-to-left language, with dumps that were looked at as pages.
func TestGolden(t *testing.T) {
	p, _, err := load.Pack(os.DirFS("../../testdata/packs/small"), "small")
	if err != nil {
		t.Fatal(err)
	}
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	lib := library(t)
	for _, lang := range []string{"en", "ar"} {
		loc, err := catalog.Locale(lang, p.Digits[lang])
		if err != nil {
			t.Fatal(err)
		}
		e := translate.Join(p, loc)
		for _, pc := range List {
			if pc.Name != "booklet-pages" && pc.Name != "skills-checklist" {
				continue
			}
			r, err := pc.Make(&Job{Edition: e, Module: &e.Modules[0], Fonts: lib, Paper: measure.A4})
			if err != nil {
				t.Fatal(err)
			}
			file := filepath.Join("testdata", lang+"-"+pc.Name+".txt")
			got := page.Dump(r.Document)
			if *update {
				if err := os.MkdirAll("testdata", 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
				continue
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf("%s changed; look at the pages, then run: go test ./internal/piece -run Golden -update\n%s", file, diff)
			}
		}
	}
}
