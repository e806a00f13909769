package check

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"golang.org/x/tools/txtar"

	"wardleaf/internal/finding"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
)

var today = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// withoutFixtures lists the rules whose bad input cannot stand in a text file, and
// where they are tested instead.
var withoutFixtures = map[string]string{
	"file-not-text":   "package load, TestBadInput",
	"file-too-large":  "package load, TestBadInput",
	"file-unreadable": "package load, TestBadInput",
	"booklet-thick":   "TestSheets",
	"glyph-missing":   "TestGlyphs",

	"handback-malformed": "package exchange, TestDamaged",
	"handback-mismatch":  "package exchange, TestDamaged",
	"handback-newer":     "package exchange, TestMeanwhile",
	"handback-partial":   "package exchange, TestNewLesson",
	"handback-stale":     "package exchange, TestMeanwhile",
	"handback-state":     "package exchange, TestDamaged",
	"handback-tag-lost":  "package exchange, TestDamaged",
	"handback-text":      "package exchange, TestDamaged",

	"language-unknown": "package assemble, TestLanguageUnknown",

	"page-overflow": "TestPages",
	"text-small":    "TestPages",
	"word-cut":      "TestPages",

	"handout-too-long":        "TestTooLong",
	"wall-checklist-too-long": "TestTooLong",
}

// TestFixtures loads and checks the fixtures of every rule, each a pack made of
// testdata/base.txtar and the files in it. The comment of a fixture holds the findings
// it must give, no more and no fewer, one a line:
//
//	wrapping/en.md:3:1 rule-name
//	wrapping/en.md:3:1 rule-name: part of what it says or of the mend
//
// A file whose text is "(none)" is taken out of the pack. Lines that begin with # are remarks.
func TestFixtures(t *testing.T) {
	base := archive(t, "testdata/base.txtar")
	for _, r := range All() {
		if _, exempt := withoutFixtures[r.Name]; exempt {
			continue
		}
		for _, name := range []string{"bad", "good"} {
			t.Run(r.Name+"/"+name, func(t *testing.T) {
				fixture := archive(t, filepath.Join("testdata", r.Name, name+".txtar"))
				got := found(t, merge(base, fixture))
				if r != translationBasisMissing { // few translations of fixtures have a basis
					got = slices.DeleteFunc(got, func(f finding.Finding) bool { return f.Rule == translationBasisMissing.Name })
				}
				want := expectations(string(fixture.Comment))
				if bad := slices.ContainsFunc(want, func(e expected) bool { return e.rule == r.Name }); bad != (name == "bad") {
					t.Errorf("expects the rule: %v", bad)
				}
				compare(t, got, want)
			})
		}
	}
}

func TestBaseIsClean(t *testing.T) {
	base := archive(t, "testdata/base.txtar")
	compare(t, found(t, merge(base, &txtar.Archive{})), nil)
}

// TestEveryFixtureHasItsRule finds folders of rules that are no more.
func TestEveryFixtureHasItsRule(t *testing.T) {
	entries, err := os.ReadDir("testdata")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if _, exempt := withoutFixtures[e.Name()]; e.IsDir() && (Find(e.Name()) == nil || exempt) {
			t.Errorf("testdata/%s belongs to no rule with fixtures", e.Name())
		}
	}
}

// languages is what the program knows of languages.
func languages(t *testing.T) *locale.Catalog {
	t.Helper()
	c, err := catalog()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

var catalog = sync.OnceValues(func() (*locale.Catalog, error) { return locale.Load(os.DirFS("../../locales")) })

type expected struct{ place, rule, words string }

func expectations(comment string) []expected {
	var out []expected
	for line := range strings.Lines(comment) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		place, rest, _ := strings.Cut(line, " ")
		rule, words, _ := strings.Cut(rest, ": ")
		out = append(out, expected{place, rule, words})
	}
	return out
}

func compare(t *testing.T, got []finding.Finding, want []expected) {
	t.Helper()
	left := slices.Clone(want)
	for _, f := range got {
		place := place(f)
		i := slices.IndexFunc(left, func(e expected) bool {
			return e.place == place && e.rule == f.Rule && strings.Contains(f.What+"; "+f.Mend, e.words)
		})
		if i < 0 {
			t.Errorf("not expected: %s %s: %s; %s", place, f.Rule, f.What, f.Mend)
			continue
		}
		left = slices.Delete(left, i, i+1)
	}
	for _, e := range left {
		t.Errorf("not found: %s %s: %s", e.place, e.rule, e.words)
	}
}

func place(f finding.Finding) string {
	if len(f.Place.File.Bytes) == 0 {
		return f.Place.File.Path
	}
	line, column := f.Place.File.Position(f.Place.Span.Start)
	return fmt.Sprintf("%s:%d:%d", f.Place.File.Path, line, column)
}

func archive(t *testing.T, name string) *txtar.Archive {
	t.Helper()
	a, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func merge(base, fixture *txtar.Archive) fstest.MapFS {
	fsys := fstest.MapFS{}
	for _, f := range slices.Concat(base.Files, fixture.Files) {
		if string(f.Data) == "(none)\n" {
			delete(fsys, f.Name)
		} else {
			fsys[f.Name] = &fstest.MapFile{Data: f.Data, Mode: 0o644}
		}
	}
	return fsys
}

// found is everything that reading and checking say of a pack.
func found(t *testing.T, fsys fstest.MapFS) []finding.Finding {
	t.Helper()
	p, fs, err := load.Pack(fsys, "pack")
	if err != nil {
		t.Fatal(err)
	}
	fs = append(fs, Run(p, today, languages(t))...)
	Silence(p, fs, today)
	fs = append(fs, Unused(p, fs, today)...)
	fs = slices.DeleteFunc(fs, func(f finding.Finding) bool { return f.Silenced != "" })
	for _, f := range fs {
		r := Find(f.Rule)
		switch {
		case r == nil:
			t.Errorf("there is no rule %s", f.Rule)
		case r.Level != f.Level:
			t.Errorf("%s is found at level %v, and described at level %v", f.Rule, f.Level, r.Level)
		case f.What == "" || f.Why == "" || f.Mend == "":
			t.Errorf("%s does not say what, why and how to mend it", f.Rule)
		}
	}
	return fs
}
