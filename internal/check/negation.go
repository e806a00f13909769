package check

import (
	"slices"

	"wardleaf/internal/lesson"
)

// A gravePair is a sentence that must never be misread, or a whole block, and its
// source, with the number of negations in each.
type gravePair struct {
	where                        Where
	source                       string
	critical                     bool // a caution, or a step that must never be missed
	turn, without                int
	turnOfSource, othersOfSource int
}

// gravePairs calls fn for what every translation says of cautions, steps, warning signs
// and key points, in languages whose negations are known.
func (p *Pass) gravePairs(fn func(gravePair)) {
	p.besides(func(b beside) {
		here, there := p.words(b.l.Lang), p.words(b.src.Lang)
		if len(here.turn) == 0 || len(there.turn) == 0 || !slices.Contains(graveRoles, b.Source.Role) {
			return
		}
		b.sentences(func(text, source string) {
			g := gravePair{where: b.where(), source: source, critical: b.critical}
			g.turn, g.without = here.negations(text)
			g.turnOfSource, g.othersOfSource = there.negations(source)
			fn(g)
		})
	})
}

// graveRoles are the parts in which a lost "not" can hurt.
var graveRoles = []lesson.Role{lesson.Caution, lesson.Steps, lesson.WarningSigns, lesson.KeyPoints, lesson.Checklist}
