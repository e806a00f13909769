// Package translate makes one language of a pack ready to be set: its lessons with
// the facility's details filled in, and how far they may be trusted.
package translate

import (
	"slices"
	"time"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// An Edition is a pack in one language.
type Edition struct {
	Pack    *pack.Pack
	Locale  *locale.Locale
	Modules []Module
	// SourceName is what the source language is called in itself; empty when nobody said.
	SourceName string
	// Prepared is the latest date on which any of its words were changed on
	// purpose; Due is the earliest by which one must be read again.
	Prepared, Due time.Time

	source *locale.Locale // of lessons that have fallen back; nil when none can
}

// A Module is one lesson of an edition.
type Module struct {
	*pack.Module
	Lesson *lesson.Lesson // facility links are text
	// Signed: a clinician has signed off exactly these words, numbers and figures.
	Signed bool
	// Final: the words are in the source language, or a translation in state final.
	Final bool
	// Fallback: there is no translation, and Lesson is the source language's.
	Fallback bool
	// Partly: the translation is in state initial and holds words of the source language.
	Partly bool
}

// Join makes the edition of a pack in the locale's language. Modules without a
// lesson in that language are left out, until FallBack puts the source's in their place.
func Join(p *pack.Pack, loc *locale.Locale) *Edition {
	e := &Edition{Pack: p, Locale: loc}
	for _, m := range p.Modules {
		l := m.Lessons[loc.Tag]
		if l == nil {
			continue
		}
		e.Modules = append(e.Modules, Module{
			Module: m, Lesson: fill(l, p, loc), Signed: SignedOff(p, m, loc.Tag),
			Final: loc.Tag == p.Source || m.Record.Translations[loc.Tag].State == "final",
		})
	}
	e.Prepared, e.Due = Dates(e.Modules)
	return e
}

// Signed reports whether every lesson is signed off as it stands.
func Signed(ms []Module) bool {
	return !slices.ContainsFunc(ms, func(m Module) bool { return !m.Signed })
}

// Final reports whether no lesson is a translation that still awaits its last review.
func Final(ms []Module) bool {
	return !slices.ContainsFunc(ms, func(m Module) bool { return !m.Final })
}

// Dates returns the latest date on which any of the words were changed on purpose,
// and the earliest by which some must be read again.
func Dates(ms []Module) (prepared, due time.Time) {
	for _, m := range ms {
		r := m.Record
		if r.Prepared.Time.After(prepared) {
			prepared = r.Prepared.Time
		}
		if due.IsZero() || r.Due.Time.Before(due) {
			due = r.Due.Time
		}
	}
	return prepared, due
}
