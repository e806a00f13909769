package site

import (
	"fmt"
	"html"
	"html/template"
	"net/url"
	"slices"
	"strings"
	"unicode/utf8"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
)

// renderer writes the blocks of one module. Everything that comes from a pack is escaped.
type renderer struct {
	e       *translate.Edition
	module  string
	level   int // of the heading above, so that none is skipped
	figures int // so far, for ids
}

// figureID is the id of the last figure written.
func (r *renderer) figureID() string { return fmt.Sprintf("figure-%s-%d", r.module, r.figures) }

func esc(s string) string { return html.EscapeString(s) }

func (r *renderer) blocks(bs []lesson.Block) template.HTML {
	var b strings.Builder
	for i := range bs {
		r.block(&b, &bs[i])
	}
	return template.HTML(b.String())
}

func (r *renderer) block(b *strings.Builder, bl *lesson.Block) {
	switch bl.Kind {
	case lesson.Paragraph:
		fmt.Fprintf(b, "<p>%s</p>\n", r.inlines(bl.Inlines))
	case lesson.Heading:
		r.level = min(bl.Level, r.level+1)
		fmt.Fprintf(b, "<h%d>%s</h%d>\n", r.level, r.inlines(bl.Inlines), r.level)
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
			said := r.said(it.Blocks)
			fmt.Fprintf(b, "<li>%s%s</li>\n", said.Line, said.Rest)
		}
		fmt.Fprintf(b, "</%s>\n", tag)
	case lesson.Quote:
		fmt.Fprintf(b, "<blockquote>%s</blockquote>\n", r.blocks(bl.Blocks))
	case lesson.Code:
		fmt.Fprintf(b, "<pre>%s</pre>\n", r.inlines(bl.Inlines))
	case lesson.Rule:
		b.WriteString("<hr>\n")
	case lesson.Figure:
		b.WriteString(string(r.figure(bl)))
	case lesson.Form:
		r.form(b, bl)
	case lesson.Table:
		r.table(b, bl)
	}
}

func (r *renderer) table(b *strings.Builder, bl *lesson.Block) {
	class := ""
	if bl.Ruled {
		class = " class=\"ruled\""
	}
	b.WriteString("<div class=\"wide\" tabindex=\"0\"><table" + class + ">\n") // a reader without a mouse must be able to scroll it
	if bl.Caption != "" {
		fmt.Fprintf(b, "<caption>%s</caption>\n", esc(bl.Caption))
	}
	for i, row := range bl.Rows {
		cell := "td"
		if i == 0 {
			b.WriteString("<thead>")
			cell = `th scope="col"`
		}
		b.WriteString("<tr>")
		for k, c := range row.Cells {
			end := ""
			if k < len(bl.Align) && bl.Align[k] == lesson.AlignEnd {
				end = " class=\"end\""
			}
			tag := cell
			if bl.Heads && i > 0 && k == 0 {
				tag = `th scope="row"`
			}
			fmt.Fprintf(b, "<%s%s>%s</%s>", tag, end, r.inlines(c), tag[:2])
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
func (r *renderer) figure(bl *lesson.Block) template.HTML {
	if name := bl.Sheet(); name != "" {
		return r.placed(name)
	}
	if bl.Drawing != nil {
		return r.chart(bl)
	}
	f := r.e.Pack.Figures[bl.Source]
	if f == nil || f.Drawing == nil {
		return "" // a rule has said so already
	}
	r.figures++
	svg := f.Drawing.SVG(drawing.Labels{ID: r.figureID(), Title: bl.Alt, Key: r.e.Locale.Digits})
	return template.HTML("<div class=\"figure\">" + string(svg) + "</div>\n")
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
		b.WriteString(strings.ReplaceAll(esc(in.Text), translate.Blank, blank))
	case lesson.CodeSpan:
		fmt.Fprintf(b, "<code>%s</code>", esc(in.Text))
	case lesson.Break:
		b.WriteString("<br>")
	case lesson.Strong:
		fmt.Fprintf(b, "<strong>%s</strong>", r.inlines(in.Children))
	case lesson.Emphasis:
		fmt.Fprintf(b, "<em>%s</em>", r.inlines(in.Children))
	case lesson.Image:
		b.WriteString(esc(in.Text)) // a rule has said so already
	case lesson.Link:
		r.link(b, in)
	}
}

// blank is a line to write on. It says nothing to a screen reader.
const blank = `<span class="blank"></span>`

// oneLine is how many characters are kept on one line at most; more could be wider
// than the column of a phone.
const oneLine = 20

// whole names the class, and whether what is shown may be broken between lines.
func whole(class string, in *lesson.Inline) string {
	if utf8.RuneCountInString(lesson.Plain(in.Children)) > oneLine {
		return class
	}
	return class + " whole-line"
}

// link writes what a link means. What it leads to is there, or it is plain text.
func (r *renderer) link(b *strings.Builder, in *lesson.Inline) {
	text := r.inlines(in.Children)
	switch in.Scheme {
	case "number":
		fmt.Fprintf(b, `<bdi class="%s">%s</bdi>`, whole("number", in), text)
		return
	case "facility":
		fmt.Fprintf(b, "%s\u00a0%s", text, r.phone(in.Target))
		return
	case "source":
		if r.e.Pack.Sources[in.Target] != nil {
			fmt.Fprintf(b, `<a class="%s" href="index.html#source-%s">%s</a>`, whole("source", in), esc(url.PathEscape(in.Target)), text)
			return
		}
	case "module":
		if slices.ContainsFunc(r.e.Modules, func(m translate.Module) bool { return m.ID == in.Target }) {
			fmt.Fprintf(b, `<a href="%s.html">%s</a>`, esc(url.PathEscape(in.Target)), text)
			return
		}
	case "https", "mailto", "tel":
		fmt.Fprintf(b, `<a href="%s:%s">%s</a>`, in.Scheme, esc(in.Target), text)
		return
	}
	b.WriteString(string(text))
}

// phone writes a contact of the facility in brackets: a number to tap, other words,
// or a line to write on.
func (r *renderer) phone(id string) string {
	c := r.e.Pack.Facility.Contact(id)
	if c == nil || c.Value == "" {
		return `<span class="whole-line">(` + blank + `)</span>`
	}
	shown := esc(r.e.Locale.Digits(c.Value))
	if tel := dialled(c.Value); tel != "" {
		return fmt.Sprintf(`<span class="whole-line">(<a href="tel:%s"><bdo dir="ltr">%s</bdo></a>)</span>`, tel, shown)
	}
	return "(<bdi>" + shown + "</bdi>)"
}
