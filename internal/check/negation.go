package check

import (
	"slices"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
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
		for _, ph := range b.phrases {
			g := gravePair{where: b.where(), source: ph[1], critical: b.critical}
			g.turn, g.without = here.negations(ph[0])
			g.turnOfSource, g.othersOfSource = there.negations(ph[1])
			fn(g)
		}
	})
}

// graveRoles are the parts in which a lost "not" can hurt.
var graveRoles = []lesson.Role{lesson.Caution, lesson.Steps, lesson.WarningSigns, lesson.KeyPoints, lesson.Checklist}

// Negations returns a count of the words of a text that turn it round or take something
// out of it, in a language; known is false when no such words of it are known.
func Negations(c *locale.Catalog) func(lang, text string) (n int, known bool) {
	p := &Pass{Catalog: c}
	return func(lang, text string) (int, bool) {
		x := p.words(lang)
		turn, without := x.negations(text)
		return turn + without, len(x.turn) > 0
	}
}
