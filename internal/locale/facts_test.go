package locale

import (
	"encoding/json"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"
	"unicode"
	"unicode/utf8"
)

// withFacts lets a catalog give every language it has facts of, labels or not.
func withFacts(c *Catalog) *Catalog {
	for tag := range c.facts {
		c.labels[tag] = true
	}
	return c
}

// icu asks ICU, as Node.js carries it, and reads its answer as JSON.
func icu(t *testing.T, answer any, script string, args ...string) {
	t.Helper()
	node, err := exec.LookPath("node")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("node is missing")
		}
		t.Skip("node is not installed")
	}
	out, err := exec.Command(node, append([]string{"-e", "console.log(JSON.stringify((" + script + ")(process.argv.slice(1))))"}, args...)...).Output()
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(out, answer); err != nil {
		t.Fatal(err)
	}
}

// TestDates compares with ICU for every day of 2024, in each language with the digits
// that its readers use, and where they are others than these, with European ones too.
func TestDates(t *testing.T) {
	c := withFacts(catalog(t))
	days := func(tag string) (list []string) {
		icu(t, &list, `([tag]) => {
			const f = new Intl.DateTimeFormat(tag, {day: "numeric", month: "long", year: "numeric", timeZone: "UTC"});
			return Array.from({length: 366}, (_, i) => f.format(Date.UTC(2024, 0, 1 + i)));
		}`, tag)
		return list
	}
	digits := map[string]string{"hi": "deva", "ar": "arab", "bn": "beng", "my": "mymr", "ta": "tamldec", "te": "telu", "ur": "arabext", "km": "khmr", "th": "thai"}
	for tag := range c.facts {
		for _, system := range slices.Compact([]string{digits[tag], ""}) {
			l, err := c.Locale(tag, system)
			if err != nil {
				t.Fatal(err)
			}
			code := tag
			if tag == "en" {
				code = "en-GB"
			}
			if system == "" {
				system = "latn"
			}
			list := days(code + "-u-nu-" + system)
			for i, want := range list {
				day := time.Date(2024, 1, 1+i, 0, 0, 0, 0, time.UTC)
				if got := l.Date(day); got != want {
					t.Errorf("%s, %s: %s is %q, ICU has %q", tag, system, day.Format(time.DateOnly), got, want)
					break
				}
			}
			if len(list) != 366 {
				t.Errorf("%s: %d days", tag, len(list))
			}
		}
	}
}

// TestFacts compares the other facts with ICU: a language's name, which may begin
// with a capital here, its decimal mark, and the order of its letters.
func TestFacts(t *testing.T) {
	c := catalog(t)
	scripts := map[string]*unicode.RangeTable{
		"Latn": unicode.Latin, "Deva": unicode.Devanagari, "Beng": unicode.Bengali, "Taml": unicode.Tamil, "Telu": unicode.Telugu, "Arab": unicode.Arabic,
		"Aran": unicode.Arabic, "Ethi": unicode.Ethiopic, "Mymr": unicode.Myanmar, "Khmr": unicode.Khmer, "Thai": unicode.Thai,
	}
	for tag, f := range c.facts {
		var said struct {
			Name, Decimal string
			Letters       []string
		}
		digits := map[string]string{"ar": "arab"}[tag]
		if digits == "" {
			digits = "latn"
		}
		icu(t, &said, `([tag, digits, letters]) => ({
			Name: new Intl.DisplayNames(tag, {type: "language"}).of(tag),
			Decimal: new Intl.NumberFormat(tag, {numberingSystem: digits}).formatToParts(1.5).find(p => p.type == "decimal").value,
			Letters: letters.split(" ").sort(new Intl.Collator(tag).compare),
		})`, tag, digits, strings.Join(f.Letters, " "))
		if r, size := utf8.DecodeRuneInString(said.Name); f.Name != said.Name && f.Name != string(unicode.ToTitle(r))+said.Name[size:] {
			t.Errorf("%s: the language calls itself %q, ICU has %q", tag, f.Name, said.Name)
		}
		if f.Decimal != said.Decimal {
			t.Errorf("%s: decimal mark %q, ICU has %q", tag, f.Decimal, said.Decimal)
		}
		if abjad := tag == "ar" || tag == "ur"; !abjad && !slices.Equal(f.Letters, said.Letters) {
			t.Errorf("%s: letters %v, ICU sorts them %v", tag, f.Letters, said.Letters)
		}
		for _, text := range append(append([]string{f.Name}, f.Letters...), f.Months...) {
			for _, r := range text {
				if scripts[f.Script] == nil || !unicode.In(r, scripts[f.Script], unicode.M) && r != 0x0640 { // tatweel
					t.Errorf("%s: %q is not written in %s", tag, text, f.Script)
				}
			}
		}
		if slices.Sort(f.Letters); len(slices.Compact(f.Letters)) < 6 || len(f.Months) != 12 {
			t.Errorf("%s: %d letters, %d months", tag, len(f.Letters), len(f.Months))
		}
	}
}

// TestWithoutLabels has a language whose facts are known, but that nobody has
// translated the labels into, be refused with what is missing.
func TestWithoutLabels(t *testing.T) {
	read := func(name string) *fstest.MapFile {
		data, err := os.ReadFile(folder + "/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return &fstest.MapFile{Data: data}
	}
	c, err := Load(fstest.MapFS{"languages.json": read("languages.json"), "en.json": read("en.json")})
	if err != nil {
		t.Fatal(err)
	}
	if !c.Has("en") || c.Has("km") || c.Has("xx") {
		t.Errorf("en %v, km %v, xx %v; want only the first", c.Has("en"), c.Has("km"), c.Has("xx"))
	}
	for tag, want := range map[string]string{
		"km": "add locales/km.json (its dates, letters and script are known already)",
		"xx": "add locales/xx.json and its entry in locales/languages.json",
	} {
		if _, err := c.Locale(tag, ""); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: error %v, want one that says %q", tag, err, want)
		}
	}
}

// TestEveryMessageFileHasFacts finds labels that no language could use.
func TestEveryMessageFileHasFacts(t *testing.T) {
	c := catalog(t)
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if tag, ok := strings.CutSuffix(f.Name(), ".json"); ok && tag != "languages" && !c.Has(tag) {
			t.Errorf("%s has no entry in languages.json", f.Name())
		}
	}
}
