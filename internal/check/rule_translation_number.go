package check

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
)

// Linked numbers are held to those that are kept by number-differs; this holds the rest.
// Numerals are compared as a set with repeats, whatever their order, digits and decimal
// mark. A number word may stand for a numeral; of words alone only an exchange is found,
// since languages have words for two, half and twice in their grammar.
var translationNumber = &Rule{
	Name:   "translation-number",
	Title:  "A translation has other numbers than its source",
	Why:    "A number that changed on the way is the most dangerous mistake a translation can hold, and nobody sees it who reads one language only.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: Feed 8 times.\nhi.md: ६ बार दूध पिलाएँ।\n",
	After:  "en.md: Feed 8 times.\nhi.md: ८ बार दूध पिलाएँ।\n",
	Run: func(p *Pass) {
		p.besides(func(b beside) {
			here, there := p.words(b.l.Lang), p.words(b.src.Lang)
			t, s := here.quantities(saidWithout(b.Target.Inlines, "source", "number")), there.quantities(saidWithout(b.Source.Inlines, "source", "number"))
			lacking, extra := unmatched(s.digits, t.digits), unmatched(t.digits, s.digits)
			lacking, extra = unmatched(lacking, t.words), unmatched(extra, s.words)
			if len(lacking)+len(extra) > 0 {
				p.Report(b.where(), "the numbers differ from the source: "+difference(lacking, extra), "write the numbers of the source, or correct the source first")
				return
			}
			all := slices.Concat(t.digits, t.words)
			if slices.Contains(s.words, "0.5") {
				return // two and a half is one word in some languages
			}
			gone := unmatched(s.words, all)
			come := unmatched(t.words, slices.Concat(s.digits, s.words))
			if len(gone) > 0 && len(come) > 0 {
				p.Report(b.where(), fmt.Sprintf("the source has the number %s in words, and the translation %s", strings.Join(gone, ", "), strings.Join(come, ", ")),
					"compare the two with someone who reads both languages")
			}
		})
	},
}

// quantities are the numbers of a text as digits with a point, written in digits and in words.
type quantities struct{ digits, words []string }

func (x *lexicon) quantities(text string) quantities {
	q := quantities{digits: amounts(text)}
	text = fold(text)
	for _, n := range x.numbers {
		for range findWords(text, n.form) {
			if n.value != "1" { // it is also an article, or "some"
				q.words = append(q.words, strings.TrimSuffix(n.value, "x"))
			}
		}
		text = cutWords(text, n.form)
	}
	return q
}

// unmatched lists what of want is not in have, each as often as it lacks.
func unmatched(want, have []string) []string { return differ(have, want) }
