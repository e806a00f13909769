// Package check holds the rules that a pack is held to, and runs them.
//
// A rule is a value: its name says what is wrong, its words explain it, and Run
// looks for it through a Pass. One file holds one rule; list.go names them all; each
// has fixtures in testdata. Start at Run.
//
// It is not a reader: what keeps a file from being read at all is said by package
// load, whose rules are only described here (reading.go). A rule reads no files and
// no clock, and changes nothing.
package check

import (
	"fmt"
	"strings"
	"time"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/sheet"
	"wardleaf/internal/source"
)

// Needs says what must exist before a rule can run.
type Needs int

// What rules need.
const (
	Reading Needs = iota // nothing: package load says it while it reads
	Source               // the files of the pack, each by itself
	Joined               // a translation and its source together
	Pages                // the pages laid out
)

// A Rule is one check. Every text is plain, in the words of those who write lessons.
type Rule struct {
	Name   string // what is wrong, in words: "caution-missing"
	Title  string // one sentence without a full stop
	Why    string // why it matters to whoever holds the printed page
	Level  finding.Level
	Needs  Needs
	Before string // the smallest text that breaks the rule
	After  string // the same text, mended
	Run    func(*Pass)
}

// A Pass is all that a rule sees.
type Pass struct {
	Pack    *pack.Pack
	Today   time.Time       // the day that dates are compared with, at midnight UTC
	Catalog *locale.Catalog // what is known of languages

	// What several rules need is worked out once.
	lexicons map[string]*lexicon
	runnings []running
	sides    []beside

	rule     *Rule
	findings []finding.Finding
}

// A Where is a place, and what a finding there stops.
type Where struct {
	File         *source.File
	Span         source.Span
	Lang, Module string // empty: all of them
	Related      []finding.Related
}

// In is a place in a lesson; it stops the module in that language.
func In(l *lesson.Lesson, span source.Span) Where {
	return Where{File: l.File, Span: span, Lang: l.Lang, Module: l.Module}
}

// InRecord is a place in a module's record; it stops the module in every language.
func InRecord(m *pack.Module, span source.Span) Where {
	return Where{File: m.File, Span: span, Module: m.ID}
}

// Beside adds a place that helps to understand the finding.
func (w Where) Beside(file *source.File, span source.Span, text string) Where {
	w.Related = append(w.Related[:len(w.Related):len(w.Related)],
		finding.Related{Place: finding.Place{File: file, Span: span}, Text: text})
	return w
}

// Report adds a finding of the rule that runs.
func (p *Pass) Report(at Where, what, mend string) {
	p.findings = append(p.findings, finding.Finding{
		Rule: p.rule.Name, Level: p.rule.Level, Why: p.rule.Why,
		Place: finding.Place{File: at.File, Span: at.Span}, Lang: at.Lang, Module: at.Module,
		What: spaces.Replace(what), Mend: mend, Related: at.Related,
	})
}

// spaces writes no-break spaces, and what quoting makes of them, as a reader types them.
var spaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", `\u00a0`, " ", `\u202f`, " ")

// Mend reports a finding that the edits would mend without anyone having to decide.
func (p *Pass) Mend(at Where, what, mend string, edits ...finding.Edit) {
	p.Report(at, what, mend)
	p.findings[len(p.findings)-1].Edits = edits
}

// recordWords are those of the units in numbers.yaml, which are written in English.
func (p *Pass) recordWords() *lexicon { return p.words("en") }

// linked is every scheme and target that some lesson links to, as "number:hem", or that
// a sheet uses which some lesson places.
func (p *Pass) linked() map[string]bool {
	out := map[string]bool{}
	p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
		l.WalkInlines(func(in *lesson.Inline) {
			if in.Kind == lesson.Link {
				out[in.Scheme+":"+in.Target] = true
			}
		})
		l.Walk(func(b *lesson.Block) {
			if s := sheet.Find(b.Sheet()); s != nil {
				for _, id := range s.Numbers {
					out["number:"+id] = true
				}
				for _, id := range s.Sources {
					out["source:"+id] = true
				}
			}
		})
	})
	return out
}

// words is what is known of the words of a language.
func (p *Pass) words(lang string) *lexicon {
	if p.lexicons[lang] == nil {
		if p.lexicons == nil {
			p.lexicons = map[string]*lexicon{}
		}
		p.lexicons[lang] = newLexicon(p.Catalog.Words(lang))
	}
	return p.lexicons[lang]
}

// count writes a number of things; the plural ends in s.
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// Lessons calls fn for every lesson, by module and then by language, as pack.yaml orders them.
func (p *Pass) Lessons(fn func(*pack.Module, *lesson.Lesson)) {
	for _, m := range p.Pack.Modules {
		for _, lang := range p.Pack.Languages {
			if l := m.Lessons[lang]; l != nil {
				fn(m, l)
			}
		}
	}
}

// Parts calls fn for every part with a role, of every lesson.
func (p *Pass) Parts(role lesson.Role, fn func(*lesson.Lesson, *lesson.Part)) {
	p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
		for i := range l.Parts {
			if l.Parts[i].Role == role {
				fn(l, &l.Parts[i])
			}
		}
	})
}
