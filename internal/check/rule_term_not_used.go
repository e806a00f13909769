package check

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"wardleaf/internal/finding"
)

// Words may be inflected: each word of the approved wording must be there by its
// beginning, in any order.
var termNotUsed = &Rule{
	Name:   "term-not-used",
	Title:  "A term is not written in its approved wording",
	Why:    "A second word for the same thing makes a family look for a second thing.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "terms.yaml: wrap: {hi: पट्टी}\nhi.md: [कपड़ा](term:wrap)\n",
	After:  "terms.yaml: wrap: {hi: पट्टी}\nhi.md: [पट्टी](term:wrap)\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			for _, link := range r.links("term") {
				t := p.Pack.Terms[link.target]
				if t == nil || t.In[r.lesson.Lang] == "" {
					continue
				}
				text := r.text[link.start:link.end]
				if approved := t.In[r.lesson.Lang]; !inflected(text, approved) {
					p.Report(r.where(link.start).Beside(t.File, t.Span, "kept here"),
						fmt.Sprintf("%q stands for the term %s; its approved wording is %q", text, t.ID, approved),
						"write the approved wording, or let a clinician approve this one in terms.yaml")
				}
			}
		})
	},
}

// inflected reports whether a text has every word of a wording, by its beginning.
func inflected(text, wording string) bool {
	words, wanted := wordsOf(fold(text)), wordsOf(fold(wording))
	for _, w := range wanted {
		if len(wanted) > 1 && utf8.RuneCountInString(w) < 3 {
			continue // such as "of", which may change with the case
		}
		found := false
		for _, own := range words {
			found = found || sameStem(own, w)
		}
		if !found {
			return false
		}
	}
	return true
}

// sameStem reports whether two words begin alike: for three letters, or three fifths
// of the shorter one. A word may also stand within the other, behind an article or
// a preposition written with it.
func sameStem(a, b string) bool {
	ra, rb := []rune(a), []rune(b)
	n := 0
	for n < len(ra) && n < len(rb) && ra[n] == rb[n] {
		n++
	}
	short := min(len(ra), len(rb))
	return n >= min(short, max(3, short*3/5)) || utf8.RuneCountInString(b) >= 3 && strings.Contains(a, b)
}
