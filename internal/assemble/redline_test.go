package assemble

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"wardleaf/internal/load"
	"wardleaf/internal/redline"
)

// changed is the starter pack with texts of it replaced.
func changed(t *testing.T, edits ...[3]string) *State {
	t.Helper()
	files := fstest.MapFS{}
	root := os.DirFS("../../content")
	err := fs.WalkDir(root, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := fs.ReadFile(root, path)
		files[path] = &fstest.MapFile{Data: b}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range edits {
		text := string(files[e[0]].Data)
		if !strings.Contains(text, e[1]) {
			t.Fatalf("%s does not hold %q", e[0], e[1])
		}
		files[e[0]] = &fstest.MapFile{Data: []byte(strings.Replace(text, e[1], e[2], 1))}
	}
	p, _, err := load.Pack(files, "content")
	if err != nil {
		t.Fatal(err)
	}
	return &State{Side: redline.Side{Pack: p}}
}

// reviewed is a pack before and after some edits in three scripts.
func reviewed(t *testing.T) (old, now *State) {
	old = changed(t)
	old.Revision = redline.Revision{Name: "v1", ID: strings.Repeat("ab", 20), Date: time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)}
	return old, changed(t,
		[3]string{"wrapping/en.md", "Cloth must never cover the nose or mouth.", "Cloth must cover the nose & mouth \\<b>."},
		[3]string{"wrapping/hi.md", "कपड़ा नाक या मुँह को कभी न ढके।", "कपड़ा नाक या मुँह को ढके।"},
		[3]string{"wrapping/ar.md", "من ٣ إلى ٥", "من ٤ إلى ٥"},
		[3]string{"facility.yaml", `value: ""`, `value: "0123 456"`},
	)
}

// Poppler finds the words of both sides in the PDF, in every script and with labels
// in every language; old and new text of a change are two texts, so none runs into the other.
func TestRedlinePDF(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is not installed")
		}
		t.Skip("pdftotext is not installed")
	}
	old, now := reviewed(t)
	for lang, labels := range map[string][]string{
		"en": {"What changed", "Read this first", "Agreed", "Remarks", "Awaiting clinical review"},
		"hi": {"क्या बदला", "सहमत", "टिप्पणी", "चिकित्सकीय समीक्षा बाकी है"},
		"ar": {"موافق", "ملاحظات", "بانتظار", "المراجعة", "السريرية"}, // poppler gives the words of a line as they stand, from the left
	} {
		o := options(t, nil)
		o.Langs = []string{lang}
		data, missing, err := Redline(o, old, now, "pdf")
		if err != nil || len(missing) > 0 {
			t.Fatalf("%s: missing %q, %v", lang, missing, err)
		}
		path := filepath.Join(t.TempDir(), "redline.pdf")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command("pdftotext", "-raw", path, "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		text := plain(string(out))
		want := append(labels[:len(labels):len(labels)],
			"Cloth must never cover the nose or mouth.", "Cloth must cover the nose & mouth <b>.",
			"कपड़ा नाक या मुँह को कभी न ढके।", "कपड़ा नाक या मुँह को ढके।", "0123 456")
		for _, words := range []string{"طولها من ٣ إلى ٥ أمتار", "طولها من ٤ إلى ٥ أمتار"} {
			want = append(want, strings.Fields(words)...)
		}
		for _, w := range want {
			if !strings.Contains(text, plain(w)) {
				t.Errorf("%s: %q is not in the text:\n%s", lang, w, out)
			}
		}
	}
}

// plain leaves out white space and the marks of direction.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069 || r == 0x200E || r == 0x200F {
			return -1
		}
		return r
	}, strings.Join(strings.Fields(s), ""))
}

// The page escapes what a pack says, says in which language and direction it is, and
// carries the band and the caution.
func TestRedlinePage(t *testing.T) {
	old, now := reviewed(t)
	o := options(t, nil)
	o.Langs = []string{"ar"}
	data, _, err := Redline(o, old, now, "html")
	if err != nil {
		t.Fatal(err)
	}
	page := string(data)
	for _, want := range []string{
		`<html lang="ar" dir="rtl"`,
		`<p class="said" lang="en" dir="ltr">Cloth must <del>never</del> cover the nose`,
		`&amp;`, `&lt;b&gt;`,
		`lang="hi" dir="ltr"`, `<del>कभी न</del>`,
		`<del>٣</del> <ins>٤</ins>`,
		`dir="auto"><ins>0123 456</ins>`,
		"بانتظار المراجعة السريرية", "للتعليم مع عامل صحي مدرَّب",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if strings.Contains(page, "<b>") {
		t.Error("a tag of the pack reached the page")
	}
}
