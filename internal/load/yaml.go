package load

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// kind tells the values of a record apart.
type kind int

const (
	nothing kind = iota // nothing written, or null
	scalar
	list
	mapping
)

func (k kind) String() string {
	return [...]string{"nothing", "one value", "a list", "a group of named values"}[k]
}

// A value is one node of a record, a subset of YAML 1.2: scalars as they were
// written, lists and mappings. There are no anchors, tags or types in it.
type value struct {
	kind    kind
	text    string // scalar
	items   []*value
	entries []entry
	span    source.Span
}

type entry struct {
	key   string
	at    source.Span // of the key
	value *value
}

// yaml parses the subject's file. It returns nil after saying why it could not.
// A file with nothing in it is a value of kind nothing.
func (s subject) yaml() *value {
	if !s.plainRecord() {
		return nil
	}
	// The parser counts some line ends of two bytes twice; lines and columns are the
	// same without. Names given twice are refused by mapping, which knows both places.
	text := bytes.ReplaceAll(s.file.Bytes, []byte("\r\n"), []byte("\n"))
	f, err := parser.ParseBytes(text, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		s.badSyntax(err)
		return nil
	}
	v := &value{}
	for i, d := range f.Docs {
		switch {
		case d.Body == nil:
		case i > 0 && v.kind != nothing:
			s.say("record-syntax", s.node(d.Body), "a second document begins here",
				"Only the first would be read.", "take the line with --- out")
		default:
			v = s.tree(d.Body, 0)
		}
	}
	return v
}

// Limits that keep the parser's time within a second; it takes the square of some
// counts, and more memory than there is for deep nesting on one line.
const (
	maxRecordLines   = 6000
	maxRecordFlow    = 5000 // brackets that open
	maxRecordDashes  = 16   // list marks at the start of one line
	maxRecordNesting = 12
)

func (s subject) plainRecord() bool {
	const why = "No record needs it, and reading it would hold up everyone who prints."
	flow := 0
	for n, rest := 0, s.file.Bytes; len(rest) > 0; n++ {
		at := source.Span{Start: len(s.file.Bytes) - len(rest)}
		at.End = at.Start
		line := rest
		if i := bytes.IndexByte(rest, '\n'); i >= 0 {
			line, rest = rest[:i], rest[i+1:]
		} else {
			rest = nil
		}
		flow += bytes.Count(line, []byte("[")) + bytes.Count(line, []byte("{"))
		dashes := 0
		for _, w := range bytes.Fields(line[:min(len(line), 200)]) {
			if len(w) > 1 {
				break
			}
			dashes++
		}
		switch {
		case n >= maxRecordLines:
			s.say("file-too-complex", at, fmt.Sprintf("the file has more than %d lines and was not read", maxRecordLines), why, "split it, or take out what does not belong")
			return false
		case flow > maxRecordFlow:
			s.say("file-too-complex", at, fmt.Sprintf("the file has more than %d opening brackets and was not read", maxRecordFlow), why, "write values on lines of their own")
			return false
		case dashes > maxRecordDashes:
			s.say("file-too-complex", at, "lists lie too deep inside each other, and the file was not read", why, "write a plain list")
			return false
		}
	}
	return true
}

func (s subject) badSyntax(err error) {
	what, at := err.Error(), source.Span{}
	var positioned interface {
		GetMessage() string
		GetToken() *token.Token
	}
	if errors.As(err, &positioned) {
		what = positioned.GetMessage()
		if t := positioned.GetToken(); t != nil {
			at = s.token(t)
		}
	}
	what, _, _ = strings.Cut(what, "\n")
	s.say("record-syntax", at, "this is not well-formed YAML: "+what,
		"Nothing of this file can be used until it is.",
		"look at this line and the one above: an indent made of spaces, one space after each colon, quotes and brackets closed")
}

// tree turns a parsed node into a value. depth bounds nesting.
func (s subject) tree(n ast.Node, depth int) *value {
	at := s.node(n)
	if depth > maxRecordNesting {
		s.say("file-too-complex", at, "values lie too deep inside each other here", "No record needs it.", "write fewer levels")
		return &value{span: at}
	}
	switch n := n.(type) {
	case *ast.AnchorNode, *ast.AliasNode, *ast.MergeKeyNode:
		s.sharedValue(at)
	case *ast.TagNode:
		s.say("record-syntax", at, "a type mark is not used here", "What a value is follows from its name.", "take the word that begins with ! out")
	case *ast.MappingNode:
		return s.mapping(n.Values, at, depth)
	case *ast.MappingValueNode:
		return s.mapping([]*ast.MappingValueNode{n}, at, depth)
	case *ast.SequenceNode:
		v := &value{kind: list, span: at}
		for _, item := range n.Values {
			v.items = append(v.items, s.tree(item, depth+1))
		}
		return v
	case *ast.NullNode:
	case *ast.LiteralNode:
		return &value{kind: scalar, text: n.Value.Value, span: at}
	case *ast.StringNode:
		return &value{kind: scalar, text: n.Value, span: at}
	case *ast.CommentGroupNode, nil:
	default:
		if t := n.GetToken(); t != nil {
			return &value{kind: scalar, text: t.Value, span: at}
		}
	}
	return &value{span: at}
}

func (s subject) mapping(values []*ast.MappingValueNode, at source.Span, depth int) *value {
	v := &value{kind: mapping, span: at}
	seen := map[string]source.Span{}
	for _, mv := range values {
		key := s.node(mv.Key)
		if mv.Key.IsMergeKey() {
			s.sharedValue(key)
			continue
		}
		var name string
		switch k := mv.Key.(type) {
		case *ast.StringNode:
			name = k.Value
		case ast.ScalarNode:
			name = k.GetToken().Value
		default:
			s.say("record-syntax", key, "a name must be one plain word", "Nothing refers to it.", "write the name and a colon")
			continue
		}
		if first, ok := seen[name]; ok {
			s.say("record-key-twice", key, fmt.Sprintf("%s stands here twice", name),
				"One of the two would be lost without a word.", "keep one of them")
			last := &s.r.findings[len(s.r.findings)-1]
			last.Related = []finding.Related{{Place: finding.Place{File: s.file, Span: first}, Text: "first written here"}}
			continue
		}
		seen[name] = key
		val := s.tree(mv.Value, depth+1)
		if val.kind == nothing {
			val.span = key
		}
		v.entries = append(v.entries, entry{name, key, val})
	}
	if len(v.entries) > 0 {
		v.span.Start = min(v.span.Start, v.entries[0].at.Start)
	}
	return v
}

func (s subject) sharedValue(at source.Span) {
	s.say("record-reference", at, "a value is shared by reference here",
		"A value that is used in two places changes in both, which nobody reading one of them can see; and it may refer to itself without end.",
		"write the value out in each place")
}

// node gives the span of a node: for a scalar all of it, else its first token.
func (s subject) node(n ast.Node) source.Span {
	if n == nil || n.GetToken() == nil {
		return source.Span{}
	}
	if m, ok := n.(*ast.MappingNode); ok && !m.IsFlowStyle && len(m.Values) > 0 {
		n = m.Values[0]
	}
	if m, ok := n.(*ast.MappingValueNode); ok && m.Key != nil {
		n = m.Key
	}
	return s.token(n.GetToken())
}

// token gives the span of a token on its first line. The parser's own offsets count
// code points and drift, so the place is found from line and column, and the end
// from the text that stands there.
func (s subject) token(t *token.Token) source.Span {
	if t.Position == nil {
		return source.Span{}
	}
	b := s.file.Bytes
	at := source.Span{Start: s.file.Offset(t.Position.Line, t.Position.Column)}
	line := b[at.Start:]
	if i := bytes.IndexAny(line, "\r\n"); i >= 0 {
		line = line[:i]
	}
	n := len(line)
	switch {
	case n == 0:
	case line[0] == '"' || line[0] == '\'':
		for i := 1; i < len(line); i++ {
			if line[0] == '"' && line[i] == '\\' {
				i++
			} else if line[i] == line[0] {
				n = i + 1
				break
			}
		}
	case bytes.HasPrefix(line, []byte(t.Value)):
		n = len(t.Value)
	}
	at.End = at.Start + n
	return at
}
