package shape

import (
	"os"
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

// A writing is how a language is written, and in which font.
type writing struct {
	lang, script, font string
	letters            *regexp.Regexp // a word of it
	base               bidi.Direction
}

// writings lists every script that can be set, each with the languages that words are at hand in.
var writings = func() (out []writing) {
	for _, w := range []struct {
		languages, script, font, letters string
	}{
		{"en fr es pt sw", "Latn", "NotoSans", `[\p{Latin}’']+`},
		{"hi ne", "Deva", "NotoSansDevanagari", `[\p{Devanagari}\x{200C}\x{200D}]+`},
		{"bn", "Beng", "NotoSansBengali", `[\p{Bengali}\x{200C}\x{200D}]+`},
		{"ta", "Taml", "NotoSansTamil", `\p{Tamil}+`},
		{"te", "Telu", "NotoSansTelugu", `[\p{Telugu}\x{200C}\x{200D}]+`},
		{"ar fa ps", "Arab", "NotoNaskhArabic", `[\p{Arabic}\x{200C}\x{200D}]+`},
		{"ur", "Aran", "NotoNastaliqUrdu", `[\p{Arabic}\x{200C}\x{200D}]+`},
		{"am", "Ethi", "NotoSansEthiopic", `\p{Ethiopic}+`},
		{"my", "Mymr", "NotoSansMyanmar", `\p{Myanmar}+`},
		{"km", "Khmr", "NotoSansKhmer", `\p{Khmer}+`},
		{"th", "Thai", "NotoSansThai", `\p{Thai}+`},
	} {
		base := bidi.LeftToRight
		if w.script == "Arab" || w.script == "Aran" {
			base = bidi.RightToLeft
		}
		for lang := range strings.FieldsSeq(w.languages) {
			out = append(out, writing{lang, w.script, w.font, regexp.MustCompile(w.letters), base})
		}
	}
	return out
}()

// shaper returns a shaper for the language, and the leading of its script.
func (w writing) shaper(t testing.TB, lib *font.Library) (*Shaper, float64) {
	t.Helper()
	chain, leading, err := lib.Chain(w.script)
	if err != nil {
		t.Fatal(err)
	}
	return New(chain, w.lang, NewCache()), leading
}

// listed returns the words of the language's word list; see testdata/words/README.md.
func (w writing) listed(t testing.TB) []string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", "words", w.lang+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Fields(string(b))
}

var letter = regexp.MustCompile(`\p{L}`)

// inLessons returns the different words of the starter pack in the language. Numbers
// are none: their digits run the other way in Arabic.
func (w writing) inLessons(t testing.TB) (words []string) {
	t.Helper()
	files, err := filepath.Glob("../../content/*/" + w.lang + ".md")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, word := range w.letters.FindAllString(string(b), -1) {
			if letter.MatchString(word) {
				words = append(words, word)
			}
		}
	}
	slices.Sort(words)
	return slices.Compact(words)
}
