package load

import (
	"os"
	"path/filepath"
	"testing"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// FuzzMarkdown reads any bytes as a lesson. Laws: it never panics, and the laws of
// checkSpans; findings lie inside the file.
func FuzzMarkdown(f *testing.F) {
	for _, ex := range commonMark(f) {
		f.Add([]byte(ex.Markdown))
	}
	lessons, _ := filepath.Glob("../../content/*/*.md")
	for _, name := range lessons {
		if b, err := os.ReadFile(name); err == nil {
			f.Add(b)
		}
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		r := &reader{pack: &pack.Pack{}}
		s := subject{r: r, file: source.New("wrapping/en.md", b), lang: "en", module: "wrapping"}
		if !s.isText() {
			return
		}
		if l := s.lesson(); l != nil {
			if err := checkSpans(l); err != nil {
				t.Error(err)
			}
		}
		insideFile(t, r.findings)
	})
}

// FuzzRecord reads any bytes as each kind of record. Laws: it never panics, and
// every finding lies inside the file.
func FuzzRecord(f *testing.F) {
	for _, pattern := range []string{"../../content/*.yaml", "../../content/*/module.yaml"} {
		records, _ := filepath.Glob(pattern)
		for _, name := range records {
			if b, err := os.ReadFile(name); err == nil {
				f.Add(b)
			}
		}
	}
	for _, s := range []string{"a: &x [*x]\n", "<<: {a: b}\n", "a: |\n  b\n", "? [a]\n: b\n", "a: 1\r\n---\r\nb: !!str 2\n", "\"a\\\"\": 'b'\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		for name, read := range map[string]func(*reader){
			"pack.yaml":            func(r *reader) { r.packFile() },
			"numbers.yaml":         (*reader).numbers,
			"sources.yaml":         (*reader).sources,
			"terms.yaml":           (*reader).terms,
			"facility.yaml":        (*reader).facility,
			"wrapping/module.yaml": func(r *reader) { r.record("wrapping") },
		} {
			r := newReader(name, b)
			read(r)
			insideFile(t, r.findings)
		}
	})
}

func insideFile(t *testing.T, fs []finding.Finding) {
	t.Helper()
	for _, f := range fs {
		s := f.Place.Span
		if s.Start < 0 || s.End < s.Start || s.End > len(f.Place.File.Bytes) {
			t.Errorf("%s has span %v in a file of %d bytes", f.Rule, s, len(f.Place.File.Bytes))
		}
		if f.What == "" || f.Why == "" || f.Mend == "" {
			t.Errorf("%s does not say what, why and how to mend it: %+v", f.Rule, f)
		}
	}
}
