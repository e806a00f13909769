package load

import (
	"bytes"
	"html"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	tables "github.com/yuin/goldmark/extension/ast"

	"wardleaf/internal/lesson"
	"wardleaf/internal/source"
)

// inlines makes inlines of a node's children. Neighbouring text on one line is one Text.
func (c converter) inlines(parent ast.Node) []lesson.Inline {
	var out []lesson.Inline
	for n := parent.FirstChild(); n != nil; n = n.NextSibling() {
		in := lesson.Inline{Span: c.span(n)}
		switch n := n.(type) {
		case *ast.Text:
			out = c.text(out, n, in.Span)
			continue
		case *ast.Emphasis:
			in.Kind = lesson.Emphasis
			if n.Level == 2 {
				in.Kind = lesson.Strong
			}
			in.Children = c.inlines(n)
		case *ast.CodeSpan:
			in.Kind, in.Text = lesson.CodeSpan, c.code(n)
		case *ast.Link:
			in.Kind, in.Children = lesson.Link, c.inlines(n)
			if !c.link(&in, n.Destination) {
				out = append(out, in.Children...)
				continue
			}
		case *ast.AutoLink:
			label := string(n.Label(c.src))
			inner := source.Span{Start: in.Span.Start + 1, End: in.Span.End - 1}
			in.Kind = lesson.Link
			in.Children = []lesson.Inline{{Kind: lesson.Text, Text: label, Span: inner}}
			address := n.URL(c.src)
			if n.AutoLinkType == ast.AutoLinkEmail && !bytes.HasPrefix(bytes.ToLower(address), []byte("mailto:")) {
				address = append([]byte("mailto:"), address...)
			}
			if !c.link(&in, address) {
				out = append(out, in.Children...)
				continue
			}
		case *ast.Image:
			in.Kind, in.Text = lesson.Image, lesson.Plain(c.inlines(n))
			in.Target = c.picture(n, in.Span)
		case *ast.RawHTML:
			c.rawHTML(in.Span)
			continue
		case *tables.TaskCheckBox: // held by the list item
			continue
		default:
			continue
		}
		out = append(out, in)
	}
	return out
}

// text appends a run of text; a soft line break becomes a space, a hard one a Break.
func (c converter) text(out []lesson.Inline, n *ast.Text, span source.Span) []lesson.Inline {
	s := plain(n.Segment.Value(c.src))
	if n.SoftLineBreak() {
		s += " "
	}
	if last := len(out) - 1; last >= 0 && out[last].Kind == lesson.Text && out[last].Span.End == span.Start {
		out[last].Text += s
		out[last].Span.End = span.End
	} else if s != "" {
		out = append(out, lesson.Inline{Kind: lesson.Text, Text: s, Span: span})
	}
	if n.HardLineBreak() {
		out = append(out, lesson.Inline{Kind: lesson.Break, Span: c.lineEnd(span.End)})
	}
	return out
}

// code is the text of a code span; a line end in it is a space (CommonMark 6.1).
func (c converter) code(n *ast.CodeSpan) string {
	var b strings.Builder
	for t := n.FirstChild(); t != nil; t = t.NextSibling() {
		if t, ok := t.(*ast.Text); ok {
			b.Write(t.Segment.Value(c.src))
		}
	}
	return strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ").Replace(b.String())
}

// plain is text as a reader sees it: unescaped, and one blank instead of several.
func plain(b []byte) string {
	var out strings.Builder
	blank := false
	for _, c := range unescape(b) {
		isBlank := c == ' ' || c == '\t' || c == '\r' || c == '\n'
		if !isBlank {
			out.WriteRune(c)
		} else if !blank {
			out.WriteByte(' ')
		}
		blank = isBlank
	}
	return out.String()
}

// unescape resolves backslash escapes and character references (CommonMark 2.4, 2.5).
func unescape(b []byte) string {
	var out strings.Builder
	for i := 0; i < len(b); {
		switch {
		case b[i] == '\\' && i+1 < len(b) && isPunct(b[i+1]):
			out.WriteByte(b[i+1])
			i += 2
		case b[i] == '&':
			s, n := reference(b[i:])
			out.WriteString(s)
			i += n
		default:
			out.WriteByte(b[i])
			i++
		}
	}
	return out.String()
}

var (
	namedReference   = regexp.MustCompile(`^&[A-Za-z][A-Za-z0-9]{1,31};`)
	numericReference = regexp.MustCompile(`^&#(?:[xX]([0-9A-Fa-f]{1,6})|([0-9]{1,7}));`)
)

// reference reads the character reference at the start of b, or the ampersand alone,
// and returns its text and its length in b.
func reference(b []byte) (string, int) {
	if m := numericReference.FindSubmatch(b); m != nil {
		digits, base := string(m[2]), 10
		if len(m[1]) > 0 {
			digits, base = string(m[1]), 16
		}
		n, _ := strconv.ParseInt(digits, base, 32)
		if n == 0 || !utf8.ValidRune(rune(n)) {
			n = utf8.RuneError
		}
		return string(rune(n)), len(m[0])
	}
	if m := namedReference.Find(b); m != nil {
		// Older names are known without their semicolon, too; then it is left over.
		if s := html.UnescapeString(string(m)); s == ";" || !strings.HasSuffix(s, ";") {
			return s, len(m)
		}
	}
	return "&", 1
}

// isPunct reports ASCII punctuation.
func isPunct(c byte) bool {
	return c >= '!' && c <= '/' || c >= ':' && c <= '@' || c >= '[' && c <= '`' || c >= '{' && c <= '~'
}
