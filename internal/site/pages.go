package site

import (
	"fmt"
	"html/template"
	"slices"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/piece"
	"wardleaf/internal/translate"
)

// A link leads to a page or a piece.
type link struct{ Href, Text, Note string }

type lessonPage struct {
	frame
	Heading, Lead  template.HTML
	Parts          []template.HTML
	Prints         []link
	Previous, Next *link
}

func (s *Site) lesson(e *translate.Edition, i int, all []Lang, pdfs []PDF) lessonPage {
	m := &e.Modules[i]
	r := &renderer{e: e, page: m.ID}
	p := lessonPage{
		frame:   s.frame(e, plain(m.Lesson.Title), m.ID+".html", all, []translate.Module{*m}),
		Heading: r.inlines(m.Lesson.Title),
		Lead:    r.blocks(m.Lesson.Lead),
		Prints:  prints(e.Locale, pdfs, m.ID),
	}
	steps := 0
	for k := range m.Lesson.Parts {
		if pt := &m.Lesson.Parts[k]; pt.Role != lesson.TrainerNotes {
			p.Parts = append(p.Parts, r.part(pt, m, k, &steps))
		}
	}
	if i > 0 {
		o := &e.Modules[i-1]
		p.Previous = &link{Href: o.ID + ".html", Text: plain(o.Lesson.Title)}
	}
	if i+1 < len(e.Modules) {
		o := &e.Modules[i+1]
		p.Next = &link{Href: o.ID + ".html", Text: plain(o.Lesson.Title)}
	}
	return p
}

type indexPage struct {
	frame
	Subtitle string
	First    []string // what to read first
	Lessons  []link
	Prints   []link
	Sources  []cited
}

type cited struct{ ID, Text string }

func (s *Site) index(e *translate.Edition, all []Lang, pdfs []PDF) indexPage {
	loc, p := e.Locale, e.Pack
	out := indexPage{
		frame:    s.frame(e, p.Title.In(loc.Tag, p.Source), "index.html", all, e.Modules),
		Subtitle: p.Subtitle.In(loc.Tag, p.Source),
		First:    []string{loc.Label("about-site"), loc.Label("about-decides"), loc.Label("about-danger")},
		Prints:   prints(loc, pdfs, ""),
	}
	if note := p.Facility.Protocol.In(loc.Tag, p.Source); note != "" {
		out.First = append(out.First, note)
	}
	if !translate.Signed(e.Modules) {
		out.First = append(out.First, loc.Label("about-unreviewed"))
	}
	if !translate.Final(e.Modules) {
		out.First = append(out.First, loc.Label("about-translated"))
	}
	for _, m := range e.Modules {
		out.Lessons = append(out.Lessons, link{m.ID + ".html", plain(m.Lesson.Title), loc.Label("minutes", locale.Count(m.Record.Minutes))})
	}
	for _, id := range pack.Sorted(p.Sources) {
		out.Sources = append(out.Sources, cited{id, piece.Citation(p.Sources[id], loc)})
	}
	return out
}

type trainerPage struct {
	frame
	Sections []trainerSection
}

type trainerSection struct {
	ID     string
	Title  template.HTML
	Notes  template.HTML
	Prints []link
}

// trainer gathers the notes for the person who teaches; they stand nowhere else.
func (s *Site) trainer(e *translate.Edition, all []Lang, pdfs []PDF) trainerPage {
	out := trainerPage{frame: s.frame(e, e.Locale.Label("for-trainers"), "trainer.html", all, e.Modules)}
	for i := range e.Modules {
		m := &e.Modules[i]
		r := &renderer{e: e, page: m.ID}
		sec := trainerSection{ID: m.ID, Title: r.inlines(m.Lesson.Title), Prints: trainerPrints(e.Locale, pdfs, m.ID)}
		for k := range m.Lesson.Parts {
			if pt := &m.Lesson.Parts[k]; pt.Role == lesson.TrainerNotes {
				sec.Notes += r.blocks(pt.Blocks)
			}
		}
		out.Sections = append(out.Sections, sec)
	}
	return out
}

// forTrainers are the pieces that families have no use for.
var forTrainers = []string{"quiz-a", "quiz-b", "answer-key", "skills-checklist", "reading-sheet", "flip-chart", "session-plan", "attendance"}

func prints(loc *locale.Locale, pdfs []PDF, module string) []link {
	return printLinks(loc, pdfs, module, func(p PDF) bool { return module == "" || !slices.Contains(forTrainers, p.Piece) })
}

func trainerPrints(loc *locale.Locale, pdfs []PDF, module string) []link {
	return printLinks(loc, pdfs, module, func(p PDF) bool { return slices.Contains(forTrainers, p.Piece) })
}

func printLinks(loc *locale.Locale, pdfs []PDF, module string, want func(PDF) bool) []link {
	var out []link
	for _, p := range pdfs {
		if p.Module != module || !want(p) {
			continue
		}
		l := link{Href: p.Path, Text: pieceName(loc, p.Piece)}
		l.Note = loc.Label("print-pages", locale.Count(p.Pages))
		if p.Sheets > 0 {
			l.Note = loc.Label("booklet-fold-pages", locale.Count(p.Pages), locale.With("Sheets", loc.Number(p.Sheets)))
		}
		l.Note = fmt.Sprintf("%s, %s\u00a0kB", l.Note, loc.Number((p.Bytes+500)/1000))
		out = append(out, l)
	}
	return out
}

// pieceName is what a piece is called in the language.
func pieceName(loc *locale.Locale, name string) string {
	switch name {
	case "booklet":
		return loc.Label("booklet-fold")
	case "quiz-a":
		return loc.Label("quiz-paper", locale.With("Version", "A"))
	case "quiz-b":
		return loc.Label("quiz-paper", locale.With("Version", "B"))
	}
	return loc.Label(name)
}
