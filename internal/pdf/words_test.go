package pdf

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wardleaf/internal/bidi"
	"wardleaf/internal/font"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	shaping "wardleaf/internal/shape"
)

// A script is set in one font; languages written in it have word lists.
type script struct {
	code, font string
	languages  []string
	rtl        bool
}

var scripts = []script{
	{"Latn", "NotoSans", []string{"en", "fr", "es", "pt", "sw"}, false},
	{"Deva", "NotoSansDevanagari", []string{"hi", "ne"}, false},
	{"Beng", "NotoSansBengali", []string{"bn"}, false},
	{"Taml", "NotoSansTamil", []string{"ta"}, false},
	{"Telu", "NotoSansTelugu", []string{"te"}, false},
	{"Arab", "NotoNaskhArabic", []string{"ar", "fa", "ps"}, true},
	{"Aran", "NotoNastaliqUrdu", []string{"ur"}, true},
	{"Ethi", "NotoSansEthiopic", []string{"am"}, false},
	{"Mymr", "NotoSansMyanmar", []string{"my"}, false},
	{"Khmr", "NotoSansKhmer", []string{"km"}, false},
	{"Thai", "NotoSansThai", []string{"th"}, false},
}

// wordList returns the words of a language that package shape is tested with, too.
func wordList(t testing.TB, lang string) []string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "shape", "testdata", "words", lang+".txt"))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Fields(string(b))
}

// A setter shapes text of one language as pieces do.
type setter struct {
	*shaping.Shaper
	base bidi.Direction
}

func (s script) setter(t testing.TB, lang string) setter {
	t.Helper()
	fonts, err := font.Load(os.DirFS(fontFolder))
	if err != nil {
		t.Fatal(err)
	}
	chain, _, err := fonts.Chain(s.code)
	if err != nil {
		t.Fatal(err)
	}
	base := bidi.LeftToRight
	if s.rtl {
		base = bidi.RightToLeft
	}
	return setter{shaping.New(chain, lang, shaping.NewCache()), base}
}

// line sets text on one line from x on, size unscaled.
func (s setter) line(text string, bold bool, size, x, y measure.Length) (runs []page.Item) {
	t := s.Shape([]shaping.Run{{Text: text, Bold: bold}}, s.base)
	for _, i := range t.Order(t.Words) {
		w := &t.Words[i]
		r := &page.GlyphRun{Face: w.Face, Size: size, X: x, Y: y, RTL: w.Level%2 == 1, Clusters: w.Clusters}
		runs, x = append(runs, r), x+r.Width()
	}
	return runs
}
