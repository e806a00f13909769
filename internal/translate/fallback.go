package translate

import (
	"slices"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// FallBack puts lessons of the source language, whose locale it is given, in the place
// of those that have no translation, so that nothing is missing without a word; they
// are marked (Module.Mark). A copy of the source in which nothing is translated yet is
// none. It changes the edition and returns it.
func (e *Edition) FallBack(source *locale.Locale) *Edition {
	if source == nil || e.Locale.Tag == e.Pack.Source {
		return e
	}
	e.source = source
	var all []Module
	for _, m := range e.Pack.Modules {
		lang := e.Locale.Tag
		l := m.Lessons[e.Pack.Source]
		i := slices.IndexFunc(e.Modules, func(have Module) bool { return have.Module == m })
		left, of := untranslated(e.Pack, m, lang)
		switch {
		case i >= 0 && (l == nil || left < of || of == 0):
			have := e.Modules[i]
			have.Partly = left > 0 && m.Record.Translations[lang].State == "initial"
			all = append(all, have)
		case l != nil:
			lesson := fill(l, e.Pack, source)
			if source.RTL != e.Locale.RTL {
				lesson = isolated(lesson, source.RTL)
			}
			all = append(all, Module{Module: m, Lesson: lesson, Fallback: true, Signed: SignedOff(e.Pack, m, e.Pack.Source), Final: true})
		}
	}
	e.Modules = all
	e.Prepared, e.Due = Dates(all)
	return e
}

// untranslated counts the blocks of a lesson that are the source's own words, and that
// nobody recorded as a translation, among how many.
func untranslated(p *pack.Pack, m *pack.Module, lang string) (left, of int) {
	pairing := Paired(p, m, lang)
	if pairing == nil || m.Lessons[lang] == nil {
		return 0, 0
	}
	for _, pair := range pairing.Pairs {
		if pair.Untranslated() {
			left++
		}
	}
	return left, len(pairing.Pairs)
}

// InSource returns the edition of the source language for a piece or page about one
// module that has fallen back to it, and the module in it.
func (e *Edition) InSource(m *Module) (*Edition, *Module) {
	src := Join(e.Pack, e.source)
	src.SourceName = e.SourceName
	i := slices.IndexFunc(src.Modules, func(s Module) bool { return s.Module == m.Module })
	return src, &src.Modules[i]
}

// Mark says, in the language of the edition, that a lesson is not translated yet, or
// not all of it; it is empty when it is.
func (e *Edition) Mark(m *Module) string {
	switch {
	case m.Fallback:
		mark := e.Locale.Label("lesson-untranslated", locale.With("Language", e.source.Name))
		if e.source.RTL != e.Locale.RTL { // it stands among words of either direction
			mark = isolate(mark, e.Locale.RTL)
		}
		return mark
	case m.Partly:
		return e.Locale.Label("lesson-partly-translated")
	}
	return ""
}

// Lang is the language of a module's lesson, when it is not the edition's.
func (e *Edition) Lang(m *Module) string {
	if m.Fallback {
		return e.Pack.Source
	}
	return ""
}

// isolate makes text run in its own direction among text of the other (UAX #9).
func isolate(s string, rtl bool) string {
	if rtl {
		return "\u2067" + s + "\u2069"
	}
	return "\u2066" + s + "\u2069"
}

// isolated returns a copy of a lesson in which the words of each block run in their own
// direction among text of the other.
func isolated(l *lesson.Lesson, rtl bool) *lesson.Lesson {
	open, _, _ := strings.Cut(isolate(" ", rtl), " ")
	run := func(ins []lesson.Inline) []lesson.Inline {
		ins = lesson.ReplaceInlines(ins, func(in lesson.Inline) []lesson.Inline { return []lesson.Inline{in} })
		var texts []*lesson.Inline
		var walk func([]lesson.Inline)
		walk = func(ins []lesson.Inline) {
			for i := range ins {
				if ins[i].Kind == lesson.Text {
					texts = append(texts, &ins[i])
				}
				walk(ins[i].Children)
			}
		}
		walk(ins)
		if n := len(texts); n > 0 {
			texts[0].Text = open + texts[0].Text
			texts[n-1].Text += "\u2069"
		}
		return ins
	}
	var blocks func([]lesson.Block)
	blocks = func(bs []lesson.Block) {
		for i := range bs {
			b := &bs[i]
			b.Inlines = run(b.Inlines)
			if b.Alt != "" {
				b.Alt = isolate(b.Alt, rtl)
			}
			for _, row := range b.Rows {
				for c := range row.Cells {
					row.Cells[c] = run(row.Cells[c])
				}
			}
			for k := range b.Items {
				blocks(b.Items[k].Blocks)
			}
			blocks(b.Blocks)
		}
	}
	out := l.Map(func(in lesson.Inline) []lesson.Inline { return []lesson.Inline{in} })
	out.Title = run(out.Title)
	blocks(out.Lead)
	for i := range out.Parts {
		out.Parts[i].Heading = run(out.Parts[i].Heading)
		blocks(out.Parts[i].Blocks)
	}
	return out
}
