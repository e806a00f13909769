package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

// Only a turn is found: more where the source says less, or less where it says more.
var translationCompare = &Rule{
	Name:   "translation-compare",
	Title:  "A translation compares the other way round than its source",
	Why:    "\"More than\" for \"less than\" sends home the baby who needs help.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: At least 8 hours.\nhi.md: ८ घंटे से कम।\n",
	After:  "en.md: At least 8 hours.\nhi.md: कम से कम ८ घंटे।\n",
	Run: func(p *Pass) {
		p.besides(func(b beside) {
			here, there := p.words(b.l.Lang), p.words(b.src.Lang)
			for _, ph := range b.phrases {
				if len(amounts(ph[1])) == 0 {
					continue // "under the ear" compares nothing
				}
				t, s := here.comparisons(ph[0]), there.comparisons(ph[1])
				if len(t) == 1 && len(s) == 1 && t[true] != s[true] {
					p.Report(b.where(), fmt.Sprintf("the comparison points the other way than in %q", ph[1]),
						"compare the two with someone who reads both languages")
				}
			}
		})
	},
}
