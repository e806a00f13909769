package load

import (
	"fmt"
	"slices"
	"strings"
	"testing/fstest"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// read parses Markdown as the English lesson of the module "wrapping".
func read(markdown string) (*lesson.Lesson, []finding.Finding) {
	r := &reader{fsys: fstest.MapFS{}, pack: &pack.Pack{Figures: map[string]*pack.Figure{}}}
	s := subject{r: r, file: source.New("wrapping/en.md", []byte(markdown)), lang: "en", module: "wrapping"}
	return s.lesson(), r.findings
}

// newReader returns a reader of an empty pack that holds one file.
func newReader(name string, b []byte) *reader {
	return &reader{fsys: fstest.MapFS{name: {Data: b}}, pack: &pack.Pack{
		Numbers: map[string]*pack.Number{}, Sources: map[string]*pack.Source{},
		Terms: map[string]*pack.Term{}, Figures: map[string]*pack.Figure{},
	}}
}

func has(fs []finding.Finding, rule string) bool {
	return slices.ContainsFunc(fs, func(f finding.Finding) bool { return f.Rule == rule })
}

// checkSpans returns the first breach of the laws of spans: every span lies inside
// the file and inside that of what holds it, ends after it starts, and neighbours
// stand in order without overlap. Text is UTF-8.
func checkSpans(l *lesson.Lesson) error {
	size := len(l.File.Bytes)
	v := &spanChecker{}
	all := source.Span{Start: 0, End: size}
	next := v.inlines(l.Title, all, 0)
	if l.Title != nil {
		v.span("title", l.Span, all, 0)
		next = l.Span.End
	}
	next = v.blocks(l.Lead, all, next)
	for _, p := range l.Parts {
		v.span("part", p.Span, all, next)
		v.inlines(p.Heading, p.Span, p.Span.Start)
		next = v.blocks(p.Blocks, all, p.Span.End)
	}
	return v.err
}

type spanChecker struct{ err error }

func (v *spanChecker) span(what string, s, parent source.Span, from int) int {
	if v.err == nil && (s.Start < parent.Start || s.End > parent.End || s.End < s.Start || s.Start < from) {
		v.err = fmt.Errorf("%s has span %v in %v after %d", what, s, parent, from)
	}
	return s.End
}

func (v *spanChecker) blocks(bs []lesson.Block, parent source.Span, from int) int {
	for _, b := range bs {
		from = v.span(fmt.Sprintf("block of kind %d", b.Kind), b.Span, parent, from)
		v.inlines(b.Inlines, b.Span, b.Span.Start)
		v.blocks(b.Blocks, b.Span, b.Span.Start)
		at := b.Span.Start
		for _, it := range b.Items {
			at = v.span("item", it.Span, b.Span, at)
			v.blocks(it.Blocks, it.Span, it.Span.Start)
		}
		for _, r := range b.Rows {
			at = v.span("row", r.Span, b.Span, at)
			cell := r.Span.Start
			for _, c := range r.Cells {
				cell = v.inlines(c, r.Span, cell)
			}
		}
	}
	return from
}

func (v *spanChecker) inlines(ins []lesson.Inline, parent source.Span, from int) int {
	for _, in := range ins {
		from = v.span(fmt.Sprintf("inline of kind %d %q", in.Kind, in.Text), in.Span, parent, from)
		v.inlines(in.Children, in.Span, in.Span.Start)
		if v.err == nil && !utf8.ValidString(in.Text) {
			v.err = fmt.Errorf("text %q is not UTF-8", in.Text)
		}
	}
	return from
}

// words is the text of a lesson with a blank around each block, pictures left out.
func words(l *lesson.Lesson) string {
	var b strings.Builder
	b.WriteString(lesson.Plain(l.Title))
	block := func(x *lesson.Block) {
		b.WriteString(" " + lesson.Plain(x.Inlines))
		for _, r := range x.Rows {
			for _, c := range r.Cells {
				b.WriteString(" " + lesson.Plain(c))
			}
		}
	}
	(&lesson.Lesson{Lead: l.Lead}).Walk(block)
	for _, p := range l.Parts {
		b.WriteString(" " + lesson.Plain(p.Heading))
		(&lesson.Lesson{Lead: p.Blocks}).Walk(block)
	}
	return b.String()
}
