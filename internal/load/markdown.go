package load

import (
	"bytes"
	"fmt"
	"path"
	"slices"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	tables "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// newMarkdown returns the parser of lessons: CommonMark 0.31.2, tables and task
// lists as on code-hosting pages, and classes in braces after a heading.
func newMarkdown() goldmark.Markdown {
	return goldmark.New(
		goldmark.WithExtensions(extension.Table, extension.TaskList),
		goldmark.WithParserOptions(parser.WithHeadingAttribute()),
	)
}

// Limits that keep the parser's time and memory in bounds: it fills up the rows of a
// table to the width of its head, and takes the square of the marks in a paragraph.
const (
	maxLine    = 16 << 10 // bytes
	maxLines   = 20_000
	maxPipes   = 32   // in a line
	maxMarks   = 2000 // * _ [ in lines with no blank line between
	maxNesting = 12   // blocks inside blocks
)

// plainLesson says where the text is too tangled to parse.
func (s subject) plainLesson() bool {
	const why = "No lesson needs it, and reading it would hold up everyone who prints."
	marks := 0
	for n, rest := 0, s.file.Bytes; len(rest) > 0; n++ {
		at := source.Span{Start: len(s.file.Bytes) - len(rest)}
		at.End = at.Start
		line := rest
		if i := bytes.IndexByte(rest, '\n'); i >= 0 {
			line, rest = rest[:i], rest[i+1:]
		} else {
			rest = nil
		}
		if len(bytes.TrimSpace(line)) == 0 {
			marks = 0
		}
		for _, c := range []string{"*", "_", "["} {
			marks += bytes.Count(line, []byte(c))
		}
		what, mend := "", ""
		switch {
		case n >= maxLines:
			what, mend = fmt.Sprintf("the file has more than %d lines and was not read", maxLines), "split the lesson in two"
		case len(line) > maxLine:
			what, mend = fmt.Sprintf("the line is longer than %d KiB, and the file was not read", maxLine>>10), "break the line, or write shorter paragraphs"
		case bytes.Count(line, []byte("|")) > maxPipes:
			what, mend = fmt.Sprintf("the line has more than %d bars, and the file was not read", maxPipes), "write a narrower table"
		case marks > maxMarks:
			what, mend = fmt.Sprintf("more than %d marks of emphasis and links stand here without a blank line, and the file was not read", maxMarks), "put blank lines between paragraphs"
		default:
			continue
		}
		s.say("file-too-complex", at, what, why, mend)
		return false
	}
	return true
}

// Lesson reads a lesson from bytes that need not be in a pack. It is nil when it
// cannot be read; findings say why.
func Lesson(module, lang string, b []byte) (*lesson.Lesson, []finding.Finding) {
	s := subject{r: &reader{pack: &pack.Pack{Figures: map[string]*pack.Figure{}}}, module: module, lang: lang}
	s.file = source.New(path.Join(module, lang+".md"), bytes.TrimPrefix(b, byteOrderMark))
	if len(b) > maxMarkdown || !s.isText() {
		return nil, s.r.findings
	}
	return s.lesson(), s.r.findings
}

// lesson reads the subject's file as a lesson, or says why it cannot and returns nil.
func (s subject) lesson() *lesson.Lesson {
	if !s.plainLesson() {
		return nil
	}
	l := &lesson.Lesson{Module: s.module, Lang: s.lang, File: s.file}
	c := converter{subject: s, src: s.file.Bytes, starts: map[ast.Node]int{}, spans: map[ast.Node]source.Span{}}
	doc := newMarkdown().Parser().Parse(text.NewReader(c.src))
	into := &l.Lead
	for _, n := range c.children(doc) {
		h, ok := n.(*ast.Heading)
		switch {
		case ok && h.Level == 1 && l.Title == nil && len(l.Lead) == 0 && len(l.Parts) == 0:
			l.Title, l.Span = c.inlines(h), c.span(h)
		case ok && h.Level == 2:
			classes := c.classes(h)
			l.Parts = append(l.Parts, lesson.Part{
				Role: role(classes), Classes: classes, Heading: c.inlines(h), Span: c.span(h),
			})
			into = &l.Parts[len(l.Parts)-1].Blocks
		default:
			*into = c.block(*into, n, 1)
		}
	}
	return l
}

// role is the first class that is a role.
func role(classes []string) lesson.Role {
	for _, c := range classes {
		if slices.Contains(lesson.Roles, lesson.Role(c)) {
			return lesson.Role(c)
		}
	}
	return lesson.Prose
}

// classes reads the braces after a heading. Nothing but classes means anything there.
func (c converter) classes(h *ast.Heading) []string {
	var out []string
	for _, a := range h.Attributes() {
		if v, ok := a.Value.([]byte); ok && string(a.Name) == "class" {
			out = append(out, strings.Fields(string(v))...)
		}
	}
	return out
}

// A converter makes lesson nodes of the Markdown library's nodes.
type converter struct {
	subject
	src    []byte
	starts map[ast.Node]int
	spans  map[ast.Node]source.Span
}

// block appends what a block node means to out. depth counts the blocks it lies in.
func (c converter) block(out []lesson.Block, n ast.Node, depth int) []lesson.Block {
	b := lesson.Block{Span: c.span(n)}
	if depth > maxNesting {
		c.say("file-too-complex", b.Span, fmt.Sprintf("blocks lie more than %d deep inside each other here", maxNesting),
			"They would leave no room for words on the page.", "write fewer levels")
		return out
	}
	switch n := n.(type) {
	case *ast.Paragraph, *ast.TextBlock:
		if img := alone(n); img != nil {
			b.Kind, b.Alt = lesson.Figure, lesson.Plain(c.inlines(img))
			b.Source = c.picture(img, b.Span)
			break
		}
		b.Inlines = c.inlines(n)
		if len(b.Inlines) == 0 {
			return out
		}
	case *ast.Heading:
		b.Kind, b.Level, b.Inlines = lesson.Heading, n.Level, c.inlines(n)
	case *ast.List:
		b.Kind, b.Ordered, b.Start = lesson.List, n.IsOrdered(), n.Start
		for item := n.FirstChild(); item != nil; item = item.NextSibling() {
			it := lesson.Item{Span: c.span(item), Task: task(item)}
			for _, child := range c.children(item) {
				it.Blocks = c.block(it.Blocks, child, depth+1)
			}
			b.Items = append(b.Items, it)
		}
	case *ast.Blockquote:
		b.Kind = lesson.Quote
		for _, child := range c.children(n) {
			b.Blocks = c.block(b.Blocks, child, depth+1)
		}
	case *tables.Table:
		c.table(&b, n)
	case *ast.CodeBlock, *ast.FencedCodeBlock:
		b.Kind = lesson.Code
		if t := string(n.Lines().Value(c.src)); t != "" {
			b.Inlines = []lesson.Inline{{Kind: lesson.Text, Text: strings.TrimSuffix(t, "\n"), Span: b.Span}}
		}
	case *ast.ThematicBreak:
		b.Kind = lesson.Rule
	case *ast.HTMLBlock:
		c.rawHTML(b.Span)
		return out
	default: // a link reference definition prints nothing
		return out
	}
	return append(out, b)
}

// alone returns the image that is all a paragraph holds, or nil.
func alone(n ast.Node) *ast.Image {
	img, _ := n.FirstChild().(*ast.Image)
	if img != nil && n.ChildCount() == 1 {
		return img
	}
	return nil
}

// task reads the box at the start of a list item.
func task(item ast.Node) lesson.Task {
	if first := item.FirstChild(); first != nil {
		if box, ok := first.FirstChild().(*tables.TaskCheckBox); ok {
			if box.IsChecked {
				return lesson.Ticked
			}
			return lesson.Open
		}
	}
	return lesson.NoTask
}

func (c converter) table(b *lesson.Block, t *tables.Table) {
	b.Kind = lesson.Table
	for _, a := range t.Alignments {
		b.Align = append(b.Align, map[tables.Alignment]lesson.Align{
			tables.AlignCenter: lesson.AlignCentre, tables.AlignRight: lesson.AlignEnd,
		}[a])
	}
	for row := t.FirstChild(); row != nil; row = row.NextSibling() {
		r := lesson.Row{Span: c.span(row)}
		for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
			r.Cells = append(r.Cells, c.inlines(cell))
		}
		b.Rows = append(b.Rows, r)
	}
}

func (c converter) rawHTML(at source.Span) {
	c.say("raw-html", at, "HTML is not allowed in a lesson",
		"It cannot be printed, and on a page it could run a program.",
		"write plain Markdown; put a backslash before < when the sign itself is meant")
}
