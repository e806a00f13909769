package load

import (
	"bytes"
	"cmp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	tables "github.com/yuin/goldmark/extension/ast"

	"wardleaf/internal/source"
)

// span gives the bytes that a node was made from, marks included: for a link from its
// bracket to its closing parenthesis, for a heading its line with hashes and classes,
// for a list or quote up to the end of what it holds.
//
// The library gives where a node starts, or nothing, and never where it ends; the
// ends are found here. A span never leaves the file and never ends before it starts.
func (c converter) span(n ast.Node) source.Span {
	if s, known := c.spans[n]; known {
		return s
	}
	start := c.start(n)
	s := source.Span{Start: start, End: min(max(c.end(n, start), start), len(c.src))}
	c.spans[n] = s
	return s
}

// start is where a span starts. Nodes look at their neighbours for it, so it is kept.
func (c converter) start(n ast.Node) int {
	i, known := c.starts[n]
	if !known {
		i = min(max(c.findStart(n), 0), len(c.src))
		c.starts[n] = i
	}
	return i
}

func (c converter) findStart(n ast.Node) int {
	switch n := n.(type) {
	case *ast.Emphasis:
		// Its own position is that of a run of marks that it may share with others.
		if first := n.FirstChild(); first != nil {
			return c.start(first) - n.Level
		}
	case *ast.Text:
		// What is left of a run of marks keeps the run's start, though the emphasis
		// before it has used the first ones up.
		if e, ok := n.PreviousSibling().(*ast.Emphasis); ok {
			return max(n.Segment.Start, c.span(e).End)
		}
		return n.Segment.Start
	case *tables.Table:
		// Its own position is that of the paragraph before it, when there is one.
		if head := n.FirstChild(); head != nil {
			return c.start(head)
		}
	case *ast.Heading:
		if n.Lines().Len() > 0 {
			first := n.Lines().At(0).Start
			line := bytes.LastIndexByte(c.src[:first], '\n') + 1
			if i := bytes.IndexByte(c.src[line:first], '#'); i >= 0 {
				return line + i
			}
			return first // underlined
		}
	case *ast.CodeBlock:
		if n.Lines().Len() > 0 {
			return n.Lines().At(0).Start
		}
	}
	if n.Pos() < 0 {
		return c.firstPos(n)
	}
	return c.mark(n)
}

// marks are the characters with which a block begins.
func marks(n ast.Node) string {
	switch n.(type) {
	case *ast.Heading:
		return "#"
	case *ast.List, *ast.ListItem:
		return "-+*0123456789"
	case *ast.Blockquote:
		return ">"
	case *ast.FencedCodeBlock:
		return "`~"
	case *ast.ThematicBreak:
		return "-*_"
	case *ast.HTMLBlock:
		return "<"
	}
	return ""
}

// mark finds the first mark of a block. Where a tab stands before a block, the library
// counts the columns that are left of the tab as bytes, and its position lies up to
// three bytes too far on.
func (c converter) mark(n ast.Node) int {
	pos, set := min(n.Pos(), len(c.src)), marks(n)
	begins := func(i int) bool {
		return i < len(c.src) && strings.IndexByte(set, c.src[i]) >= 0 &&
			(i == 0 || strings.IndexByte(" \t>\n", c.src[i-1]) >= 0)
	}
	line := bytes.LastIndexByte(c.src[:pos], '\n') + 1
	if set == "" || begins(pos) && bytes.IndexByte(c.src[line:pos], '\t') < 0 {
		return pos
	}
	least := 0
	if prev := n.PreviousSibling(); prev != nil {
		least = c.span(prev).End
	} else if p := n.Parent(); p != nil {
		least = c.start(p)
		if n.Kind() != ast.KindListItem { // a list begins where its first item does
			least++
		}
	}
	for i := max(least, pos-3); i < pos; i++ {
		if begins(i) {
			return i
		}
	}
	return pos
}

// children returns the blocks in a node in the order of the file. The library puts an
// underlined heading after the table that interrupts it.
func (c converter) children(n ast.Node) []ast.Node {
	var out []ast.Node
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		out = append(out, child)
	}
	slices.SortStableFunc(out, func(a, b ast.Node) int { return cmp.Compare(c.start(a), c.start(b)) })
	return out
}

// firstPos is for nodes without a position: that of the nearest node before it.
func (c converter) firstPos(n ast.Node) int {
	if prev := n.PreviousSibling(); prev != nil {
		return c.span(prev).End
	}
	if p := n.Parent(); p != nil {
		return p.Pos()
	}
	return 0
}
