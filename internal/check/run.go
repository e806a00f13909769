package check

import (
	"cmp"
	"slices"
	"time"

	"wardleaf/internal/finding"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// Run runs every rule that needs no pages over a pack. Dates are compared with today,
// and texts by what the catalog knows of their languages.
// Rules about a translation run on what could be read of it, whatever else is wrong
// with it; which languages an error stops is for the caller to decide.
func Run(p *pack.Pack, today time.Time, catalog *locale.Catalog) []finding.Finding {
	y, m, d := today.Date()
	pass := &Pass{Pack: p, Today: time.Date(y, m, d, 0, 0, 0, 0, time.UTC), Catalog: catalog}
	for _, needs := range []Needs{Source, Joined} {
		for _, r := range List {
			if r.Needs == needs && r.Run != nil {
				pass.rule = r
				r.Run(pass)
			}
		}
	}
	finding.Sort(pass.findings)
	return pass.findings
}

// All returns every rule, those of package load and of pages among them, by name.
func All() []*Rule {
	all := slices.Concat(List, reading, []*Rule{silenceUnused})
	slices.SortFunc(all, func(a, b *Rule) int { return cmp.Compare(a.Name, b.Name) })
	return all
}

// Find returns the rule with a name, or nil.
func Find(name string) *Rule {
	for _, r := range All() {
		if r.Name == name {
			return r
		}
	}
	return nil
}
