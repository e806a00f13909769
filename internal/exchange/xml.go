package exchange

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"

	"wardleaf/internal/source"
)

// Limits of a file that comes back. A module of 100 blocks takes about 3,000 elements.
const (
	maxFile     = 16 << 20 // bytes
	maxDepth    = 32
	maxElements = 400_000
	maxAttrs    = 40
)

// An element of a file, and a stretch of text when its name is empty.
type element struct {
	space, name string
	attrs       []attribute
	children    []*element
	text        string
	span        source.Span // of the start tag, or of the text
}

type attribute struct{ space, name, value string }

// A fault is what keeps a file from being read.
type fault struct {
	span       source.Span
	what, mend string
}

func (f *fault) Error() string { return f.what }

// encoding is what an XML declaration says the encoding is.
var encoding = regexp.MustCompile(`^<\?xml[^>]{0,100}?encoding\s*=\s*["']([^"'>]*)["']`)

// parseXML reads an XML document without a document type, as a tree. It is stricter
// than the library beneath: prefixes must be declared, attributes stand once, nothing
// but remarks stands beside the root, and size, depth and number are bounded.
func parseXML(b []byte) (*element, *fault) {
	whole := len(b)
	b = bytes.TrimPrefix(b, []byte("\ufeff"))
	skipped := whole - len(b)
	if m := encoding.FindSubmatchIndex(b); m != nil && !strings.EqualFold(string(b[m[2]:m[3]]), "utf-8") {
		return nil, &fault{source.Span{Start: skipped + m[2], End: skipped + m[3]}, "the file says that it is not in UTF-8", "save it as UTF-8"}
	}
	d := xml.NewDecoder(bytes.NewReader(b))
	offset := func() int { return min(int(d.InputOffset())+skipped, whole) }
	root := &element{}
	open := []*element{root}
	spaces := []map[string]string{{"xml": "http://www.w3.org/XML/1998/namespace"}}
	count := 0
	for first := true; ; first = false {
		start := offset()
		tok, err := d.RawToken()
		span := source.Span{Start: start, End: offset()}
		bad := func(what, mend string) (*element, *fault) { return nil, &fault{span, what, mend} }
		if err == io.EOF {
			if len(open) > 1 {
				return bad(fmt.Sprintf("the file ends inside the element %s", open[len(open)-1].name), "send the whole file; this one was cut off")
			}
			break
		}
		if err != nil {
			return nil, &fault{source.Span{Start: offset(), End: offset()}, "this is not well-formed XML: " + syntaxOf(err), "save the file again with the program it was translated in"}
		}
		here := open[len(open)-1]
		switch tok := tok.(type) {
		case xml.ProcInst:
			if tok.Target == "xml" && (!first || !bytes.HasPrefix(b, []byte("<?xml"))) {
				return bad("the XML declaration must stand first", "take out what stands before it")
			}
		case xml.Directive:
			return bad("a document type stands here", "take the line that begins with <!DOCTYPE out; a translation needs none, and it can make a reader open other files")
		case xml.CharData:
			if len(open) == 1 {
				if len(bytes.TrimSpace(tok)) > 0 {
					return bad("text stands outside the document", "take out what stands before the first and after the last tag")
				}
				continue
			}
			here.children = append(here.children, &element{text: string(tok), span: span})
		case xml.StartElement:
			if count++; count > maxElements {
				return bad(fmt.Sprintf("the file has more than %d elements", maxElements), "hand off fewer modules at once")
			}
			if len(open) > maxDepth {
				return bad(fmt.Sprintf("elements lie more than %d deep inside each other", maxDepth), "send the file as it was handed off, with nothing but translations added")
			}
			if len(open) == 1 && len(root.children) > 0 {
				return bad("a second document begins here", "take out what stands after the end of the first")
			}
			e, scope, wrong := startOf(tok, spaces[len(spaces)-1])
			if wrong != "" {
				return bad(wrong, "save the file again with the program it was translated in")
			}
			e.span = span
			here.children = append(here.children, e)
			open, spaces = append(open, e), append(spaces, scope)
		case xml.EndElement:
			if len(open) == 1 || qualified(tok.Name, spaces[len(spaces)-1]) != here.space+" "+here.name {
				return bad(fmt.Sprintf("the end of %s does not belong to the element that is open here", tok.Name.Local), "save the file again with the program it was translated in")
			}
			open, spaces = open[:len(open)-1], spaces[:len(spaces)-1]
		}
	}
	if len(root.children) == 0 {
		return nil, &fault{source.Span{}, "the file holds no document", "send the file as it was handed off, with translations added"}
	}
	return root.children[0], nil
}

// startOf resolves the names of a start tag.
func startOf(tok xml.StartElement, outer map[string]string) (e *element, scope map[string]string, wrong string) {
	if len(tok.Attr) > maxAttrs {
		return nil, nil, fmt.Sprintf("the element %s has more than %d attributes", tok.Name.Local, maxAttrs)
	}
	scope = outer
	copied := false
	declare := func(prefix, space string) {
		if !copied {
			next := make(map[string]string, len(scope)+1)
			for k, v := range scope {
				next[k] = v
			}
			scope, copied = next, true
		}
		scope[prefix] = space
	}
	for _, a := range tok.Attr {
		switch {
		case a.Name.Space == "" && a.Name.Local == "xmlns":
			declare("", a.Value)
		case a.Name.Space == "xmlns":
			if a.Value == "" || a.Name.Local == "xmlns" || a.Name.Local == "xml" {
				return nil, nil, fmt.Sprintf("the prefix %s cannot be declared like this", a.Name.Local)
			}
			declare(a.Name.Local, a.Value)
		}
	}
	if len(scope) > 20 {
		return nil, nil, "more than 20 prefixes are declared"
	}
	space, ok := scope[tok.Name.Space]
	if !ok && tok.Name.Space != "" {
		return nil, nil, fmt.Sprintf("the prefix %s of the element %s is not declared", tok.Name.Space, tok.Name.Local)
	}
	e = &element{space: space, name: tok.Name.Local}
	seen := map[string]bool{}
	for _, a := range tok.Attr {
		if seen[a.Name.Space+" "+a.Name.Local] {
			return nil, nil, fmt.Sprintf("the attribute %s stands twice", a.Name.Local)
		}
		seen[a.Name.Space+" "+a.Name.Local] = true
		if a.Name.Space == "xmlns" || a.Name.Space == "" && a.Name.Local == "xmlns" {
			continue
		}
		at := attribute{name: a.Name.Local, value: a.Value}
		if a.Name.Space != "" {
			if at.space, ok = scope[a.Name.Space]; !ok {
				return nil, nil, fmt.Sprintf("the prefix %s of the attribute %s is not declared", a.Name.Space, a.Name.Local)
			}
			for _, other := range e.attrs {
				if other.space == at.space && other.name == at.name {
					return nil, nil, fmt.Sprintf("the attribute %s stands twice", a.Name.Local)
				}
			}
		}
		e.attrs = append(e.attrs, at)
	}
	return e, scope, ""
}

func qualified(n xml.Name, scope map[string]string) string {
	return scope[n.Space] + " " + n.Local
}

func syntaxOf(err error) string {
	var s *xml.SyntaxError
	if errors.As(err, &s) {
		return s.Msg
	}
	return err.Error()
}

// attr returns an attribute that belongs to no namespace.
func (e *element) attr(name string) string {
	for _, a := range e.attrs {
		if a.space == "" && a.name == name {
			return a.value
		}
	}
	return ""
}

func (e *element) has(name string) bool {
	for _, a := range e.attrs {
		if a.space == "" && a.name == name {
			return true
		}
	}
	return false
}

// is reports an element of XLIFF's core.
func (e *element) is(name string) bool { return e.space == xliffSpace && e.name == name }

// words is the text of an element and what it holds.
func (e *element) words() string {
	if e.name == "" {
		return e.text
	}
	var b strings.Builder
	for _, c := range e.children {
		b.WriteString(c.words())
	}
	return b.String()
}
