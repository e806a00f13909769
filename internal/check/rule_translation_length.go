package check

import (
	"fmt"
	"slices"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

// Languages need more or fewer characters for the same thing, but each about as many
// everywhere: a block is compared with the middle of its own lesson.
var translationLength = &Rule{
	Name:   "translation-length",
	Title:  "A block is much shorter or longer than its source",
	Why:    "A sentence was lost on the way, or something was added that no clinician has read.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: Sit down. Hold the baby upright. Keep one hand on the back.\nhi.md: बैठें।\n",
	After:  "en.md: Sit down. Hold the baby upright. Keep one hand on the back.\nhi.md: बैठें। शिशु को सीधा पकड़ें। एक हाथ पीठ पर रखें।\n",
	Run: func(p *Pass) {
		type measured struct {
			beside
			ratio float64
		}
		var all []measured
		var of *lesson.Lesson
		flush := func() {
			var ratios []float64
			for _, m := range all {
				ratios = append(ratios, m.ratio)
			}
			slices.Sort(ratios)
			if len(ratios) >= 5 {
				middle := ratios[len(ratios)/2]
				for _, m := range all {
					if r := m.ratio / middle; r < 0.45 || r > 2.2 {
						p.Report(m.where(), fmt.Sprintf("the block has %.1f times the length that its source would lead one to expect", r),
							"see whether something was lost or added")
					}
				}
			}
			all = nil
		}
		p.besides(func(b beside) {
			if b.l != of {
				flush()
				of = b.l
			}
			t, s := utf8.RuneCountInString(b.text), utf8.RuneCountInString(b.source)
			if s >= 40 || t >= 100 {
				all = append(all, measured{b, float64(t) / float64(max(s, 1))})
			}
		})
		flush()
	},
}
