package check

import (
	"os"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
	"wardleaf/internal/sheet"
)

const guide = "../../content/writing.md"

// TestWritingGuide puts the examples of the guide for writers together as a pack, in
// which the checker then finds nothing but notes.
func TestWritingGuide(t *testing.T) {
	text, err := os.ReadFile(guide)
	if err != nil {
		t.Fatal(err)
	}
	pack := fstest.MapFS{}
	for _, m := range regexp.MustCompile("(?ms)^```(?:yaml|markdown) (\\S+)\n(.*?)^```$").FindAllStringSubmatch(string(text), -1) {
		pack[m[1]] = &fstest.MapFile{Data: []byte(m[2]), Mode: 0o644}
	}
	if len(pack) != 7 {
		t.Errorf("the guide shows %d files, want 7", len(pack))
	}
	p, found, err := load.Pack(pack, "guide")
	if err != nil || p == nil {
		t.Fatal(err, found)
	}
	for _, f := range append(found, Run(p, today, languages(t))...) {
		if f.Level > finding.Note {
			t.Errorf("%s %s: %s", place(f), f.Rule, f.What)
		}
	}
}

// TestWritingGuideIsWhole holds the guide against what the program knows: every name in
// a record, part of a lesson and sheet.
func TestWritingGuideIsWhole(t *testing.T) {
	b, err := os.ReadFile(guide)
	if err != nil {
		t.Fatal(err)
	}
	text := string(b)
	said := func(name string) bool {
		return regexp.MustCompile("[`{ ]\\.?" + regexp.QuoteMeta(name) + "[`:]|(?m)^" + regexp.QuoteMeta(name) + ":").MatchString(text)
	}
	for _, r := range lesson.Roles {
		if !said(string(r)) {
			t.Errorf("the guide lacks the part %s", r)
		}
	}
	for _, name := range sheet.Names() {
		if !said(name) {
			t.Errorf("the guide lacks the sheet %s", name)
		}
	}
	for _, unit := range knownUnits {
		if !strings.Contains(text, "`"+unit+"`") {
			t.Errorf("the guide lacks the unit %s", unit)
		}
	}
	// A name that no record has is answered with all that it may have.
	pack := fstest.MapFS{}
	for name, data := range map[string]string{
		"pack.yaml":     "xx: 1\nsession: {xx: 1}\nsilenced: [{xx: 1}]\nsource-language: en\nlanguages: [en]\nmodules: [a]\n",
		"facility.yaml": "xx: 1\ncontacts: {a: {xx: 1}}\nfeeding-table: {xx: 1, bands: [{xx: 1}]}\n",
		"numbers.yaml":  "a: {xx: 1}\n",
		"sources.yaml":  "a: {xx: 1}\n",
		"a/module.yaml": "xx: 1\nreview: {xx: 1}\nsign-offs: [{xx: 1}]\ntranslations: {hi: {xx: 1}}\n",
		"a/en.md":       "# A\n",
	} {
		pack[name] = &fstest.MapFile{Data: []byte(data), Mode: 0o644}
	}
	_, found, err := load.Pack(pack, "names")
	if err != nil {
		t.Fatal(err)
	}
	records := 0
	for _, f := range found {
		if f.Rule != "record-key-unknown" {
			continue
		}
		records++
		_, names, _ := strings.Cut(f.Mend, "use one of: ")
		for _, name := range strings.Split(names, ", ") {
			if !said(name) {
				t.Errorf("the guide lacks %s (%s)", name, f.What)
			}
		}
	}
	if records != 13 {
		t.Errorf("%d records answered, want 13", records)
	}
}
