package load

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

func readBasis(text string) (*pack.Basis, *reader) {
	r := &reader{pack: &pack.Pack{}}
	s := subject{r: r, file: source.New("wrapping/hi.basis", []byte(text)), lang: "hi", module: "wrapping"}
	if !s.isText() {
		return nil, r
	}
	return s.basis(), r
}

func TestBasis(t *testing.T) {
	b, r := readBasis("# kept\r\ntitle 0123456789ab\r\n\nsteps-2.3.1 89abcdef0123\nkey-points.heading 000000000000")
	if len(r.findings) != 0 || len(b.Units) != 3 || b.Units["title"].Digest != "0123456789ab" || b.Units["steps-2.3.1"].Digest != "89abcdef0123" {
		t.Errorf("got %v, %v", b.Units, r.findings)
	}
	if s := b.Units["title"].Span; s.Start != 8 || s.End != 26 {
		t.Errorf("the line of the title is %v", s)
	}
	for text, want := range map[string]string{
		"title\n":                                        "this line",
		"title 0123\n":                                   "this line",
		"title  0123456789ab\n":                          "this line",
		" title 0123456789ab\n":                          "this line",
		"title 0123456789ab \n":                          "this line",
		"title 0123456789AB\n":                           "this line",
		"steps/3 0123456789ab\n":                         "this line",
		"steps.0 0123456789ab\n":                         "this line",
		"Title 0123456789ab\n":                           "this line",
		"<<<<<<< ours\ntitle 0123456789ab\n":             "this line",
		"title 0123456789ab\ntitle 0123456789ab\n":       "twice",
		"a" + strings.Repeat("a", 300) + " 0123456789ab": "this line",
		strings.Repeat("\n", maxBasisLines+1):            "more than",
	} {
		_, r := readBasis(text)
		if len(r.findings) != 1 || !strings.Contains(r.findings[0].What, want) || r.findings[0].Rule != "basis-malformed" {
			t.Errorf("%.40q: %v", text, r.findings)
		}
		insideFile(t, r.findings)
	}
}

// FuzzBasis reads any bytes as a basis. Laws: it never panics, findings lie inside
// the file, and every line kept says what its block's digest is.
func FuzzBasis(f *testing.F) {
	names, _ := filepath.Glob("../../content/*/*.basis")
	for _, name := range names[:min(len(names), 3)] {
		if b, err := os.ReadFile(name); err == nil {
			f.Add(string(b))
		}
	}
	f.Add("title 0123456789ab\r\n#\ntitle 0123456789ab")
	f.Fuzz(func(t *testing.T, text string) {
		b, r := readBasis(text)
		insideFile(t, r.findings)
		if b == nil {
			return
		}
		for id, u := range b.Units {
			if got := text[u.Span.Start:u.Span.End]; got != strings.TrimSpace(id+" "+u.Digest+" "+u.Own) {
				t.Errorf("%s: the line is %q", id, got)
			}
		}
	})
}
