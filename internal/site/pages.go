package site

import (
	"cmp"
	"html/template"
	"slices"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/piece"
	"wardleaf/internal/sheet"
	"wardleaf/internal/translate"
)

// written is the lesson as it was written: on a page a telephone is a link to tap,
// which an edition has made into text.
func written(e *translate.Edition, m *translate.Module) *lesson.Lesson {
	return m.Lessons[cmp.Or(e.Lang(m), e.Locale.Tag)]
}

// rendererOf returns what writes the words of a module: in the edition of the source
// language when it has fallen back to that.
func rendererOf(e *translate.Edition, m *translate.Module, level int) *renderer {
	if m.Fallback {
		e, m = e.InSource(m)
	}
	return &renderer{e: e, module: m.ID, level: level}
}

// own is the language of a module's words, when it is not the page's.
func own(e *translate.Edition, m *translate.Module) *Lang {
	if !m.Fallback {
		return nil
	}
	src, _ := e.InSource(m)
	return &Lang{src.Locale.Tag, src.Locale.Name, src.Locale.RTL}
}

func address(m *translate.Module) string { return m.ID + ".html" }

type lessonPage struct {
	frame
	Own            *Lang // of the words, when it is not the page's
	Heading, Lead  template.HTML
	Parts          []part
	Prints         []link
	Previous, Next *link
}

func (s *Site) lesson(e *translate.Edition, i int, all []Lang, pdfs []PDF) lessonPage {
	m := &e.Modules[i]
	l := written(e, m)
	r := rendererOf(e, m, 1)
	p := lessonPage{
		frame:   s.frame(e, lesson.Plain(l.Title), address(m), all, e.Modules[i:i+1]),
		Own:     own(e, m),
		Heading: r.inlines(l.Title),
		Lead:    r.blocks(l.Lead),
		Prints:  prints(e.Locale, pdfs, m.ID, forFamilies),
	}
	steps := 0
	for k := range l.Parts {
		if l.Parts[k].Role != lesson.TrainerNotes {
			p.Parts = append(p.Parts, r.part(&l.Parts[k], m, k, &steps))
		}
	}
	beside := func(i int) *link {
		if i < 0 || i >= len(e.Modules) {
			return nil
		}
		m := &e.Modules[i]
		return &link{Href: address(m), Text: lesson.Plain(m.Lesson.Title)}
	}
	if mark := e.Mark(m); mark != "" {
		p.Band = append([]string{mark}, p.Band...)
	}
	p.Previous, p.Next = beside(i-1), beside(i+1)
	return p
}

type indexPage struct {
	frame
	Subtitle string
	First    []string // what to read first
	Audience []string // of every lesson, when it is the same
	Lessons  []entry
	Sheets   []link
	Prints   []link
	Sources  []cited
}

// An entry is one lesson of the list.
type entry struct {
	Number, Href, Title, Minutes string
	Own                          *Lang // of the title, when it is not the page's
	Mark                         string
	Audience                     []string
}

type cited struct{ ID, Text string }

func (s *Site) index(e *translate.Edition, all []Lang, pdfs []PDF) indexPage {
	loc, p := e.Locale, e.Pack
	out := indexPage{
		frame:    s.frame(e, p.Title.In(loc.Tag, p.Source), indexName, all, e.Modules),
		Subtitle: p.Subtitle.In(loc.Tag, p.Source),
		First:    []string{loc.Label("about-site"), loc.Label("about-decides"), loc.Label("about-danger")},
		Prints:   prints(loc, pdfs, "", forFamilies),
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
	for i := range e.Modules {
		m := &e.Modules[i]
		out.Lessons = append(out.Lessons, entry{
			Number: loc.Number(i + 1), Href: address(m), Title: lesson.Plain(written(e, m).Title), Own: own(e, m), Mark: e.Mark(m),
			Minutes: loc.Label("minutes", locale.Count(m.Record.Minutes)), Audience: audience(m.Record.Audience, loc),
		})
	}
	out.sameAudience()
	for _, sh := range sheet.Placed(e.Pack) {
		out.Sheets = append(out.Sheets, link{Href: sheetAddress(sh.Name), Text: loc.Label(sh.Name)})
	}
	for _, id := range pack.Sorted(p.Sources) {
		out.Sources = append(out.Sources, cited{id, piece.Citation(p.Sources[id], loc)})
	}
	return out
}

// sameAudience says once for whom all lessons are, if they are for the same people.
func (p *indexPage) sameAudience() {
	for _, l := range p.Lessons {
		if !slices.Equal(l.Audience, p.Lessons[0].Audience) {
			return
		}
	}
	for i := range p.Lessons {
		p.Audience, p.Lessons[i].Audience = p.Lessons[i].Audience, nil
	}
}

// audience says whom a lesson is for. Names that the program has no words for are left out.
func audience(names []string, loc *locale.Locale) []string {
	var out []string
	for _, n := range names {
		switch n {
		case "families", "health-workers":
			out = append(out, loc.Label("audience-"+n))
		}
	}
	return out
}

type trainerPage struct {
	frame
	Prints   []link
	Sections []trainerSection
}

type trainerSection struct {
	ID, Href, Title string
	Own             *Lang // of title and notes, when it is not the page's
	Mark            string
	Notes           template.HTML
	Prints          []link
}

// trainer gathers the notes for the person who teaches; they stand nowhere else.
func (s *Site) trainer(e *translate.Edition, all []Lang, pdfs []PDF) trainerPage {
	out := trainerPage{
		frame:  s.frame(e, e.Locale.Label("for-trainers"), trainerName, all, e.Modules),
		Prints: prints(e.Locale, pdfs, "", forTrainers),
	}
	for i := range e.Modules {
		m := &e.Modules[i]
		r := rendererOf(e, m, 2)
		sec := trainerSection{
			ID: "module-" + m.ID, Href: address(m), Title: lesson.Plain(written(e, m).Title), Own: own(e, m), Mark: e.Mark(m),
			Prints: prints(e.Locale, pdfs, m.ID, forTrainers),
		}
		for _, p := range written(e, m).Parts {
			if p.Role == lesson.TrainerNotes {
				sec.Notes += r.blocks(p.Blocks)
			}
		}
		if sec.Notes != "" || sec.Prints != nil {
			out.Sections = append(out.Sections, sec)
		}
	}
	return out
}
