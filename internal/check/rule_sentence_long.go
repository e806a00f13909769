package check

import (
	"fmt"
	"strings"
	"unicode"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

const longSentence = 30 // words (common practice)

// Words are counted, not graded: no formula of reading ease holds for every language.
var sentenceLong = &Rule{
	Name:   "sentence-long",
	Title:  "A sentence has more than 30 words",
	Why:    "A tired reader has lost the beginning of a long sentence at its end, and so has whoever hears it read out.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "If the baby is awake, and … and … and the ward allows it, feed.\n",
	After:  "Is the baby awake? Does the ward allow it? Then feed.\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			if r.role == lesson.TrainerNotes {
				return
			}
			start := 0
			for _, end := range append(sentenceEnds(r.text), [2]int{len(r.text), len(r.text)}) {
				if n := r.words(start, end[0]); n > longSentence {
					p.Report(r.where(start), fmt.Sprintf("the sentence has %d words", n), "make two or three sentences of it")
				}
				start = end[1]
			}
		})
	},
}

// words counts the words from one byte to another, without the names of sources.
func (r *running) words(from, to int) int {
	n := 0
	for i, s := range r.stretches {
		end := len(r.text)
		if i+1 < len(r.stretches) {
			end = r.stretches[i+1].start
		}
		if a, b := max(s.start, from), min(end, to); s.scheme != "source" && a < b {
			for _, w := range strings.Fields(r.text[a:b]) {
				if strings.ContainsFunc(w, func(c rune) bool { return unicode.In(c, unicode.L, unicode.Nd) }) {
					n++
				}
			}
		}
	}
	return n
}
