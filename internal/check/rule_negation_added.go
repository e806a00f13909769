package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

// A note: good translations put "keep free" as "do not cover".
var negationAdded = &Rule{
	Name:   "negation-added",
	Title:  "A caution, step or sign says \"not\" in the translation, and not in the source language",
	Why:    "An added \"not\" forbids what must be done; often it is only another way to say the same.",
	Level:  finding.Note,
	Needs:  Joined,
	Before: "en.md: Call at once.\nhi.md: तुरंत फ़ोन न करें।\n",
	After:  "en.md: Call at once.\nhi.md: तुरंत फ़ोन करें।\n",
	Run: func(p *Pass) {
		p.gravePairs(func(g gravePair) {
			if g.turnOfSource+g.othersOfSource == 0 && g.turn > 0 {
				p.Report(g.where, fmt.Sprintf("%s such as \"not\" for %q, which has none", count(g.turn, "word"), g.source),
					"compare the two with someone who reads both languages")
			}
		})
	},
}
