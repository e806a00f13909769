package finding

import (
	"bytes"
	"encoding/xml"
	"strings"
	"testing"

	"wardleaf/internal/source"
)

func TestJUnit(t *testing.T) {
	fs := append(sample()[1:], Finding{Rule: "pack-note", Level: Note, What: "no place", Why: "y", Mend: "m"})
	var b strings.Builder
	if err := JUnit(&b, fs, "content"); err != nil {
		t.Fatal(err)
	}
	const want = `<?xml version="1.0" encoding="UTF-8"?>
<testsuites name="content" tests="3" failures="2" errors="0">
  <testsuite name="content/wrapping/ar.md" tests="1" failures="1" errors="0" skipped="0" time="0">
    <testcase name="3:12: number-differs: the text shows 36" classname="content/wrapping/ar.md" time="0">
      <failure message="the text shows 36" type="error">content/wrapping/ar.md:3:12: error: number-differs: the text shows 36&#xA;        - الحرارة ٣٦ درجة&#xA;                  ^&#xA;  why:  A wrong number can hurt.&#xA;  mend: write 36.5&#xA;</failure>
    </testcase>
  </testsuite>
  <testsuite name="content/weighing/module.yaml" tests="1" failures="1" errors="0" skipped="0" time="0">
    <testcase name="module-unlisted: pack.yaml does not list this module" classname="content/weighing/module.yaml" time="0">
      <failure message="pack.yaml does not list this module" type="warning">content/weighing/module.yaml: warning: module-unlisted: pack.yaml does not list this module&#xA;  why:  It is left out.&#xA;  mend: add it&#xA;</failure>
    </testcase>
  </testsuite>
  <testsuite name="content" tests="1" failures="0" errors="0" skipped="0" time="0">
    <testcase name="pack-note: no place" classname="content" time="0">
      <system-out>content: note: pack-note: no place&#xA;  why:  y&#xA;  mend: m&#xA;</system-out>
    </testcase>
  </testsuite>
</testsuites>
`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", b.String(), want)
	}
}

// TestJUnitCounts: findings of one file stand in one suite, wherever they come in the
// list, and the counts are those of the cases.
func TestJUnitCounts(t *testing.T) {
	s := sample()
	for _, fs := range [][]Finding{nil, s, {s[0], s[1], s[0], s[2], {Rule: "r", Level: Note, Place: s[0].Place}}} {
		var b bytes.Buffer
		if err := JUnit(&b, fs, "content"); err != nil {
			t.Fatal(err)
		}
		var all junitSuites
		if err := xml.Unmarshal(b.Bytes(), &all); err != nil {
			t.Fatal(err)
		}
		tests, failures, names := 0, 0, map[string]bool{}
		for _, suite := range all.Suites {
			failed := 0
			for _, c := range suite.Cases {
				if c.Failure != nil {
					failed++
				}
			}
			if suite.Tests != len(suite.Cases) || suite.Failures != failed || names[suite.Name] {
				t.Errorf("suite %s: %d tests and %d failures, but %d and %d cases", suite.Name, suite.Tests, suite.Failures, len(suite.Cases), failed)
			}
			names[suite.Name] = true
			tests, failures = tests+len(suite.Cases), failures+failed
		}
		if all.Tests != tests || all.Failures != failures || tests != len(fs) || failures != Count(fs, Error)+Count(fs, Warning) {
			t.Errorf("%d tests and %d failures are said, %d and %d are there", all.Tests, all.Failures, tests, failures)
		}
	}
}

// TestJUnitIsLegal: what XML 1.0 does not allow is left out, however it comes in.
func TestJUnitIsLegal(t *testing.T) {
	bad := "a\x00\x1b\x7f\u0085\ufffe\uffff\xffz <&\"]]>"
	f := source.New("a\x01.md", []byte(bad+"\n"))
	var b bytes.Buffer
	fs := []Finding{
		{Rule: "r", Level: Error, Place: Place{File: f, Span: source.Span{End: 1}}, What: bad, Why: bad, Mend: bad},
		{Rule: "r", Level: Note, What: bad, Why: bad, Mend: bad},
	}
	if err := JUnit(&b, fs, "p\x02"); err != nil {
		t.Fatal(err)
	}
	if strings.ContainsAny(b.String(), "\x00\x01\x02\x1b\x7f\u0085\ufffe\uffff") {
		t.Errorf("got %q", b.String())
	}
	var all junitSuites
	if err := xml.Unmarshal(b.Bytes(), &all); err != nil {
		t.Fatal(err)
	}
	if got := all.Suites[0].Cases[0].Failure.Message; got != "a\ufffdz <&\"]]>" || all.Suites[0].Name != "p/a.md" {
		t.Errorf("got %q in %q", got, all.Suites[0].Name)
	}
}
