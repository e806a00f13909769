package finding

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"wardleaf/internal/source"
)

// schema is the outside JSON Schema of SARIF 2.1.0; testdata/conformance says where
// it comes from. Formats, such as that of a relative address, are held to as well.
func schema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	f, err := os.Open("../../testdata/conformance/sarif-2.1.0.json.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(z)
	if err != nil || len(b) != 114228 {
		t.Fatalf("the schema has %d bytes, not 114228: %v", len(b), err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("sarif.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("sarif.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate(t *testing.T, s *jsonschema.Schema, b []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(doc)
}

var ruleDocs = []RuleDoc{
	{Name: "module-unlisted", Title: "A module is not listed", Why: "It is left out.", Level: Warning, Before: "a\n", After: "b\n"},
	{Name: "number-differs", Title: "A number differs", Why: "It can hurt.", Level: Error, Before: "36\n", After: "36.5\n"},
}

func sarif(t *testing.T, fs []Finding, rules []RuleDoc, folder string) (b []byte, log sarifLog) {
	t.Helper()
	var w bytes.Buffer
	if err := SARIF(&w, fs, rules, folder); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(w.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	return w.Bytes(), log
}

func TestSARIFFitsTheSchema(t *testing.T) {
	s := schema(t)
	odd := source.New("100% a:b/ä ?#[x].md", []byte("\x00\xff\u202e\n"))
	for name, fs := range map[string][]Finding{
		"none": nil,
		"some": sample(),
		"odd": {
			{Rule: "not-described", Level: Note, What: "no place at all", Why: "y", Mend: "m"},
			{Rule: "number-differs", Place: Place{File: odd, Span: source.Span{Start: 2, End: 2}}, What: "\xff\x00<&>", Why: "y", Mend: "m",
				Related: []Related{{Text: "no place"}, {Place: Place{File: odd, Span: source.Span{Start: -5, End: 99}}, Text: "see"}}},
		},
	} {
		for _, rules := range [][]RuleDoc{nil, ruleDocs} {
			b, _ := sarif(t, fs, rules, "")
			if err := validate(t, s, b); err != nil {
				t.Errorf("%s: %v\n%s", name, err, b)
			}
		}
	}
	// The schema does tell good from bad.
	good, _ := sarif(t, sample(), ruleDocs, "")
	for _, change := range [][2]string{
		{`"level": "warning"`, `"level": "grave"`}, {`"startLine": 3`, `"startLine": 0`},
		{`"wrapping/hi.md"`, `"wrapping/%hi.md"`}, {"unicodeCodePoints", "bytes"},
	} {
		bad := bytes.Replace(good, []byte(change[0]), []byte(change[1]), 1)
		if bytes.Equal(bad, good) || validate(t, s, bad) == nil {
			t.Errorf("%s in place of %s is let through", change[1], change[0])
		}
	}
}

func TestSARIF(t *testing.T) {
	_, log := sarif(t, sample(), ruleDocs, "my pack")
	run := log.Runs[0]
	if log.Version != "2.1.0" || run.ColumnKind != "unicodeCodePoints" || len(run.Results) != 3 {
		t.Fatalf("got %+v", log)
	}
	if got := run.Tool.Driver.Rules[1]; got.ID != "number-differs" || got.Help.Text != ruleDocs[1].Explain() || got.Default.Level != "error" {
		t.Errorf("rule: got %+v", got)
	}
	r := run.Results[0]
	if r.RuleID != "number-differs" || *r.RuleIndex != 1 || r.Level != "error" ||
		r.Message.Text != "the text shows 36\nWhy: A wrong number can hurt.\nMend: write 36.5" ||
		r.Properties["language"] != "hi" || r.Properties["module"] != "wrapping" {
		t.Errorf("result: got %+v", r)
	}
	if p := r.Locations[0].Physical; p.Artifact.URI != "my%20pack/wrapping/hi.md" || *p.Region != (sarifRegion{3, 10, 3, 12}) {
		t.Errorf("place: got %+v %+v", p, p.Region)
	}
	if rel := r.Related[0]; rel.Message.Text != "in the source language" || *rel.Physical.Region != (sarifRegion{3, 8, 3, 12}) {
		t.Errorf("related place: got %+v", rel)
	}
	if p := run.Results[2].Locations[0].Physical; p.Region != nil || *run.Results[2].RuleIndex != 0 {
		t.Errorf("a file that could not be read: got %+v", p)
	}
}

// TestSARIFMends: edits are fixes, and a silenced finding is a suppressed result.
func TestSARIFMends(t *testing.T) {
	fs := sample()
	fs[0].Edits = []Edit{{Span: fs[0].Place.Span, Text: "36.5"}, {Span: source.Span{Start: 0, End: 2}}}
	fs[1].Silenced = "known"
	_, log := sarif(t, fs, ruleDocs, "pack")
	fix := log.Runs[0].Results[0].Fixes[0]
	if fix.Description.Text != "write 36.5" || fix.Changes[0].Artifact.URI != "pack/wrapping/hi.md" {
		t.Errorf("got %+v", fix)
	}
	if r := fix.Changes[0].Replacements; r[0].Deleted != (sarifRegion{3, 10, 3, 12}) || r[0].Inserted.Text != "36.5" || r[1].Inserted != nil {
		t.Errorf("got %+v", r)
	}
	if s := log.Runs[0].Results[1].Suppressions; len(s) != 1 || s[0] != (sarifSuppression{"external", "known"}) {
		t.Errorf("got %+v", s)
	}
}

func TestSARIFAddress(t *testing.T) {
	for path, want := range map[string]string{
		"wrapping/en.md": "wrapping/en.md",
		"a b/50%.md":     "a%20b/50%25.md",
		"देखभाल.md":      "%E0%A4%A6%E0%A5%87%E0%A4%96%E0%A4%AD%E0%A4%BE%E0%A4%B2.md",
		"c:d.md":         "./c:d.md",
		"what?#.md":      "what%3F%23.md",
	} {
		if got := (Place{File: source.New(path, nil)}).sarif("").Artifact.URI; got != want {
			t.Errorf("%q: got %q, want %q", path, got, want)
		}
	}
}

// TestSARIFFingerprints: lines put in above, and a deeper indent, change none; another
// rule, path or text of the line does, and so does a second finding on one line.
func TestSARIFFingerprints(t *testing.T) {
	of := func(rule, path, text string) []string {
		f := source.New(path, []byte(text))
		var fs []Finding
		for i := 0; ; {
			n := strings.Index(text[i:], "36")
			if n < 0 {
				break
			}
			i += n + 2
			fs = append(fs, Finding{Rule: rule, Place: Place{File: f, Span: source.Span{Start: i - 2, End: i}}})
		}
		var got []string
		_, log := sarif(t, fs, nil, "")
		for _, r := range log.Runs[0].Results {
			got = append(got, r.Fingerprints[fingerprintName])
		}
		return got
	}
	first := of("r", "a.md", "- 36 to 36\n")
	if len(first) != 2 || first[0] == first[1] {
		t.Fatalf("got %q", first)
	}
	moved := of("r", "a.md", "# Title\n\n\n  - 36 to 36  \r\n")
	if first[0] != moved[0] || first[1] != moved[1] {
		t.Errorf("got %q, want %q", moved, first)
	}
	for _, other := range [][]string{of("s", "a.md", "- 36 to 36"), of("r", "b.md", "- 36 to 36"), of("r", "a.md", "* 36 to 36")} {
		if other[0] == first[0] {
			t.Errorf("something else has the same fingerprint: %q", other)
		}
	}
}
