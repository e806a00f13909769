package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

// "Unless" has other words in many languages, and counts in what must never be missed
// alone. Counts of negations differ between good translations ("never flat" and "do not lie
// flat, without a prop"), so only a sentence that lost them all is found.
var negationLost = &Rule{
	Name:   "negation-lost",
	Title:  "A caution, step or sign says \"not\" in the source language, and not in the translation",
	Why:    "A lost \"not\" turns a warning into an instruction.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: Do not pour.\nhi.md: दूध उड़ेलें।\n",
	After:  "en.md: Do not pour.\nhi.md: दूध न उड़ेलें।\n",
	Run: func(p *Pass) {
		p.gravePairs(func(g gravePair) {
			if (g.turnOfSource > 0 || g.critical && g.othersOfSource > 0) && g.turn+g.without == 0 {
				p.Report(g.where, fmt.Sprintf("no word such as \"not\" or \"without\" is there for %q", g.source),
					"compare the two with someone who reads both languages")
			}
		})
	},
}
