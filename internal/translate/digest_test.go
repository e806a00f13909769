package translate

import (
	"strings"
	"testing"
	"testing/fstest"

	"wardleaf/internal/load"
	"wardleaf/internal/pack"
)

// files are a pack whose lesson links to one of two numbers and shows a figure.
var files = map[string]string{
	"pack.yaml":                 "title: {en: Test}\nversion: \"1\"\nsource-language: en\nlanguages: [en]\nmodules: [wrapping]\n",
	"facility.yaml":             "name: {en: Ward}\n",
	"numbers.yaml":              "warm:\n  low: 36.5\n  high: 37.5\n  unit: °C\n  source: manual\n  place: page 1\n  status: published\nother:\n  amount: 40\n  unit: seconds\n  status: common-practice\n",
	"sources.yaml":              "manual:\n  author: Author\n  title: Manual\n  year: 2003\n",
	"terms.yaml":                "",
	"wrapping/module.yaml":      "minutes: 10\n",
	"wrapping/en.md":            "# Wrapping\n\nKeep [36.5 to 37.5 °C](number:warm), yes, [36.5 to 37.5 °C](number:warm).\n\n![Tuck](figures/tuck.svg)\n",
	"wrapping/figures/tuck.svg": "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\"><path d=\"M1 1L9 9\"/></svg>\n",
}

// read loads the pack with one text in one of its files replaced.
func read(t *testing.T, name, from, to string) (*pack.Pack, *pack.Module) {
	t.Helper()
	fsys := fstest.MapFS{}
	for n, text := range files {
		if n == name {
			if !strings.Contains(text, from) {
				t.Fatalf("%s does not hold %q", n, from)
			}
			text = strings.Replace(text, from, to, 1)
		}
		fsys[n] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
	}
	p, _, err := load.Pack(fsys, "pack")
	if err != nil {
		t.Fatal(err)
	}
	return p, p.Modules[0]
}

// TestDigest changes one thing at a time: what a clinician reads changes the digest, and nothing else does.
func TestDigest(t *testing.T) {
	p, m := read(t, "", "", "")
	base := Digest(p, m, "en")
	if len(base) != len("sha256:")+64 {
		t.Fatalf("got %q", base)
	}
	if got := Digest(p, m, "hi"); got != "" {
		t.Errorf("a lesson that is not there: %q", got)
	}
	for _, k := range []struct {
		name, from, to string
		same           bool
	}{
		{"wrapping/en.md", "yes", "no", false},
		{"wrapping/en.md", "yes", "yes ", false},
		{"numbers.yaml", "36.5", "36.0", false},
		{"numbers.yaml", "37.5", "38.5", false},
		{"numbers.yaml", "°C", "°F", false},
		{"numbers.yaml", "source: manual", "source: none", false},
		{"numbers.yaml", "page 1", "page 2", false},
		{"numbers.yaml", "status: published", "status: common-practice", false},
		{"numbers.yaml", "  unit: °C", "  compare: up-to\n  unit: °C", false},
		{"numbers.yaml", "warm:", "warmer:", false},
		{"sources.yaml", "2003", "2004", false},
		{"wrapping/figures/tuck.svg", "L9 9", "L9 8", false},
		{"numbers.yaml", "amount: 40", "amount: 50", true}, // not linked to
		{"numbers.yaml", "warm:", "# a remark\nwarm:", true},
		{"wrapping/module.yaml", "10", "20", true},
		{"pack.yaml", "Test", "Other", true},
	} {
		p, m := read(t, k.name, k.from, k.to)
		if got := Digest(p, m, "en"); (got == base) != k.same {
			t.Errorf("%s: %q for %q: the same digest: %v", k.name, k.to, k.from, got == base)
		}
	}
	m.Record.CriticalSteps = []pack.StepRef{{Part: 1, Step: 1}}
	if Digest(p, m, "en") == base {
		t.Error("a step that is now marked as never to be missed left the digest as it was")
	}
}

func TestCovers(t *testing.T) {
	p, m := read(t, "", "", "")
	numbers, figures := Covers(p, m.Lessons["en"])
	if strings.Join(numbers, " ") != "warm" || strings.Join(figures, " ") != "wrapping/figures/tuck.svg" {
		t.Errorf("got %v and %v", numbers, figures)
	}
}

func TestSignedOff(t *testing.T) {
	p, m := read(t, "", "", "")
	for _, k := range []struct {
		lang, digest string
		want         bool
	}{
		{"en", Digest(p, m, "en"), true},
		{"hi", Digest(p, m, "en"), false},
		{"en", "", false},
		{"hi", "", false},
	} {
		m.Record.SignOffs = []pack.SignOff{{Lang: k.lang, Digest: k.digest}}
		if got := SignedOff(p, m, "en"); got != k.want {
			t.Errorf("%+v: got %v", k, got)
		}
		if k.digest == "" && SignedOff(p, m, "hi") {
			t.Errorf("%+v: a lesson that is not there is signed off", k)
		}
	}
}
