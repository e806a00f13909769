package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

// Trainer notes may speak the language of the ward.
var jargonUnexplained = &Rule{
	Name:   "jargon-unexplained",
	Title:  "A word of the ward stands in a text for families without being marked as a term",
	Why:    "A family does not ask what a word means when the nurse is busy, and guesses.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "Watch for apnoea.\n",
	After:  "Watch for a pause in breathing of more than 20 seconds.\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			if r.role == lesson.TrainerNotes {
				return
			}
			text := fold(r.text)
			for _, word := range p.words(r.lesson.Lang).jargon {
				for _, at := range findWords(text, word) {
					// fold may change lengths, so the place is that of the paragraph when it did.
					i := 0
					if len(text) == len(r.text) {
						i = at
					}
					if s := r.at(i).scheme; s == "term" || s == "source" {
						continue
					}
					p.Report(r.where(i), fmt.Sprintf("%q is a word of the ward", word), "use an everyday word, or keep it in terms.yaml and mark it with a term: link where it is explained")
				}
			}
		})
	},
}
