package pdf

import (
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// TestExtractionOfWords has poppler read every word of every list back. Every second
// line is bold.
func TestExtractionOfWords(t *testing.T) {
	const aLine = 4 // words
	for _, s := range scripts {
		for _, lang := range s.languages {
			words, set := wordList(t, lang), s.setter(t, lang)
			d := &page.Document{Title: lang}
			y, bold := measure.MM(1000), false
			for line := range slices.Chunk(words, aLine) {
				if y += measure.Pt(30); y > measure.MM(280) {
					d.Pages = append(d.Pages, page.Page{Size: measure.Size{Width: measure.MM(400), Height: measure.MM(297)}})
					y = measure.MM(20)
				}
				items := &d.Pages[len(d.Pages)-1].Items
				*items = append(*items, set.line(strings.Join(line, " "), bold, measure.Pt(10), measure.MM(20), y)...)
				bold = !bold
			}
			got := strings.Fields(strings.Map(func(r rune) rune {
				if r >= '\u202A' && r <= '\u202E' { // poppler's own marks of direction
					return -1
				}
				return r
			}, run(t, write(t, d), "pdftotext", "FILE", "-")))
			if len(got) != len(words) {
				t.Errorf("%s: %d words came back, want %d", lang, len(got), len(words))
			}
			differ := 0
			for i := range min(len(got), len(words)) {
				if got[i] != words[i] {
					if differ++; differ <= 5 {
						t.Errorf("%s: %q came back as %q (%+q, %+q)", lang, words[i], got[i], words[i], got[i])
					}
				}
			}
			t.Logf("%s: %d words, %d differ", lang, len(words), differ)
		}
	}
}
