package check

import (
	"fmt"
	"slices"

	"wardleaf/internal/finding"
)

// Two translations prove nothing, since languages say "keep free" as "do not cover"; when
// three or more agree against their source, they do not stray by chance.
var negationOutvoted = &Rule{
	Name:   "negation-outvoted",
	Title:  "The source language lacks a \"not\" that every translation has",
	Why:    "A \"not\" that was lost in the source turns a warning into an instruction, and the next translation follows it.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: Do pour.\nhi.md: दूध न उड़ेलें।\nar.md: لا تصبّوا.\nfr.md: Ne versez pas.\n",
	After:  "en.md: Do not pour.\nhi.md: दूध न उड़ेलें।\nar.md: لا تصبّوا.\nfr.md: Ne versez pas.\n",
	Run: func(p *Pass) {
		type sentence struct{ file, id, text string }
		type votes struct {
			at       Where
			all, not int // translations, and those with a "not"
		}
		counted := map[sentence]*votes{}
		var order []sentence
		p.besides(func(b beside) {
			here, there := p.words(b.l.Lang), p.words(b.src.Lang)
			if len(here.turn) == 0 || len(there.turn) == 0 || !slices.Contains(graveRoles, b.Source.Role) {
				return
			}
			for _, ph := range b.phrases {
				if turn, without := there.negations(ph[1]); turn+without > 0 {
					continue
				}
				key := sentence{b.src.File.Path, b.Source.ID, ph[1]}
				v := counted[key]
				if v == nil {
					v = &votes{at: In(b.src, b.Source.Span)}
					counted[key] = v
					order = append(order, key)
				}
				v.all++
				if turn, _ := here.negations(ph[0]); turn > 0 {
					v.not++
					v.at = v.at.Beside(b.l.File, b.Target.Span, "in "+b.l.Lang)
				}
			}
		})
		for _, key := range order {
			if v := counted[key]; v.all > 2 && v.not == v.all {
				p.Report(v.at, fmt.Sprintf("no word such as \"not\" is in %q, and all %d translations have one", key.text, v.all),
					"compare with someone who reads both languages; if the source has lost it, mend the source")
			}
		}
	},
}
