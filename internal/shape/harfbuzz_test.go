package shape

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/bidi"
	"wardleaf/internal/font"
)

// fonts is where the faces lie, seen from this package.
const fonts = "../../templates/fonts"

func library(t testing.TB) *font.Library {
	t.Helper()
	l, err := font.Load(os.DirFS(fonts))
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// packWords returns the different words of the starter pack in one language.
func packWords(t testing.TB, lang string, script *regexp.Regexp) []string {
	t.Helper()
	files, err := filepath.Glob("../../content/*/" + lang + ".md")
	if err != nil || len(files) == 0 {
		t.Fatalf("no lessons in %s: %v", lang, err)
	}
	seen := map[string]bool{}
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range script.FindAllString(string(b), -1) {
			seen[w] = true
		}
	}
	var out []string
	for w := range seen {
		out = append(out, w)
	}
	slices.Sort(out)
	return out
}

// TestHarfBuzz compares glyphs and places with hb-shape of HarfBuzz
// (Debian libharfbuzz-bin) for every word of the starter pack in three scripts.
func TestHarfBuzz(t *testing.T) {
	hb, err := exec.LookPath("hb-shape")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("hb-shape is missing; install libharfbuzz-bin")
		}
		t.Skip("hb-shape is not installed")
	}
	lib := library(t)
	total := 0
	for _, c := range []struct {
		lang, code, face string
		script           *regexp.Regexp
		rtl              bool
	}{
		{"en", "Latn", "NotoSans", regexp.MustCompile(`[\p{Latin}’']+`), false},
		{"hi", "Deva", "NotoSansDevanagari", regexp.MustCompile(`[\p{Devanagari}\x{200C}\x{200D}]+`), false},
		{"ar", "Arab", "NotoNaskhArabic", regexp.MustCompile(`[\p{Arabic}\x{200C}\x{200D}]+`), true},
	} {
		words := packWords(t, c.lang, c.script)
		for _, weight := range []string{"-Regular", "-Bold"} {
			cmd := exec.Command(hb, "--no-glyph-names", "--output-format=json", "--language="+c.lang, filepath.Join(fonts, c.face+weight+".ttf"))
			cmd.Stdin = strings.NewReader(strings.Join(words, "\n") + "\n")
			out, err := cmd.Output()
			if err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(strings.TrimRight(string(out), "\n"), "\n")
			if len(lines) != len(words) {
				t.Fatalf("hb-shape gave %d lines for %d words", len(lines), len(words))
			}
			chain, _, err := lib.Chain(c.code)
			if err != nil {
				t.Fatal(err)
			}
			s := New(chain, c.lang)
			base := bidi.LeftToRight
			if c.rtl {
				base = bidi.RightToLeft
			}
			differ := 0
			for i, w := range words {
				total++
				want := placesHB(t, lines[i])
				got, whole := places(s.Shape([]Run{{Text: w, Bold: weight == "-Bold"}}, base))
				if !whole {
					continue // cut into several words by a line break or a change of script
				}
				if !slices.Equal(got, want) {
					if differ++; differ <= 3 {
						t.Errorf("%s%s %q: glyphs and places %v, HarfBuzz has %v", c.lang, weight, w, got, want)
					}
				}
			}
			t.Logf("%s%s: %d words, %d differ", c.lang, weight, len(words), differ)
		}
	}
	if total < 2000 {
		t.Errorf("compared %d words, want at least 2000", total)
	}
}

// A place is a glyph and where its origin lies, in font units from the start of the word.
type place struct{ glyph, x, y int }

func places(t *Text) (out []place, whole bool) {
	if len(t.Words) != 1 {
		return nil, false
	}
	pen := 0
	for _, c := range t.Words[0].Clusters {
		for _, g := range c.Glyphs {
			out = append(out, place{g.ID, pen + g.X, g.Y})
		}
		pen += c.Advance
	}
	return append(out, place{-1, pen, 0}), true
}

func placesHB(t *testing.T, line string) (out []place) {
	t.Helper()
	var gs []struct{ G, Dx, Dy, Ax int }
	if err := json.Unmarshal([]byte(line), &gs); err != nil {
		t.Fatal(err)
	}
	pen := 0
	for _, g := range gs {
		out = append(out, place{g.G, pen + g.Dx, g.Dy})
		pen += g.Ax
	}
	return append(out, place{-1, pen, 0})
}
