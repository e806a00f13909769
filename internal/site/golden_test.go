package site

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

var update = flag.Bool("update", false, "write the golden pages anew")

// TestGolden compares every page of the small pack with the one last looked at by eye.
// The style sheet is left out.
func TestGolden(t *testing.T) {
	style := regexp.MustCompile(`(?s)<style>.*?</style>`)
	files := build(t, "../../testdata/packs/small")
	for file, golden := range map[string]string{
		"index.html":      "start.html",
		"en/index.html":   "index.en.html",
		"en/holding.html": "holding.en.html",
		"en/trainer.html": "trainer.en.html",
		"ar/holding.html": "holding.ar.html",
	} {
		got := style.ReplaceAllString(string(files[file]), "<style></style>")
		name := filepath.Join("testdata", golden)
		if *update {
			if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs from testdata/%s; look at the page, then run go test -update\n%s", file, golden, got)
		}
	}
}
