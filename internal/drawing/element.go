package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/source"
)

// An element is a start tag and what it inherits.
type element struct {
	name       string
	span       source.Span // of "<name"
	attributes []attribute
	style      style
	text       []byte      // of a text element, without the white space around it
	textSpan   source.Span // of text
	told       bool        // what keeps it from being drawn has been told
}

// find returns an attribute, or nil.
func (e *element) find(name string) *attribute {
	for i := range e.attributes {
		if e.attributes[i].name == name {
			return &e.attributes[i]
		}
	}
	return nil
}

func (r *reader) top() *element { return r.open[len(r.open)-1] }

func (r *reader) startElement(t xml.StartElement, tag source.Span) {
	text := string(r.file[tag.Start:tag.End])
	e := &element{name: t.Name.Local, style: initial}
	e.span.Start = tag.Start
	e.span.End, e.attributes = scanTag(text, tag.Start)
	depth := len(r.open)
	isRoot := depth == 0 && !r.closed
	known := false
	if isRoot {
		r.space = t.Name.Space
		known = e.name == "svg"
		if known && t.Name.Space != namespace {
			r.problem(e.span, "the namespace of SVG is missing", `write <svg xmlns="`+namespace+`" …>`)
		}
	} else {
		_, known = geometry[e.name]
		known = known && e.name != "svg" && t.Name.Space == r.space
	}
	switch {
	case r.closed:
		r.problem(e.span, "something follows the end of the picture", "remove what stands after </svg>")
		r.stop = true
		return
	case isRoot && !known:
		r.problem(e.span, "the file is not an SVG picture: its first element is not <svg>", "save the picture as plain SVG")
		r.stop = true
		return
	case depth > 0 && t.Name.Space != r.space:
		r.problem(e.span, fmt.Sprintf("the element <%s> belongs to another namespace than the picture", shorten(e.name)), "remove it, with the editor's own notes; save as plain SVG")
	case !known:
		what, mend := refusedElement(e.name)
		r.problem(e.span, what, mend)
	case depth >= maxDepth:
		r.problem(e.span, fmt.Sprintf("the elements are nested deeper than %d", maxDepth), "take groups apart")
		known = false
	case depth > 0 && r.top().name != "g" && r.top().name != "svg":
		r.problem(e.span, fmt.Sprintf("the element <%s> stands inside <%s>", e.name, r.top().name), "put it beside, not inside")
		known = false
	}
	if !known {
		if depth > 0 {
			r.top().told = true
		}
		r.skip()
		return
	}
	if depth > 0 {
		e.style = r.top().style
	}
	r.attributes(e, t.Attr)
	r.open = append(r.open, e)
}

// attributes checks the attributes of an element and applies those of its style.
func (r *reader) attributes(e *element, parsed []xml.Attr) {
	if len(parsed) > maxAttributes {
		r.problem(e.span, fmt.Sprintf("the element has more than %d attributes", maxAttributes), "remove those that figures do not use")
		e.told = true
		return
	}
	if len(parsed) != len(e.attributes) {
		r.problem(e.span, "the attributes of this element cannot be told apart", `write each as name="value"`)
		e.told = true
		return
	}
	form := geometry[e.name]
	for i := range e.attributes {
		a := &e.attributes[i]
		switch {
		case e.find(a.name) != a:
			r.problem(a.span, fmt.Sprintf("the attribute %s stands twice", shorten(a.name)), "keep one of them")
		case !slices.Contains(form.needed, a.name) && !slices.Contains(form.optional, a.name) &&
			!slices.Contains(styleAttributes, a.name) && (a.name != "transform" || e.name == "svg"):
			what, mend := refusedAttribute(e.name, a.name)
			r.problem(a.span, what, mend)
		case strings.Contains(a.value, "&"):
			r.problem(a.span, "a value is written with a character reference", "write the characters themselves")
			a.value = ""
		default:
			r.fault(a, e.style.set(a.name, a.value))
		}
	}
	for _, name := range form.needed {
		if e.find(name) == nil && (name != "xmlns" || r.space == namespace) { // a missing xmlns has been told
			r.problem(e.span, fmt.Sprintf("<%s> lacks the attribute %s", e.name, name), "add it")
			e.told = true
		}
	}
	if e.name == "svg" {
		r.viewBox(e.find("viewBox"))
	}
}

func (r *reader) viewBox(a *attribute) {
	if a == nil {
		return
	}
	v, f := numbers(a.value)
	if f == nil && len(v) != 4 {
		f = whole(a.value, "viewBox has too few or too many numbers", "write its left, top, width and height")
	}
	if f == nil {
		for i := range v {
			v[i] = hundredths(v[i])
		}
		r.drawing.MinX, r.drawing.MinY, r.drawing.Width, r.drawing.Height = v[0], v[1], v[2], v[3]
		if v[2] < minSide || v[3] < minSide {
			f = whole(a.value, fmt.Sprintf("the picture is less than %d units wide or high", minSide), "draw it in larger numbers, such as 320 by 240")
		}
	}
	r.fault(a, f)
}

func (r *reader) endElement() {
	last := len(r.open) - 1
	e := r.open[last]
	r.open = r.open[:last]
	switch {
	case e.name == "svg":
		r.closed = true
	case e.name == "g" || e.told:
	case e.name == "text":
		r.key(e)
	default:
		r.draw(e)
	}
}

// characters takes text, which only a text element may hold.
func (r *reader) characters(span source.Span) {
	raw := r.file[span.Start:span.End]
	if span.Start == 0 {
		raw = bytes.TrimPrefix(raw, byteOrderMark)
	}
	b := bytes.TrimLeft(raw, " \t\r\n")
	start := span.End - len(b)
	b = bytes.TrimRight(b, " \t\r\n")
	span = source.Span{Start: start, End: start + len(b)}
	switch {
	case len(b) == 0:
	case r.closed:
		r.problem(span, "something follows the end of the picture", "remove what stands after </svg>")
	case len(r.open) == 0:
		r.problem(span, "something stands before the picture", "remove what stands before <svg>")
	case bytes.HasPrefix(b, []byte("<![CDATA[")) || bytes.IndexByte(b, '&') >= 0:
		r.problem(span, "text is written with a character reference or CDATA", "write the characters themselves")
		r.top().told = true
	case r.top().name != "text":
		r.problem(span, "words stand in the picture outside a <text>", "remove them; words belong to the lesson, where they are translated")
	default:
		e := r.top()
		if e.text == nil {
			e.textSpan = span
		}
		e.text = append(e.text, b...)
		e.textSpan.End = span.End
	}
}
