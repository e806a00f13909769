package exchange

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/source"
)

// The lesson and translation that the files of testdata/damaged were handed off from.
const (
	damagedSource = "# Wrapping\n\nWash for [at least 40 seconds](number:wash) and call **now**.\n\n## Steps {.steps}\n\n1. Tuck the [wrap](term:wrap) in.\n2. Rest,\\\n   and smile.\n"
	damagedTarget = "# पट्टी\n\n[कम से कम 40 सेकंड](number:wash) धोएँ और **तुरंत** बुलाएँ।\n\n## कदम {.steps}\n\n1. [पट्टी](term:wrap) दबाएँ।\n2. आराम करें,\\\n   और मुस्कुराएँ।\n"
)

// TestDamaged hands back every file of testdata/damaged. expected.txt names the first
// thing that is said of each, with its place; a file that it does not name must be
// taken back without a word. Nothing is ever written for a file with an error.
func TestDamaged(t *testing.T) {
	p := packOf(t, damagedSource, map[string]string{"hi": damagedTarget})
	text, err := os.ReadFile("testdata/damaged/expected.txt")
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{}
	for line := range strings.Lines(string(text)) {
		name, _, _ := strings.Cut(line, ":")
		want[name] = strings.TrimSpace(line)
	}
	files, err := filepath.Glob("testdata/damaged/*.[xp]*")
	if err != nil {
		t.Fatal(err)
	}
	counts := map[string]int{}
	for _, path := range files {
		name := filepath.Base(path)
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		_, res, fs := back(t, p, name, b)
		got := ""
		if len(fs) > 0 {
			f := fs[0]
			line, column := f.Place.File.Position(f.Place.Span.Start)
			got = fmt.Sprintf("%s:%d:%d %s %s: %s", name, line, column, f.Level, f.Rule, f.What)
		}
		if name == "expected.txt" {
			continue
		}
		if got != want[name] {
			t.Errorf("got\n%s\nwant\n%s", got, want[name])
		}
		if got == "" && (res == nil || len(res.Changes) == 0) {
			t.Errorf("%s: nothing is taken", name)
		}
		if strings.Contains(got, " error ") {
			counts[filepath.Ext(name)]++
			if res != nil {
				t.Errorf("%s: an error, and something to write", name)
			}
		}
		delete(want, name)
	}
	for name := range want {
		t.Errorf("%s is expected, and not there", name)
	}
	if counts[".xlf"] < 25 || counts[".po"] < 10 {
		t.Errorf("damaged files: %v", counts)
	}
}

// TestBombs refuses what is too large, too deep or too much, in bounded time.
func TestBombs(t *testing.T) {
	head := `<xliff xmlns="` + xliffSpace + `" version="2.1" srcLang="en" trgLang="hi">`
	for what, text := range map[string]string{
		"deeper than":     head + strings.Repeat("<file>", 100_000),
		"elements":        head + strings.Repeat("<file/>", maxElements+1),
		"larger than":     head + strings.Repeat(" ", maxFile),
		"attributes":      head + "<file " + strings.Repeat("a:b='' ", 0) + manyAttributes() + "/>",
		"prefixes":        head + strings.Repeat("<x ", 1) + manyPrefixes() + "/>",
		"document type":   "<!DOCTYPE x [<!ENTITY a \"b\"><!ENTITY c \"&a;&a;\">]>" + head,
		"not well-formed": head + "&unknown;",
	} {
		_, fs := ReadXLIFF(source.New("bomb.xlf", []byte(text)))
		what = strings.Replace(what, "deeper than", "deep inside", 1)
		if len(fs) != 1 || !strings.Contains(fs[0].What, what) || fs[0].Rule != Malformed {
			t.Errorf("%s: %+v", what, fs)
		}
	}
	entry := "msgctxt \"a/b%d\"\nmsgid \"x\"\nmsgstr \"\"\n\n"
	var many strings.Builder
	many.WriteString("msgid \"\"\nmsgstr \"Content-Type: text/plain; charset=UTF-8\\nX-Source-Language: en\\nX-Target-Language: hi\\n\"\n\n")
	for i := range maxPOEntries + 1 {
		fmt.Fprintf(&many, entry, i)
	}
	for what, text := range map[string]string{
		"entries":     many.String(),
		"longer than": "msgid \"" + strings.Repeat("a", maxPOLine) + "\"\n",
		"larger than": strings.Repeat("\n", maxFile+1),
	} {
		_, fs := ReadPO(source.New("bomb.po", []byte(text)))
		if len(fs) != 1 || !strings.Contains(fs[0].What, what) {
			t.Errorf("%s: %+v", what, fs)
		}
	}
}

func manyAttributes() string {
	var b strings.Builder
	for i := range maxAttrs + 1 {
		fmt.Fprintf(&b, "a%d='' ", i)
	}
	return b.String()
}

func manyPrefixes() string {
	var b strings.Builder
	for i := range 30 {
		fmt.Fprintf(&b, "xmlns:a%d='u' ", i)
	}
	return b.String()
}

// FuzzXLIFF and FuzzPO read and hand back any bytes. Laws: no panic; findings lie
// inside the file and say what, why and how to mend it; an error means that nothing changes.
func FuzzXLIFF(f *testing.F) { fuzzBack(f, "job.xlf", "testdata/damaged/*.xlf") }
func FuzzPO(f *testing.F)    { fuzzBack(f, "job.po", "testdata/damaged/*.po") }

func fuzzBack(f *testing.F, name, seeds string) {
	files, _ := filepath.Glob(seeds)
	for _, s := range files {
		if b, err := os.ReadFile(s); err == nil {
			f.Add(b)
		}
	}
	p := packOf(f, damagedSource, map[string]string{"hi": damagedTarget})
	f.Fuzz(func(t *testing.T, b []byte) {
		_, res, fs := back(t, p, name, b)
		failed := false
		for _, x := range fs {
			s := x.Place.Span
			if s.Start < 0 || s.End < s.Start || s.End > len(x.Place.File.Bytes) || x.What == "" || x.Why == "" || x.Mend == "" {
				t.Errorf("%+v in %d bytes", x, len(b))
			}
			failed = failed || x.Level.String() == "error"
		}
		if failed != (res == nil) {
			t.Errorf("an error: %v; a result: %v", failed, res != nil)
		}
		if res != nil && slices.ContainsFunc(res.Changes, func(c Change) bool { return !strings.HasPrefix(c.Path, "wrapping/hi.") }) {
			t.Errorf("changes %+v", res.Changes)
		}
	})
}
