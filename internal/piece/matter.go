package piece

import (
	"slices"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// This file holds the front and back matter of the booklet: all that is not a module.

func number(loc *locale.Locale, name string, n int) locale.Var {
	return locale.With(name, loc.Number(n))
}

// dateLines say version, when the words were prepared and when they must be read again.
func (p *press) dateLines(modules []translate.Module) []string {
	loc := p.Locale
	prepared, due := translate.Dates(modules)
	return []string{
		loc.Label("version", locale.With("Version", loc.Digits(p.Pack.Version))),
		loc.Label("prepared", locale.With("Date", loc.Date(prepared))),
		loc.Label("review-due", locale.With("Date", loc.Date(due))),
	}
}

// band says what still awaits review in modules; it is empty when all is signed off.
func band(loc *locale.Locale, modules []translate.Module) string {
	var parts []string
	if !translate.Signed(modules) {
		parts = append(parts, loc.Label("awaiting-review"))
	}
	if !translate.Final(modules) {
		parts = append(parts, loc.Label("awaiting-translation-review"))
	}
	return strings.Join(parts, " – ")
}

// column lays strips down one page from a height, and returns the page.
func (b *press) column(index int, strips ...typeset.Strip) typeset.Sheet {
	sheets, _ := typeset.Paginate(strips, b.frame, index)
	return sheets[0]
}

// cover holds the title, the first picture of the pack, and what the booklet is.
func (b *booklet) cover() typeset.Sheet {
	p, loc, w, s := b.Pack, b.Locale, b.frame.Width(), b.s
	sect := b.root.Add("Sect")
	strips := []typeset.Strip{s.Bar(w, measure.MM(3)), s.Space(1)}
	strips = append(strips, s.Display(p.Title.In(loc.Tag, p.Source), 1.5, w, sect.Add("H1"))...)
	strips = append(strips, typeset.SpaceBefore(s.Text(p.Subtitle.In(loc.Tag, p.Source), typeset.PartLook, 0, w, sect.Add("P")), s.Grid)...)
	foot := s.Text(p.Facility.Name.In(loc.Tag, p.Source), typeset.BoldLook, 0, w, sect.Add("P"))
	foot = append(foot, s.Text(loc.Name+" – "+b.dateLines(b.Modules)[0], typeset.SmallLook, 0, w, sect.Add("P"))...)
	foot = append(foot, s.Text(strings.Join(b.dateLines(b.Modules)[1:], " – "), typeset.SmallLook, 0, w, sect.Add("P"))...)
	room := b.frame.Height() - typeset.Height(strips) - typeset.Height(foot) - 2*s.Grid
	if src, alt := b.firstFigure(); src != "" {
		if d := s.Drawing(src); d != nil {
			width := min(w, room.Scale(d.Width/d.Height))
			strips = append(strips, s.Space(1), s.Centred(d, alt, width, w, room, sect))
		}
	}
	if gap := b.frame.Height() - typeset.Height(strips) - typeset.Height(foot); gap > 0 {
		strips = append(strips, typeset.Strip{Height: gap})
	}
	return b.column(0, append(strips, foot...)...)
}

// firstFigure is the first picture of the first module that has one.
func (b *booklet) firstFigure() (path, alt string) {
	for _, m := range b.Modules {
		m.Lesson.Walk(func(bl *lesson.Block) {
			if bl.Kind == lesson.Figure && bl.Sheet() == "" && path == "" {
				path, alt = bl.Source, bl.Alt
			}
		})
		if path != "" {
			return
		}
	}
	return
}

// readFirst says what the booklet is for, what it is not, and whom to call.
func (b *booklet) readFirst() typeset.Sheet {
	p, loc, w, s := b.Pack, b.Locale, b.frame.Width(), b.s
	sect := b.root.Add("Sect")
	var strips []typeset.Strip
	words := []string{loc.Label("about-education"), loc.Label("about-decides"), loc.Label("about-danger")}
	if note := p.Facility.Protocol.In(loc.Tag, p.Source); note != "" {
		words = append(words, note)
	}
	if !translate.Signed(b.Modules) {
		words = append(words, loc.Label("about-unreviewed"))
	}
	if !translate.Final(b.Modules) {
		words = append(words, loc.Label("about-translated"))
	}
	caution := lesson.Part{Role: lesson.Caution, Heading: text(loc.Label("about-heading"))}
	for _, t := range words {
		caution.Blocks = append(caution.Blocks, lesson.Block{Kind: lesson.Paragraph, Inlines: text(t)})
	}
	strips = append(strips, s.Caution(&caution, w, sect)...)
	strips = append(strips, b.contacts(sect)...)
	return b.column(1, strips...)
}

// contacts sets whom to call, large.
func (b *press) contacts(tag *page.Tag) []typeset.Strip {
	w := b.frame.Width()
	calls := b.calling()
	if len(calls) == 0 {
		return nil
	}
	out := b.s.PartHeading(text(b.Locale.Label("whom-to-call")), w, tag)
	for _, c := range calls {
		out = append(out, b.s.Contact(c.Label, c.Value, w, tag))
	}
	return out
}

// calling returns the contacts of the facility; a value that is not known is empty.
func (b *press) calling() []typeset.Call {
	var out []typeset.Call
	for i := range b.Pack.Facility.Contacts {
		c := &b.Pack.Facility.Contacts[i]
		call := typeset.Call{Label: c.Label.In(b.Locale.Tag, b.Pack.Source)}
		if c.Value != "" {
			call.Value = translate.ContactValue(c, b.Locale)
		}
		out = append(out, call)
	}
	return out
}

// sources lists the publications that the pack cites.
func (b *booklet) sources() []typeset.Strip {
	loc, w, s := b.Locale, b.frame.Width(), b.s
	sect := b.root.Add("Sect")
	out := s.Text(loc.Label("sources"), typeset.TitleLook, 0, w, sect.Add("H1"))
	out[0].Break = typeset.NewModule
	out[0].Anchor = &typeset.Anchor{Name: "sources", Title: loc.Label("sources")}
	out = append(out, s.Text(loc.Label("sources-lead"), typeset.TextLook, 0, w, sect.Add("P"))...)
	for _, id := range pack.Sorted(b.Pack.Sources) {
		tag := sect.Add("P")
		if loc.Tag != b.Pack.Source {
			tag.Lang = b.Pack.Source // titles stay as they were published
		}
		words := Citation(b.Pack.Sources[id], loc)
		if loc.RTL {
			words = "\u2066" + words + "\u2069" // a title in another script keeps its full stops in place
		}
		strip := typeset.Stack(s.Text(words, typeset.TextLook, 0, w, tag))
		strip.Before = s.Grid
		strip.Anchor = &typeset.Anchor{Name: "source-" + id}
		out = append(out, strip)
	}
	return out
}

// Citation writes a publication as one line. Titles stay as they were published.
func Citation(src *pack.Source, loc *locale.Locale) string {
	var parts []string
	for _, t := range []string{src.Author, src.Title, loc.Number(src.Year), src.Identifier} {
		if t != "" && t != loc.Number(0) {
			parts = append(parts, strings.TrimSuffix(t, "."))
		}
	}
	return strings.Join(parts, ". ") + "."
}

// notes is a page of lines to write on.
func (b *booklet) notes() []typeset.Strip {
	w, s := b.frame.Width(), b.s
	out := s.Text(b.Locale.Label("notes"), typeset.PartLook, 0, w, b.root.Add("Sect").Add("H1"))
	out[0].Break = typeset.NewPage
	return append(out, s.Ruled(w, b.frame.Height()-typeset.Height(out))...)
}

// backCover repeats the warning signs of all lessons, or the longest list of them when
// all are too many for the page, and whom to call.
func (b *booklet) backCover(index int) typeset.Sheet {
	w := b.frame.Width()
	sect := b.root.Add("Sect")
	var signs []*lesson.Part
	for _, m := range b.Modules {
		if p := m.Lesson.Part(lesson.WarningSigns); p != nil {
			signs = append(signs, p)
		}
	}
	set := func(p *lesson.Part, tag *page.Tag) []typeset.Strip {
		strips := b.s.SignsOnly(p, b.Locale.Label("warning-signs-cover"), w, tag)
		return append(strips, b.contacts(tag)...)
	}
	if len(signs) == 0 {
		return b.column(index, b.contacts(sect)...)
	}
	shown := merged(signs)
	shown.Blocks[0].Items = onceEach(shown.Blocks[0].Items)
	if typeset.Height(set(&shown, &page.Tag{})) > b.frame.Height() {
		shown = *slices.MaxFunc(signs, func(a, b *lesson.Part) int { return items(a) - items(b) })
	}
	return b.column(index, set(&shown, sect)...)
}

// onceEach leaves out signs that stand before in the same words: what to do is not on the cover.
func onceEach(its []lesson.Item) []lesson.Item {
	said := map[string]bool{}
	return slices.DeleteFunc(slices.Clone(its), func(it lesson.Item) bool {
		sign, _ := lesson.SplitSign(it.Blocks)
		if sign == nil {
			sign = inlines(it.Blocks)
		}
		id := alike(sign)
		again := said[id]
		said[id] = true
		return again
	})
}

func items(p *lesson.Part) int {
	n := 0
	for _, b := range p.Blocks {
		n += len(b.Items)
	}
	return n
}

func text(s string) []lesson.Inline { return []lesson.Inline{{Kind: lesson.Text, Text: s}} }

// seePages adds the page number to each link to another module, so that paper can be followed.
func (b *booklet) seePages(bs []lesson.Block) []lesson.Block {
	return lesson.MapInlines(bs, func(in lesson.Inline) []lesson.Inline {
		n := b.pages["module-"+in.Target]
		if in.Kind != lesson.Link || in.Scheme != "module" || n == 0 && len(b.pages) > 0 {
			return []lesson.Inline{in}
		}
		see := b.Locale.Label("see-page", number(b.Locale, "Page", max(n, 10)))
		return []lesson.Inline{in, {Kind: lesson.Text, Text: "\u00a0" + see, Span: in.Span}}
	})
}
