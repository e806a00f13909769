// Package sheet holds the computed sheets: arithmetic with a source, as content.
//
// A sheet is a pure function of its inputs, a locale and a pack. It returns ordinary
// lesson blocks: paragraphs, tables, forms, and charts as Figures with a drawing whose
// unit is 1 mm. Package typeset prints them, package site shows them, and since both
// are given the same drawing they cannot disagree. A sheet reads no file, knows no
// clock, and takes clinical numbers from the pack or from an equation whose source is
// named beside it.
package sheet

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// A Sheet is one kind of computed sheet. The label with its name says what it is.
type Sheet struct {
	Name   string
	About  string // in English, for the command line: what it prints
	Inputs []Input
	// Whole: it needs a page of its own, so that a lesson in a booklet refers to it
	// and does not hold it. Sheets that are not Whole flow in a lesson's column.
	Whole bool
	// Exact: it is at true size, and must be printed so.
	Exact bool
	// Numbers and Sources of the pack that it prints or works with. What the pack lacks
	// is left out of it.
	Numbers, Sources []string

	Make func(Job) (*Content, error)
}

// An Input is one thing that a sheet can be told. Without any, a sheet is blank.
type Input struct {
	Name    string // of the option
	Value   string // what is given, for the help: "DATE"
	About   string // in English
	Default string
	File    bool // it is the path of a file; Job.Files has what is in it
}

// A Job is the order to make a sheet.
type Job struct {
	Locale *locale.Locale
	Pack   *pack.Pack
	Room   measure.Size // of the column of one page
	Inputs map[string]string
	Files  map[string]*source.File
}

// Content is a sheet made. When Findings holds errors there is nothing else.
type Content struct {
	Title    string
	Caution  string // what must be said with it; empty: the short caution of all pieces
	Pages    []Page
	Findings []finding.Finding
}

// A Page is content that begins on a new page; long content goes on to further ones.
type Page struct {
	Title     string // in the heading after the sheet's own, and for the bookmark; may be empty
	Landscape bool
	Bare      bool // neither title nor caution: the blocks say both themselves
	Apart     bool // not shown where a lesson places the sheet
	Blocks    []lesson.Block
}

// List is every sheet there is, by name.
var List = []*Sheet{
	carrierPattern,
	contactLog,
	cuttingPlan,
	feedingTable,
	growthChart,
	signTally,
	weightRecord,
}

// Placed are the sheets that a lesson of the pack places. No other is made unasked: its
// numbers would stand under the name of a ward that never chose them.
func Placed(p *pack.Pack) []*Sheet {
	var out []*Sheet
	for _, s := range List {
		if slices.ContainsFunc(p.Modules, func(m *pack.Module) bool { return places(m.Lessons[p.Source], s) }) {
			out = append(out, s)
		}
	}
	return out
}

func places(l *lesson.Lesson, s *Sheet) (found bool) {
	if l != nil {
		l.Walk(func(b *lesson.Block) { found = found || b.Sheet() == s.Name })
	}
	return found
}

// Find returns the sheet of a name, or nil.
func Find(name string) *Sheet {
	for _, s := range List {
		if s.Name == name {
			return s
		}
	}
	return nil
}

// Names lists the sheets there are.
func Names() []string {
	var out []string
	for _, s := range List {
		out = append(out, s.Name)
	}
	return out
}

// A4 is the room of a page of A4 as pieces have it, for where there is no paper.
var A4 = measure.Size{Width: measure.MM(186), Height: measure.MM(258.5)}

// Blank makes the sheet with no inputs. That it can be made is a law of every sheet.
func (s *Sheet) Blank(loc *locale.Locale, p *pack.Pack, room measure.Size) *Content {
	c, err := s.Make(Job{Locale: loc, Pack: p, Room: room})
	if err != nil {
		panic(fmt.Sprintf("sheet %s: without inputs: %v", s.Name, err))
	}
	return c
}

// In returns what stands where a lesson places the sheet.
func (s *Sheet) In(loc *locale.Locale, p *pack.Pack) []lesson.Block {
	if s.Whole {
		return []lesson.Block{Bold(loc.Label("sheet-apart", locale.With("Sheet", loc.Label(s.Name))))}
	}
	return s.Blank(loc, p, A4).Embedded()
}

// Embedded returns the blocks that are shown within a lesson.
func (c *Content) Embedded() []lesson.Block {
	var out []lesson.Block
	if c.Caution != "" {
		out = append(out, Bold(c.Caution))
	}
	for _, p := range c.Pages {
		if p.Apart {
			continue
		}
		if p.Title != "" {
			out = append(out, Heading(p.Title))
		}
		out = append(out, p.Blocks...)
	}
	return out
}

// Value returns an input as given, or its default.
func (j *Job) Value(s *Sheet, name string) string {
	if v := strings.TrimSpace(j.Inputs[name]); v != "" {
		return v
	}
	for _, in := range s.Inputs {
		if in.Name == name {
			return in.Default
		}
	}
	return ""
}
