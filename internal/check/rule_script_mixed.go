package check

import (
	"fmt"
	"unicode"

	"wardleaf/internal/finding"
)

// alike are the scripts whose letters look like those of another (UTS #39 calls a
// word of several a mixed-script confusable). Digits and marks belong to any script.
var alike = map[string]*unicode.RangeTable{
	"Latin": unicode.Latin, "Greek": unicode.Greek, "Cyrillic": unicode.Cyrillic, "Armenian": unicode.Armenian,
	"Arabic": unicode.Arabic, "Hebrew": unicode.Hebrew, "Devanagari": unicode.Devanagari, "Bengali": unicode.Bengali,
	"Tamil": unicode.Tamil, "Telugu": unicode.Telugu, "Ethiopic": unicode.Ethiopic, "Myanmar": unicode.Myanmar,
	"Khmer": unicode.Khmer, "Thai": unicode.Thai, "Gujarati": unicode.Gujarati, "Gurmukhi": unicode.Gurmukhi,
}

var scriptMixed = &Rule{
	Name:   "script-mixed",
	Title:  "A word has letters of two scripts",
	Why:    "A letter that only looks right is not found by a search, is read out wrongly, and may hide another word.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "Hоld the baby. # the o is Cyrillic\n",
	After:  "Hold the baby.\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			start, in := 0, ""
			for i, c := range r.text {
				if !unicode.In(c, unicode.L, unicode.M) {
					in = ""
					continue
				}
				s := scriptOf(c)
				switch {
				case in == "":
					start, in = i, s
				case s != "" && s != in && start >= 0:
					p.Report(r.where(i), fmt.Sprintf("%q is %s in a word that begins in %s", c, s, in), "type the word again in one script")
					in, start = s, -1
				}
			}
		})
	},
}

func scriptOf(c rune) string {
	if unicode.Is(unicode.M, c) || c == 0x03BC { // mu is also the sign for micro
		return ""
	}
	for name, table := range alike {
		if unicode.Is(table, c) {
			return name
		}
	}
	return ""
}
