package translate

import (
	"wardleaf/internal/pack"
)

// A Pairing is a translation beside its source, unit by unit.
type Pairing struct {
	Module *pack.Module
	Lang   string
	Pairs  []Pair // one for each unit of the source, in reading order
	Extra  []Unit // units of the translation that the source has none for
}

// A Pair is one unit of the source and what a language has for it.
type Pair struct {
	Source Unit
	Digest string // of Source
	Target *Unit  // nil when the translation has no such unit
	Basis  string // digest of the source unit that Target was made from; empty when nobody recorded it
}

// Standing says how a translated unit stands to its source.
type Standing string

// The standings.
const (
	Current Standing = "unchanged"
	Changed Standing = "changed" // the source changed since the translation was made
	New     Standing = "new"     // no translation, or nobody recorded what it was made from
)

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
// by ID and kind. It returns nil when the module has no lesson in the source language,
// or lang is that language. Without a lesson in lang every unit is New.
func Paired(p *pack.Pack, m *pack.Module, lang string) *Pairing {
	src := m.Lessons[p.Source]
	if src == nil || lang == p.Source {
		return nil
	}
	out := &Pairing{Module: m, Lang: lang}
	targets := map[string]Unit{}
	theirs := Units(m.Lessons[lang])
	for _, u := range theirs {
		targets[u.ID] = u
	}
	paired := map[string]bool{}
	for _, u := range Units(src) {
		pair := Pair{Source: u, Digest: UnitDigest(u)}
		if t, ok := targets[u.ID]; ok && t.Kind == u.Kind {
			pair.Target = &t
			paired[u.ID] = true
		}
		if b := m.Basis[lang]; b != nil {
			pair.Basis = b.Units[u.ID].Digest
		}
		out.Pairs = append(out.Pairs, pair)
	}
	for _, u := range theirs {
		if !paired[u.ID] {
			out.Extra = append(out.Extra, u)
		}
	}
	return out
}

// Lacking returns the units of the source that the translation has none for.
func (p *Pairing) Lacking() []Unit {
	var out []Unit
	for _, pair := range p.Pairs {
		if pair.Target == nil {
			out = append(out, pair.Source)
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
