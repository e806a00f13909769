package finding

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"wardleaf/internal/source"
)

// at is the place of some words in a file.
func at(f *source.File, words string) Place {
	i := bytes.Index(f.Bytes, []byte(words))
	return Place{File: f, Span: source.Span{Start: i, End: i + len(words)}}
}

func sample() []Finding {
	en := source.New("wrapping/en.md", []byte("# Wrapping\n\n- Keep 36.5 °C\n"))
	hi := source.New("wrapping/hi.md", []byte("# बाँधना\n\n- तापमान ३६ °C रखें\r\n"))
	ar := source.New("wrapping/ar.md", []byte("# اللف\n\n\t- الحرارة ٣٦ درجة\n"))
	return []Finding{
		{Rule: "number-differs", Level: Error, Place: at(hi, "३६"), Lang: "hi", Module: "wrapping",
			What: "the text shows 36", Why: "A wrong number can hurt.", Mend: "write 36.5",
			Related: []Related{{Place: at(en, "36.5"), Text: "in the source language"}}},
		{Rule: "number-differs", Level: Error, Place: at(ar, "٣٦"), Lang: "ar", Module: "wrapping",
			What: "the text shows 36", Why: "A wrong number can hurt.", Mend: "write 36.5"},
		{Rule: "module-unlisted", Level: Warning, Place: Place{File: source.New("weighing/module.yaml", nil)},
			What: "pack.yaml does not list this module", Why: "It is left out.", Mend: "add it"},
	}
}

// TestText: the caret stands under the cell at which the place begins. The
// Devanagari vowel signs here stand beside their letter in a cell of their own, and
// Arabic counts in the order of storage.
func TestText(t *testing.T) {
	var b strings.Builder
	if err := Text(&b, sample(), "content"); err != nil {
		t.Fatal(err)
	}
	const want = `content/wrapping/hi.md:3:10: error: number-differs: the text shows 36
    - तापमान ३६ °C रखें
             ^
  why:  A wrong number can hurt.
  mend: write 36.5
  see:  content/wrapping/en.md:3:8: in the source language
    - Keep 36.5 °C
           ^

content/wrapping/ar.md:3:12: error: number-differs: the text shows 36
        - الحرارة ٣٦ درجة
                  ^
  why:  A wrong number can hurt.
  mend: write 36.5

content/weighing/module.yaml: warning: module-unlisted: pack.yaml does not list this module
  why:  It is left out.
  mend: add it
`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", b.String(), want)
	}
}

// TestTextIsHarmless: a line cannot steer the terminal, and a long one is cut.
func TestTextIsHarmless(t *testing.T) {
	f := source.New("a.md", []byte("\x1b[2J\u202e "+strings.Repeat("long ", 500)+"here "+strings.Repeat("शब्द ", 500)+"\n"))
	var b strings.Builder
	if err := Text(&b, []Finding{{Rule: "r", Place: at(f, "here"), What: "w", Why: "y", Mend: "m"}}, ""); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(b.String(), "\n")
	if strings.ContainsAny(b.String(), "\x1b\u202e") {
		t.Errorf("control characters are printed: %q", b.String())
	}
	if n := len([]rune(lines[1])); n > 2*quoteWidth || !strings.HasPrefix(lines[1], "    …") || !strings.HasSuffix(lines[1], "…") {
		t.Errorf("the line is not cut: %d %q", n, lines[1])
	}
	column := strings.Index(lines[2], "^")
	if got := []rune(lines[1])[column:]; !strings.HasPrefix(string(got), "here") {
		t.Errorf("the caret does not stand below the place:\n%s\n%s", lines[1], lines[2])
	}
}

func TestJSON(t *testing.T) {
	var b bytes.Buffer
	if err := JSON(&b, sample()[:1]); err != nil {
		t.Fatal(err)
	}
	const want = `{
  "version": 1,
  "findings": [
    {
      "rule": "number-differs",
      "level": "error",
      "file": "wrapping/hi.md",
      "line": 3,
      "column": 10,
      "endLine": 3,
      "endColumn": 12,
      "what": "the text shows 36",
      "why": "A wrong number can hurt.",
      "mend": "write 36.5",
      "language": "hi",
      "module": "wrapping",
      "related": [
        {
          "file": "wrapping/en.md",
          "line": 3,
          "column": 8,
          "endLine": 3,
          "endColumn": 12,
          "text": "in the source language"
        }
      ]
    }
  ]
}
`
	if b.String() != want {
		t.Errorf("got\n%s", b.String())
	}
	b.Reset()
	if err := JSON(&b, nil); err != nil || !json.Valid(b.Bytes()) || !strings.Contains(b.String(), `"findings": []`) {
		t.Errorf("no findings: %v %s", err, b.String())
	}
}

func TestSortAndCount(t *testing.T) {
	fs := sample()
	Sort(fs)
	var got []string
	for _, f := range fs {
		got = append(got, f.Place.File.Path)
	}
	if strings.Join(got, " ") != "weighing/module.yaml wrapping/ar.md wrapping/hi.md" {
		t.Errorf("got %v", got)
	}
	if Count(fs, Error) != 2 || Count(fs, Warning) != 1 || Count(fs, Note) != 0 {
		t.Error("wrong count")
	}
}
