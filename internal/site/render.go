package site

import (
	"fmt"
	"html"
	"html/template"
	"strings"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
)

// renderer writes the blocks of one page. Everything that comes from a pack is escaped.
type renderer struct {
	e       *translate.Edition
	page    string
	figures int // so far, for ids
}

func esc(s string) string { return html.EscapeString(s) }

func (r *renderer) blocks(bs []lesson.Block) template.HTML {
	var b strings.Builder
	for i := range bs {
		r.block(&b, &bs[i])
	}
	return template.HTML(b.String())
}

// tight writes the blocks of a list item: a single paragraph needs no element of its own.
func (r *renderer) tight(bs []lesson.Block) string {
	if len(bs) > 0 && bs[0].Kind == lesson.Paragraph {
		return string(r.inlines(bs[0].Inlines)) + string(r.blocks(bs[1:]))
	}
	return string(r.blocks(bs))
}

func (r *renderer) block(b *strings.Builder, bl *lesson.Block) {
	switch bl.Kind {
	case lesson.Paragraph:
		fmt.Fprintf(b, "<p>%s</p>\n", r.inlines(bl.Inlines))
	case lesson.Heading:
		fmt.Fprintf(b, "<h%d>%s</h%d>\n", bl.Level, r.inlines(bl.Inlines), bl.Level)
	case lesson.List:
		tag := "ul"
		start := ""
		if bl.Ordered {
			tag = "ol"
			if bl.Start != 1 {
				start = fmt.Sprintf(` start="%d"`, bl.Start)
			}
		}
		fmt.Fprintf(b, "<%s%s>\n", tag, start)
		for _, it := range bl.Items {
			fmt.Fprintf(b, "<li>%s</li>\n", r.tight(it.Blocks))
		}
		fmt.Fprintf(b, "</%s>\n", tag)
	case lesson.Quote:
		fmt.Fprintf(b, "<blockquote>%s</blockquote>\n", r.blocks(bl.Blocks))
	case lesson.Code:
		fmt.Fprintf(b, "<pre>%s</pre>\n", r.inlines(bl.Inlines))
	case lesson.Rule:
		b.WriteString("<hr>\n")
	case lesson.Figure:
		b.WriteString(r.figure(bl))
	case lesson.Table:
		r.table(b, bl)
	}
}

func (r *renderer) table(b *strings.Builder, bl *lesson.Block) {
	b.WriteString("<div class=\"wide\"><table>\n")
	for i, row := range bl.Rows {
		cell := "td"
		if i == 0 {
			b.WriteString("<thead>")
			cell = `th scope="col"`
		}
		b.WriteString("<tr>")
		for _, c := range row.Cells {
			fmt.Fprintf(b, "<%s>%s</%s>", cell, r.inlines(c), cell[:2])
		}
		b.WriteString("</tr>")
		if i == 0 {
			b.WriteString("</thead><tbody>")
		}
		b.WriteString("\n")
	}
	b.WriteString("</tbody></table></div>\n")
}

// figure writes a drawing; its alternative text is its title. It is never mirrored.
func (r *renderer) figure(bl *lesson.Block) string {
	f := r.e.Pack.Figures[bl.Source]
	if f == nil || f.Drawing == nil {
		return "" // a rule has said so already
	}
	r.figures++
	svg := f.Drawing.SVG(drawing.Labels{ID: fmt.Sprintf("figure-%s-%d", r.page, r.figures), Title: bl.Alt, Key: r.e.Locale.Digits})
	return "<figure>" + string(svg) + "</figure>\n"
}

func (r *renderer) inlines(ins []lesson.Inline) template.HTML {
	var b strings.Builder
	for i := range ins {
		r.inline(&b, &ins[i])
	}
	return template.HTML(b.String())
}

func (r *renderer) inline(b *strings.Builder, in *lesson.Inline) {
	switch in.Kind {
	case lesson.Text:
		b.WriteString(esc(in.Text))
	case lesson.CodeSpan:
		fmt.Fprintf(b, "<code>%s</code>", esc(in.Text))
	case lesson.Break:
		b.WriteString("<br>")
	case lesson.Strong, lesson.Emphasis:
		fmt.Fprintf(b, "<strong>%s</strong>", r.inlines(in.Children))
	case lesson.Link:
		r.link(b, in)
	}
}

// link writes what a link means. Only module, source and outside addresses lead anywhere.
func (r *renderer) link(b *strings.Builder, in *lesson.Inline) {
	text := r.inlines(in.Children)
	switch in.Scheme {
	case "number":
		fmt.Fprintf(b, `<bdi class="number">%s</bdi>`, text)
	case "source":
		fmt.Fprintf(b, `<a class="source" href="index.html#source-%s">%s</a>`, esc(in.Target), text)
	case "module":
		fmt.Fprintf(b, `<a href="%s.html">%s</a>`, esc(in.Target), text)
	case "https", "mailto", "tel":
		fmt.Fprintf(b, `<a href="%s:%s">%s</a>`, in.Scheme, esc(in.Target), text)
	default:
		b.WriteString(string(text))
	}
}
