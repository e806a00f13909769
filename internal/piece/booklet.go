// Package piece makes the printed pieces: which parts of an edition each one
// holds, in which order, on which paper. How a part looks is for package typeset.
package piece

import (
	"fmt"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// A Result is a piece laid out, and what its fonts could not show.
type Result struct {
	Document *page.Document
	Missing  []Missing
	TooLong  *TooLong // nil when it fits the paper it is meant for
}

// A TooLong says that a lesson holds more than a piece of few words has room for.
// Nothing is left out because of it.
type TooLong struct {
	Lesson *lesson.Lesson
	Part   *lesson.Part // whose last items are too many; nil when all else is
	Items  int          // how many
	// Fits is the greatest distance, in tenths of a metre, from which a wall
	// checklist can be read as it is printed now; Asked is the one asked for.
	Fits, Asked int
	// Pack is nil but for the wall checklist that modules share: Lesson and Part are
	// then put together of theirs, and the modules are those of the pack's Wall.
	Pack *pack.Pack
}

// A Missing is a code point that no font can show, and the lesson it stands in
// (nil when it stands in the program's own words or the facility's).
type Missing struct {
	Gap    typeset.Gap
	Lesson *lesson.Lesson
}

// Booklet sets every module of an edition as an A5 booklet in reading order:
// cover, what to read first, contents, the modules, answers, sources, pages for
// notes up to a multiple of four, and the warning signs on the back cover.
func Booklet(e *translate.Edition, fonts *typeset.Fonts) (*Result, error) {
	p, err := newPress(e, fonts, typeset.BookletSizes, typeset.BookletFrame(e.Locale.RTL), e.Locale.Label("booklet"))
	if err != nil {
		return nil, err
	}
	b := &booklet{press: p, pages: map[string]int{}}
	// The first pass finds on which page everything lands; the second prints those
	// page numbers. Numbers take no more room the second time, so pages stay put.
	b.build()
	b.build()
	return b.res, nil
}

type booklet struct {
	*press
	pages map[string]int // anchor -> page number, from 1, as the last pass found it
	total int
}

func (b *booklet) build() {
	b.root = &page.Tag{Role: "Document"}
	b.res = &Result{}
	sheets := []typeset.Sheet{b.cover(), b.readFirst()}
	var spots []typeset.Spot
	pour := func(strips []typeset.Strip) {
		more, found := typeset.Paginate(strips, b.frame, len(sheets))
		sheets, spots = append(sheets, more...), append(spots, found...)
	}
	pour(b.contents())
	pour(b.modules())
	pour(b.answers())
	pour(b.sources())
	for (len(sheets)+1)%4 != 0 {
		pour(b.notes())
	}
	sheets = append(sheets, b.backCover(len(sheets)))
	b.total = len(sheets)
	for _, sp := range spots {
		b.pages[sp.Name] = sp.Page + 1
	}
	b.finish(b.Pack.Title.In(b.Locale.Tag, b.Pack.Source), sheets, spots, b.Modules, true)
}

func (b *booklet) contents() []typeset.Strip {
	loc, w := b.Locale, b.frame.Width()
	sect := b.root.Add("Sect")
	out := b.s.Text(loc.Label("contents"), typeset.TitleLook, 0, w, sect.Add("H1"))
	out[0].Break = typeset.NewModule
	out[0].Anchor = &typeset.Anchor{Name: "contents", Title: loc.Label("contents")}
	out = append(out, b.s.Space(1))
	list := sect.Add("L")
	for _, m := range b.Modules {
		out = append(out, b.s.Entry(m.Lesson.Title, b.pageOf("module-"+m.ID), "module-"+m.ID, w, list))
	}
	for _, id := range []string{"answers", "sources"} {
		out = append(out, b.s.Entry([]lesson.Inline{{Kind: lesson.Text, Text: loc.Label(id)}}, b.pageOf(id), id, w, list))
	}
	return out
}

func (b *booklet) pageOf(anchor string) string {
	return b.Locale.Number(max(b.pages[anchor], 1))
}

func (b *booklet) modules() []typeset.Strip {
	var out []typeset.Strip
	w := b.frame.Width()
	for _, m := range b.Modules {
		sect := b.root.Add("Sect")
		b.use(&m)
		strips := b.s.Title(m.Lesson.Title, w, sect)
		strips[0].Break = typeset.NewModule
		strips[0].Anchor = &typeset.Anchor{Name: "module-" + m.ID, Title: lesson.Plain(m.Lesson.Title), Mark: b.Mark(&m)}
		sect.Lang = b.Lang(&m)
		strips = append(strips, b.s.Lead(b.seePages(m.Lesson.Lead), w, sect)...)
		steps := 0
		for i := range m.Lesson.Parts {
			p := m.Lesson.Parts[i]
			if p.Role == lesson.TrainerNotes {
				continue
			}
			p.Blocks = b.seePages(p.Blocks)
			part := b.s.Part(&p, &steps, w, sect)
			if len(part) > 0 && part[0].Anchor == nil {
				part[0].Anchor = &typeset.Anchor{Name: fmt.Sprintf("part-%s-%d", m.ID, i), Title: lesson.Plain(p.Heading), Level: 1}
			}
			strips = append(strips, part...)
			if p.Role == lesson.Quiz {
				strips = append(strips, typeset.SpaceBefore(b.s.Text(b.Locale.Label("answers-page", number(b.Locale, "Page", max(b.pages["answers-"+m.ID], 1))), typeset.SmallLook, 0, w, sect.Add("P")), b.s.Grid)...)
			}
		}
		out = append(out, strips...)
		b.claim(m.Lesson)
	}
	return out
}

func (b *booklet) answers() []typeset.Strip {
	loc, w := b.Locale, b.frame.Width()
	sect := b.root.Add("Sect")
	out := b.s.Text(loc.Label("answers"), typeset.TitleLook, 0, w, sect.Add("H1"))
	out[0].Break = typeset.NewModule
	out[0].Anchor = &typeset.Anchor{Name: "answers", Title: loc.Label("answers")}
	out = append(out, b.s.Text(loc.Label("answers-lead"), typeset.TextLook, 0, w, sect.Add("P"))...)
	for _, m := range b.Modules {
		for i := range m.Lesson.Parts {
			p := m.Lesson.Parts[i]
			if p.Role != lesson.Quiz {
				continue
			}
			p.Blocks = b.seePages(p.Blocks)
			strips := b.s.Answers(&p, m.Lesson.Title, w, sect)
			strips[0].Anchor = &typeset.Anchor{Name: "answers-" + m.ID}
			out = append(out, strips...)
		}
	}
	return out
}
