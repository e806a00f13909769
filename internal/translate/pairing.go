package translate

import (
	"wardleaf/internal/pack"
)

// A Pairing is a translation beside its source, unit by unit.
type Pairing struct {
	Module  *pack.Module
	Lang    string
	Pairs   []Pair // one for each unit of the source, in reading order
	Lacking []Unit // units of the source that the translation has none for
	Extra   []Unit // units of the translation that the source has none for
}

// Alike reports whether the translation has the units of its source, no more and no fewer.
func (p *Pairing) Alike() bool { return len(p.Lacking)+len(p.Extra) == 0 }

// A Pair is one unit of the source and what a language has for it.
type Pair struct {
	Source Unit
	Digest string // of Source
	Target *Unit  // nil when the translation has no such unit
	Basis  string // digest of the source unit that Target was made from; empty when nobody recorded it
	Own    string // digest of Target when it was last compared with its source; empty when nobody recorded it
}

// Standing says how a translated unit stands to its source.
type Standing string

// The standings.
const (
	Current Standing = "unchanged"
	Changed Standing = "changed" // the source changed since the translation was made
	New     Standing = "new"     // no translation, or nobody recorded what it was made from
)

// Untranslated reports whether there is no translation, or only a copy of the source
// that nobody has recorded as one.
func (p Pair) Untranslated() bool {
	return p.Target == nil || p.Basis == "" && UnitDigest(*p.Target) == p.Digest
}

// Standing says how the pair stands.
func (p Pair) Standing() Standing {
	switch {
	case p.Target == nil || p.Basis == "":
		return New
	case p.Basis != p.Digest:
		return Changed
	}
	return Current
}

// Paired pairs a module's lesson in a language with the source language's. Units pair
// by ID and kind; when the two are not built alike, a unit pairs first with the one
// that was made from exactly its words, so that a step put in before it does not shift
// the rest. It returns nil when the module has no lesson in the source language, or
// lang is that language. Without a lesson in lang every unit is New.
func Paired(p *pack.Pack, m *pack.Module, lang string) *Pairing {
	src := m.Lessons[p.Source]
	if src == nil || lang == p.Source {
		return nil
	}
	out := &Pairing{Module: m, Lang: lang}
	var basis map[string]pack.BasisUnit
	if b := m.Basis[lang]; b != nil {
		basis = b.Units
	}
	theirs := map[string]*Unit{}
	units := Units(m.Lessons[lang])
	for i := range units {
		theirs[units[i].ID] = &units[i]
	}
	ids := map[string]bool{}
	for _, u := range Units(src) {
		pair := Pair{Source: u, Digest: UnitDigest(u)}
		if t := theirs[u.ID]; t != nil && t.Kind == u.Kind {
			pair.Target, pair.Basis, pair.Own = t, basis[u.ID].Digest, basis[u.ID].Own
			ids[u.ID] = true
		} else {
			out.Lacking = append(out.Lacking, u)
		}
		out.Pairs = append(out.Pairs, pair)
	}
	for _, u := range units {
		if !ids[u.ID] {
			out.Extra = append(out.Extra, u)
		}
	}
	if len(units) > 0 && !out.Alike() {
		out.align(units, basis)
	}
	return out
}

// align pairs units anew: first those made from exactly the same words, in order, then
// by ID what is left.
func (p *Pairing) align(units []Unit, basis map[string]pack.BasisUnit) {
	madeFrom, byID := map[string][]int{}, map[string]int{}
	for k, u := range units {
		madeFrom[basis[u.ID].Digest] = append(madeFrom[basis[u.ID].Digest], k)
		byID[u.ID] = k
	}
	used := make([]bool, len(units))
	take := func(pair *Pair, k int) {
		b := basis[units[k].ID]
		pair.Target, pair.Basis, pair.Own = &units[k], b.Digest, b.Own
		used[k] = true
	}
	next := 0
	for i := range p.Pairs {
		pair := &p.Pairs[i]
		pair.Target, pair.Basis, pair.Own = nil, "", ""
		for _, k := range madeFrom[pair.Digest] {
			if k >= next && units[k].Kind == pair.Source.Kind {
				take(pair, k)
				next = k + 1
				break
			}
		}
	}
	for i := range p.Pairs {
		pair := &p.Pairs[i]
		if k, known := byID[pair.Source.ID]; known && pair.Target == nil && !used[k] && units[k].Kind == pair.Source.Kind {
			take(pair, k)
		}
	}
}

// Touched returns the pairs whose translation is not the one that was last compared
// with its source.
func (p *Pairing) Touched() []Pair {
	var out []Pair
	for _, pair := range p.Pairs {
		if pair.Target != nil && pair.Own != "" && pair.Own != UnitDigest(*pair.Target) {
			out = append(out, pair)
		}
	}
	return out
}

// Stale returns the pairs whose source changed since the translation was made.
func (p *Pairing) Stale() []Pair { return p.standing(Changed) }

// New returns the pairs with no translation, or none that anybody recorded a basis of.
func (p *Pairing) New() []Pair { return p.standing(New) }

func (p *Pairing) standing(s Standing) []Pair {
	var out []Pair
	for _, pair := range p.Pairs {
		if pair.Standing() == s {
			out = append(out, pair)
		}
	}
	return out
}
