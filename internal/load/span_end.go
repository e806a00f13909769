package load

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	tables "github.com/yuin/goldmark/extension/ast"

	"wardleaf/internal/source"
)

// end finds where a node that starts at start ends.
func (c converter) end(n ast.Node, start int) int {
	switch n := n.(type) {
	case *ast.Text:
		return start + n.Segment.Stop - n.Segment.Start
	case *ast.Emphasis:
		return c.contentEnd(n, start+n.Level) + n.Level
	case *ast.CodeSpan:
		return c.codeSpanEnd(n, start)
	case *ast.Link:
		return c.linkEnd(c.contentEnd(n, start+1), n.Destination, n.Title, n.Reference)
	case *ast.Image:
		return c.linkEnd(c.contentEnd(n, start+2), n.Destination, n.Title, n.Reference)
	case *ast.AutoLink:
		return start + len(n.Label(c.src)) + 2
	case *ast.RawHTML:
		return segmentsEnd(n.Segments.Len(), func(i int) int { return n.Segments.At(i).Stop }, start)
	case *tables.TaskCheckBox:
		return start + 3
	case *ast.HTMLBlock:
		end := c.trimmed(start, segmentsEnd(n.Lines().Len(), func(i int) int { return n.Lines().At(i).Stop }, start))
		if n.HasClosure() {
			end = max(end, c.trimmed(start, n.ClosureLine.Stop))
		}
		return end
	case *ast.FencedCodeBlock:
		return c.fenceEnd(n, start)
	case *ast.Heading, *ast.ThematicBreak, *tables.TableHeader, *tables.TableRow:
		if n.Type() == ast.TypeBlock && n.Lines().Len() > 1 { // an underlined heading of several lines
			start = n.Lines().At(n.Lines().Len() - 1).Start
		}
		return c.trimmed(start, c.lineEnd(start).Start)
	case *ast.List, *ast.ListItem, *ast.Blockquote, *tables.Table:
		if inside := c.children(n); len(inside) > 0 {
			return c.span(inside[len(inside)-1]).End
		}
		return c.trimmed(start, c.lineEnd(start).Start)
	}
	if n.Type() == ast.TypeBlock {
		return c.trimmed(start, segmentsEnd(n.Lines().Len(), func(i int) int { return n.Lines().At(i).Stop }, start))
	}
	return start
}

func segmentsEnd(n int, stop func(int) int, start int) int {
	if n == 0 {
		return start
	}
	return stop(n - 1)
}

// contentEnd is where the last child ends, or from when there is none.
func (c converter) contentEnd(n ast.Node, from int) int {
	if last := n.LastChild(); last != nil {
		return c.span(last).End
	}
	return from
}

// codeSpanEnd skips to the run of backticks that is as long as the opening one.
func (c converter) codeSpanEnd(n *ast.CodeSpan, start int) int {
	ticks := 0
	for start+ticks < len(c.src) && c.src[start+ticks] == '`' {
		ticks++
	}
	from := max(c.contentEnd(n, start+ticks), start+ticks)
	if i := bytes.IndexByte(c.src[min(from, len(c.src)):], '`'); i >= 0 {
		return from + i + ticks
	}
	return from
}

// linkEnd finds the end of a link or image whose text ends at from.
func (c converter) linkEnd(from int, destination, title []byte, ref *ast.ReferenceLink) int {
	i := c.after(from, "]")
	switch {
	case ref != nil && ref.Type == ast.ReferenceLinkShortcut:
		return i
	case ref != nil:
		return c.after(i+1, "]") // i is at "["
	}
	i++ // "("
	if len(destination) > 0 {
		if d := bytes.Index(c.src[min(i, len(c.src)):], destination); d >= 0 {
			i += d + len(destination)
		}
	}
	if i < len(c.src) && c.src[i] == '>' {
		i++
	}
	for ; i < len(c.src); i++ { // only blanks and the marks of enclosing blocks can stand here
		switch c.src[i] {
		case ')':
			return i + 1
		case '"', '\'':
			i = c.after(i+1, string(c.src[i])) - 1
		case '(':
			i = c.after(i+1, ")") - 1
		}
	}
	return i
}

// after returns the place behind the first mark at or after from that is not escaped.
func (c converter) after(from int, mark string) int {
	for i := from; i < len(c.src); i++ {
		if c.src[i] == '\\' {
			i++
		} else if c.src[i] == mark[0] {
			return i + 1
		}
	}
	return len(c.src)
}

// fenceEnd is the end of the closing fence, or of the code when there is none.
func (c converter) fenceEnd(n *ast.FencedCodeBlock, start int) int {
	next := c.lineEnd(start).End
	end := c.lineEnd(start).Start
	if k := n.Lines().Len(); k > 0 {
		next = n.Lines().At(k - 1).Stop
		end = c.trimmed(start, next)
	}
	line := c.src[min(next, len(c.src)):c.lineEnd(next).Start]
	if c.following(n) >= next+len(line) && bytes.HasPrefix(bytes.TrimLeft(line, " \t>"), bytes.Repeat(c.src[start:start+1], 3)) {
		return c.trimmed(start, next+len(line))
	}
	return c.trimmed(start, end)
}

// following is where the next block after a block starts, or the end of the file.
func (c converter) following(n ast.Node) int {
	for ; n != nil; n = n.Parent() {
		if next := n.NextSibling(); next != nil {
			return c.start(next)
		}
	}
	return len(c.src)
}

// lineEnd spans the line end at or after offset i: "\n", "\r\n", or nothing at the end of the file.
func (c converter) lineEnd(i int) source.Span {
	i = min(max(i, 0), len(c.src))
	nl := bytes.IndexByte(c.src[i:], '\n')
	if nl < 0 {
		return source.Span{Start: len(c.src), End: len(c.src)}
	}
	return source.Span{Start: i + nl, End: i + nl + 1}
}

// trimmed moves end back over blanks and line ends, but not past start.
func (c converter) trimmed(start, end int) int {
	end = min(end, len(c.src))
	for end > start && bytes.IndexByte([]byte(" \t\r\n"), c.src[end-1]) >= 0 {
		end--
	}
	return end
}
