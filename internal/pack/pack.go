// Package pack is one folder of teaching material as data: its modules in every
// language, its numbers, sources, terms and the facility that prints it.
//
// Values that a rule may complain about carry the place they were read from.
// It reads nothing; package load fills it.
package pack

import (
	"sort"
	"time"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/source"
	"wardleaf/internal/ward"
)

// A Pack is one folder of teaching material.
type Pack struct {
	Name      string       // how messages call it: its folder, or "the starter pack"
	File      *source.File // pack.yaml
	Title     Localized
	Subtitle  Localized
	Version   string
	Source    string            // the source language
	Languages []string          // in the order pack.yaml gives, source language included
	Digits    map[string]string // language -> Unicode numbering system, "latn" when absent
	// Calendars are those that dates stand in beside the Gregorian one, by language.
	Calendars     map[string]string
	Session       Session
	PassMark      int // percent of the score of a skills checklist that is enough
	Modules       []*Module
	CautionPoints []Point // what every caution block must say
	Silenced      []Silence
	Wall          []Ref // modules that share one wall checklist, in this order; empty when none do
	Facility      Facility
	Numbers       map[string]*Number
	Sources       map[string]*Source
	Terms         map[string]*Term
	Figures       map[string]*Figure // by path from the root of the pack
}

// HasPage reports whether a language has a page of a name: the index, the trainers'
// page, or that of a module with a lesson in the language or in the source language.
func (p *Pack) HasPage(name, lang string) bool {
	for _, m := range p.Modules {
		if name == m.ID+".html" {
			return m.Lessons[lang] != nil || m.Lessons[p.Source] != nil
		}
	}
	return true
}

// A Point is something that every caution block must say, with the ways to word it in
// each language. A language without ways is not held to it.
type Point struct {
	ID   string
	Ways map[string][]string
	Span source.Span
}

// A Silence keeps the warnings and notes of a rule out of the way until a day, for a
// reason. An empty Module or Lang means all of them; Says, when set, must be in what the
// finding says or in the line it stands on, so that nothing else is silenced with it.
type Silence struct {
	Rule, Module, Lang, Says, Reason string
	Until                            Date
	Span                             source.Span
}

// A Session is how a day of teaching is laid out.
type Session struct {
	Start int // minutes after midnight
	Group int // how many learn together
	Break int // minutes
}

// What holds where pack.yaml does not say otherwise (common practice).
var (
	UsualSession  = Session{Start: 9 * 60, Group: 8, Break: 15}
	UsualPassMark = 80
)

// Localized is a text in several languages, by BCP 47 tag.
type Localized map[string]string

// In returns the text in lang, or in the language that follows in fallback.
func (l Localized) In(lang, fallback string) string {
	if s := l[lang]; s != "" {
		return s
	}
	return l[fallback]
}

// A Module is one lesson in every language it has.
type Module struct {
	ID      string
	File    *source.File // module.yaml
	Unread  bool         // the record is missing or malformed, and Record is empty
	Record  Record
	Lessons map[string]*lesson.Lesson
	Basis   map[string]*Basis // by the language of the translation; a translation may have none
}

// A Basis says of each block of a translation which words of the source language it
// was made from. Package translate names the blocks and makes the digests.
type Basis struct {
	File  *source.File
	Units map[string]BasisUnit // by the block's ID
}

// A BasisUnit is the digest of one source block, and of the translation that was
// compared with it.
type BasisUnit struct {
	Digest string
	Own    string      // empty when nobody recorded it
	Span   source.Span // of its line
}

// Title returns the module's title in lang, or its ID when it has none.
func (m *Module) Title(lang string) string {
	if l := m.Lessons[lang]; l != nil && len(l.Title) > 0 {
		return lesson.Plain(l.Title)
	}
	return m.ID
}

// A Record is what is true of a module in every language.
type Record struct {
	Audience      []string
	Minutes       int
	Prepared, Due Date
	By            string // role of whoever wrote it; empty when nobody said
	CriticalSteps []StepRef
	Sources       []Ref
	SignOffs      []SignOff
	Translations  map[string]Translation
}

// A StepRef points to a step: the part among the module's steps parts, and the step in it, both from 1.
type StepRef struct {
	Part, Step int
	Span       source.Span
}

// A Date is an ISO 8601 calendar date as it was written.
// Time is zero when Text is not such a date; Text is empty when nothing was written.
type Date struct {
	Text string
	Time time.Time
	Span source.Span
}

// A Ref is a name that must exist elsewhere in the pack.
type Ref struct {
	Name string
	Span source.Span
}

// A SignOff is a reviewer's dated approval of exact content.
type SignOff struct {
	Role, Lang, Digest string
	Date               Date
	Span               source.Span
}

// A Translation says how far a translation has come. States are XLIFF 2.1's.
type Translation struct {
	State string // initial, translated, reviewed, final
	By    string // role of whoever translated it; empty when nobody said
	Span  source.Span
}

// A Number is one clinical amount or range, kept once.
type Number struct {
	ID, About string
	Amount    string // digits as written, or empty when it is a range
	Low, High string
	Compare   string // at-least, up-to, under, over, or empty
	Unit      string
	Source    Ref
	Place     string // page or table in the source
	Status    string // published or common-practice
	File      *source.File
	Span      source.Span
}

// A Source is one publication.
type Source struct {
	ID, Author, Title, Identifier, Note string
	Year                                int
	File                                *source.File
	Span                                source.Span
}

// A Term is the approved wording of a clinical word in each language.
type Term struct {
	ID, About string
	In        Localized
	File      *source.File
	Span      source.Span
}

// A Facility is the place that prints.
type Facility struct {
	File     *source.File
	Name     Localized
	Contacts []Contact
	Protocol Localized // the note that the local protocol comes first
	Feeding  *FeedingTable
}

// A FeedingTable is the ward's own, in the place of the published ones; nil when it has none.
type FeedingTable struct {
	Dated Date // when the ward set it
	Bands []ward.Band
	Spans []source.Span // of the bands
	Span  source.Span
}

// Contact returns the contact with an ID, or nil.
func (f *Facility) Contact(id string) *Contact {
	for i := range f.Contacts {
		if f.Contacts[i].ID == id {
			return &f.Contacts[i]
		}
	}
	return nil
}

// A Contact is a telephone or address of the facility. An empty Value prints as a line to write on.
type Contact struct {
	ID    string
	Label Localized
	Value string
	Span  source.Span
}

// A Figure is a picture of the pack.
type Figure struct {
	File    *source.File
	Drawing *drawing.Drawing // nil when the file is not a drawing we can use
}

// Sorted returns the keys of a map in order.
func Sorted[V any](m map[string]V) []string {
	ks := make([]string, 0, len(m))
	for k := range m {
		ks = append(ks, k)
	}
	sort.Strings(ks)
	return ks
}
