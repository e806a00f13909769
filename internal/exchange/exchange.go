// Package exchange sends the blocks of a pack to a translator and takes their
// translations back, as XLIFF 2.1 (OASIS, 2018) or as a PO file of GNU gettext.
//
// A block travels as text with tags: words are free, and what must not be lost (links
// to numbers, sources and telephones, bold, line breaks) is a numbered tag whose
// Markdown never leaves the pack. A file that comes back is a stranger's: it is
// bounded in size and depth, and each block of it is held against the pack before one
// byte is changed.
//
// Start at Handoff and Handback. Between them lie xliff_write.go, xliff_read.go and
// po_write.go, po_read.go, which know nothing of packs, and tagged.go, which knows
// Markdown only as spans of a lesson's bytes.
//
// The package judges no translation and writes no files.
package exchange

import (
	"strings"
	"time"

	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// An Order says what to hand off.
type Order struct {
	Pack    *pack.Pack
	Lang    string
	RTL     bool // the language is written from right to left
	Modules []*pack.Module
	All     bool       // current translations, too
	Day     time.Time  // of the hand-off
	Before  *pack.Pack // an earlier state of the pack, to show what the source said; may be nil
}

// A Job is what goes to a translator.
type Job struct {
	Source, Target string // language tags
	RTL            bool
	Project        string // title and version of the pack
	Day            time.Time
	Modules        []JobModule
}

// A JobModule is one module of a job.
type JobModule struct {
	ID, Title string
	Path      string // of the source lesson
	Items     []Item
}

// An Item is one block to be translated.
type Item struct {
	ID       string
	Kind     translate.UnitKind
	Line     int // in the source lesson
	Source   Tagged
	Codes    []Code
	Target   Tagged // empty when there is none
	State    string // of XLIFF
	Standing translate.Standing
	Notes    []Note
	Previous Tagged // what the source said when Target was made; empty when that is not known
	// SourceDigest and TargetDigest are of the blocks as they are handed off.
	SourceDigest, TargetDigest string
}

// A Note tells a translator something about a block.
type Note struct {
	Category string // context, number, term, length, change
	Text     string
}

// Count returns how many blocks a job holds.
func (j *Job) Count() int {
	n := 0
	for _, m := range j.Modules {
		n += len(m.Items)
	}
	return n
}

// Handoff makes the job for an order. Modules with nothing to translate are left out.
func Handoff(o Order) *Job {
	j := &Job{Source: o.Pack.Source, Target: o.Lang, RTL: o.RTL, Day: o.Day}
	j.Project = strings.TrimSpace(o.Pack.Title.In(o.Pack.Source, o.Pack.Source) + " " + o.Pack.Version)
	for _, m := range o.Modules {
		pairing := translate.Paired(o.Pack, m, o.Lang)
		if pairing == nil {
			continue
		}
		jm := JobModule{ID: m.ID, Title: m.Title(o.Pack.Source), Path: m.Lessons[o.Pack.Source].File.Path}
		before := o.before(m.ID)
		for _, pair := range pairing.Pairs {
			if pair.Standing() != translate.Current || o.All {
				jm.Items = append(jm.Items, o.item(m, pair, before))
			}
		}
		if len(jm.Items) > 0 {
			j.Modules = append(j.Modules, jm)
		}
	}
	return j
}

// before finds what the source said by its digest.
func (o Order) before(module string) map[string]translate.Unit {
	out := map[string]translate.Unit{}
	if o.Before == nil {
		return out
	}
	for _, m := range o.Before.Modules {
		if m.ID == module {
			for _, u := range translate.Units(m.Lessons[o.Before.Source]) {
				out[u.ID+" "+translate.UnitDigest(u)] = u
			}
		}
	}
	return out
}

func (o Order) item(m *pack.Module, pair translate.Pair, before map[string]translate.Unit) Item {
	src := m.Lessons[o.Pack.Source]
	text := newCoded(pair, src, m.Lessons[o.Lang])
	line, _ := src.File.Position(pair.Source.Span.Start)
	it := Item{
		ID: pair.Source.ID, Kind: pair.Source.Kind, Line: line, Source: text.source, Codes: text.codes, State: "initial",
		Standing: pair.Standing(), SourceDigest: pair.Digest, TargetDigest: targetDigest(pair),
	}
	it.Notes = notes(o.Pack, m, o.Lang, pair.Source)
	if pair.Untranslated() {
		return it
	}
	it.Target = text.target
	switch it.Standing {
	case translate.Current:
		it.State = "translated"
		if s := m.Record.Translations[o.Lang].State; s == "reviewed" || s == "final" {
			it.State = s
		}
	case translate.Changed:
		said := "The source has changed since this translation was made. Correct the translation, or confirm it."
		if old, known := before[pair.Source.ID+" "+pair.Basis]; known {
			it.Previous = plainTagged(old.Inlines)
			said += " Before, it said: " + it.Previous.Plain()
		}
		it.Notes = append(it.Notes, Note{"change", said})
	default:
		it.Notes = append(it.Notes, Note{"change", "Nobody recorded what this translation was made from. Compare it with the source; correct it, or confirm it."})
	}
	return it
}

// noTarget stands for the digest of a translation that is not there.
const noTarget = "none"

func targetDigest(p translate.Pair) string {
	if p.Target == nil {
		return noTarget
	}
	return translate.UnitDigest(*p.Target)
}

// Standings counts the blocks of a module that are new and those that are changed.
func (m JobModule) Standings() (fresh, changed int) {
	for _, it := range m.Items {
		switch it.Standing {
		case translate.New:
			fresh++
		case translate.Changed:
			changed++
		}
	}
	return fresh, changed
}
