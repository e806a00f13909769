package translate

import (
	"fmt"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

const manyUnits = `# Holding *well* {.x}

Hello [wrap](term:wrap).

## Caution {.caution}

- Call **now**.

## Cloth {.steps}

1. Wash.
2. Tuck it
   in.

   ![Tuck \] it in](figures/tuck.svg "x")

   - softly
   - slowly

## Band {.steps}

Sit down.

1. Pull.

### A note

2. Rest.

## Checklist {.checklist}

- [ ] Face free

## Quiz {.quiz}

1. Which?

   - [ ] One
   - [x] Two

   > Because.

## More

| a | |
|---|---|
| c | **d** |

    code

> quoted
`

// TestUnits gives every unit of a lesson: ID, kind, step, and the bytes of its span.
func TestUnits(t *testing.T) {
	p, m := read(t, "wrapping/en.md", files["wrapping/en.md"], manyUnits)
	l := m.Lessons[p.Source]
	want := `title|title|0|Holding *well*
lead.1|paragraph|0|Hello [wrap](term:wrap)
caution.heading|heading|0|Caution
caution.1.1|list item|0|Call **now**
steps.heading|heading|0|Cloth
steps.1.1|list item|1|Wash.
steps.2.1|list item|2|Tuck it\n   in.
steps.2.2|alternative text|2|Tuck \\] it in
steps.2.3.1|list item|2|softly
steps.2.4.1|list item|2|slowly
steps-2.heading|heading|0|Band
steps-2.1|paragraph|0|Sit down.
steps-2.2.1|list item|1|Pull.
steps-2.3|heading|0|A note
steps-2.4.1|list item|2|Rest.
checklist.heading|heading|0|Checklist
checklist.1.1|list item|0|Face free
quiz.heading|heading|0|Quiz
quiz.1.1|question|1|Which?
quiz.1.2.1|answer|1|One
quiz.1.3.1|answer|1|Two
quiz.1.4.1|reason|1|Because.
prose.heading|heading|0|More
prose.1.1.1|table cell|0|a
prose.1.2.1|table cell|0|c
prose.1.2.2|table cell|0|**d**
prose.3.1|paragraph|0|quoted
`
	var got strings.Builder
	for _, u := range Units(l) {
		text := fmt.Sprintf("%q", l.File.Bytes[u.Span.Start:u.Span.End])
		fmt.Fprintf(&got, "%s|%s|%d|%s\n", u.ID, u.Kind, u.Step, text[1:len(text)-1])
	}
	w := strings.ReplaceAll(want, "(term:wrap)\n", "(term:wrap).\n")
	w = strings.ReplaceAll(w, "**now**\n", "**now**.\n")
	if got.String() != w {
		t.Errorf("got\n%s\nwant\n%s", got.String(), w)
	}
	if Units(nil) != nil || Units(&lesson.Lesson{}) != nil {
		t.Error("units of nothing")
	}
}

// TestUnitDigest changes a unit in one way at a time.
func TestUnitDigest(t *testing.T) {
	const base = "Keep **warm**, [36.5 to 37.5 °C](number:warm)."
	digest := func(text, number string) string {
		t.Helper()
		fsys := files["wrapping/en.md"]
		p, m := read(t, "wrapping/en.md", fsys, "# Wrapping\n\n"+text+"\n")
		if number != "" {
			p.Numbers["warm"].Low = number
		}
		us := Units(m.Lessons["en"])
		if len(us) != 2 {
			t.Fatalf("%q: %d units", text, len(us))
		}
		return UnitDigest(us[1])
	}
	want := digest(base, "")
	if len(want) != 12 || strings.Trim(want, "0123456789abcdef") != "" {
		t.Fatalf("digest %q", want)
	}
	if got := digest(base, "36.0"); got != want {
		t.Error("the value of a number changes the digest; number-differs says so already")
	}
	for text, same := range map[string]bool{
		"Keep __warm__, [36.5 to 37.5 °C](<number:warm> \"x\").":       true,
		"Keep  **warm**,\n[36.5 to 37.5\n&deg;C](number:warm).":        true,
		"Keep warm, [36.5 to 37.5 °C](number:warm).":                   false,
		"Keep *warm*, [36.5 to 37.5 °C](number:warm).":                 false,
		"Keep **warm**, [36.5 to 37.5 °C](number:other).":              false,
		"Keep **warm**, 36.5 to 37.5 °C.":                              false,
		"Keep **warm**, [36.5 to 37.6 °C](number:warm).":               false,
		"Keep **warm**,\\\n[36.5 to 37.5 °C](number:warm).":            false,
		"Keep **warm,** [36.5 to 37.5 °C](number:warm).":               false,
		"Keep **warm**, [36.5 to 37.5 °C](number:warm). Always.":       false,
		"Keep **warm**, [36.5 to 37.5\u00a0°C](number:warm).":          false,
		"Keep `warm`, [36.5 to 37.5 °C](number:warm).":                 false,
		"![Keep **warm**, 36.5 to 37.5 °C.](figures/tuck.svg)":         false,
		"Keep **warm**, [36.5 to 37.5 °C](number:warm) ![](sheet:x-y)": false,
	} {
		if got := digest(text, ""); (got == want) != same {
			t.Errorf("%q: the same digest: %v", text, got == want)
		}
	}
}

// TestPaired follows a block from new to current to changed.
func TestPaired(t *testing.T) {
	p, m := read(t, "", "", "")
	m.Lessons["hi"] = m.Lessons["en"]
	standings := func() (n, c int) {
		pairing := Paired(p, m, "hi")
		return len(pairing.New()), len(pairing.Stale())
	}
	if n, c := standings(); n != 3 || c != 0 {
		t.Errorf("without a basis: %d new, %d changed", n, c)
	}
	followed := Paired(p, m, "hi").Followed()
	want := basisRemark
	for i, id := range []string{"title", "lead.1", "lead.2"} {
		want += id + " " + followed[i].Digest + " " + UnitDigest(*followed[i].Target) + "\n"
	}
	if got := string(BasisFile(followed)); got != want {
		t.Errorf("got %q", got)
	}
	if Paired(p, m, "en") != nil {
		t.Error("the source language is paired with itself")
	}
	pairing := Paired(p, m, "ar")
	if n := len(pairing.New()); n != 3 || len(pairing.Lacking) != 3 || len(pairing.Extra) != 0 {
		t.Errorf("a language without the lesson: %d new", n)
	}
	if string(BasisFile(pairing.Followed())) != basisRemark {
		t.Error("blocks without a translation have a basis")
	}
}

// TestAlign puts a step in and takes one out: the others keep their translations.
func TestAlign(t *testing.T) {
	lesson := func(steps ...string) string {
		s := "# T\n\n## Steps {.steps}\n\n"
		for _, x := range steps {
			s += "1. " + x + "\n"
		}
		return s
	}
	p, m := read(t, "wrapping/en.md", files["wrapping/en.md"], lesson("one", "two", "three"))
	_, translated := read(t, "wrapping/en.md", files["wrapping/en.md"], lesson("eins", "zwei", "drei"))
	m.Lessons["de"] = translated.Lessons["en"]
	basis := &pack.Basis{Units: map[string]pack.BasisUnit{}}
	for _, pair := range Paired(p, m, "de").Followed() {
		basis.Units[pair.Source.ID] = pack.BasisUnit{Digest: pair.Basis}
	}
	m.Basis["de"] = basis
	for _, k := range []struct{ steps, want string }{
		{"one two three", "eins zwei drei"},
		{"one new two three", "eins - zwei drei"},
		{"new one two three", "- eins zwei drei"},
		{"one three", "eins drei"},
		{"three", "drei"},
		{"one changed three", "eins zwei! drei"},
		{"one two three four five", "eins zwei drei - -"},
		{"one two changed new", "eins zwei drei! -"},
	} {
		_, now := read(t, "wrapping/en.md", files["wrapping/en.md"], lesson(strings.Fields(k.steps)...))
		m.Lessons["en"] = now.Lessons["en"]
		var got []string
		for _, pair := range Paired(p, m, "de").Pairs[2:] {
			switch s := pair.Standing(); {
			case pair.Target == nil:
				got = append(got, "-")
			case s == Changed:
				got = append(got, plain(*pair.Target)+"!")
			default:
				got = append(got, plain(*pair.Target))
			}
		}
		if g := strings.Join(got, " "); g != k.want {
			t.Errorf("%s: got %s, want %s", k.steps, g, k.want)
		}
	}
}

func plain(u Unit) string { return lesson.Plain(u.Inlines) }
