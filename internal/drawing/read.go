package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"wardleaf/internal/source"
)

// Limits on a stranger's file.
const (
	maxBytes      = 512 << 10
	maxDepth      = 32
	maxAttributes = 32 // of an element
	maxSegments   = 20000
	maxProblems   = 100
	minSide       = 10  // of the viewBox: hundredths of a unit must be too small to see
	minDash       = 0.1 // sum of a dash pattern: finer ones can keep a printer busy for hours
)

const namespace = "http://www.w3.org/2000/svg"

// A Problem is one thing that keeps a file from being a drawing we can use.
type Problem struct {
	Span source.Span
	What string // what is wrong here
	Mend string // what to do about it
}

// Read reads a figure. When there are problems the Drawing is nil; they come in the
// order of the file, and after the first 100 reading stops.
func Read(f *source.File) (*Drawing, []Problem) {
	r := reader{file: f.Bytes, xml: xml.NewDecoder(bytes.NewReader(f.Bytes))}
	if len(f.Bytes) > maxBytes {
		r.problem(source.Span{}, fmt.Sprintf("the file is larger than %d KiB", maxBytes>>10), "simplify the picture")
		return nil, r.problems
	}
	r.read()
	if len(r.problems) > 0 {
		slices.SortStableFunc(r.problems, func(a, b Problem) int { return a.Span.Start - b.Span.Start })
		return nil, r.problems
	}
	return &r.drawing, nil
}

// A reader is the state of one Read.
type reader struct {
	file     []byte
	xml      *xml.Decoder
	space    string // namespace of the root
	open     []*element
	closed   bool // the root has ended
	drawing  Drawing
	segments int
	problems []Problem
	stop     bool
}

func (r *reader) read() {
	root := source.Span{}
	for !r.stop && len(r.problems) < maxProblems {
		start := int(r.xml.InputOffset())
		token, err := r.xml.Token()
		span := source.Span{Start: start, End: int(r.xml.InputOffset())}
		if err == io.EOF {
			break
		}
		if err != nil {
			r.broken(span, err)
			return
		}
		switch t := token.(type) {
		case xml.StartElement:
			if root.End == 0 {
				root = source.Span{Start: start, End: start + len("<svg")}
			}
			r.startElement(t, span)
		case xml.EndElement:
			r.endElement()
		case xml.CharData:
			r.characters(span)
		case xml.Directive:
			r.problem(span, "a figure has no document type or entities", "remove the <!DOCTYPE …>")
		case xml.ProcInst:
			before := bytes.TrimPrefix(r.file[:start], byteOrderMark)
			if t.Target != "xml" || len(before) > 0 {
				r.problem(span, "a processing instruction can bring in a style sheet or code", "remove the <?…?>; only an XML declaration may stand, first of all")
			}
		}
	}
	if len(r.problems) == 0 && len(r.drawing.Shapes) == 0 {
		r.problem(root, "nothing is drawn here", "draw the picture inside <svg>…</svg>, in the namespace "+namespace)
	}
}

var byteOrderMark = []byte("\ufeff")

// skip passes over a refused element and all that it holds.
func (r *reader) skip() {
	if err := r.xml.Skip(); err != nil {
		at := int(r.xml.InputOffset())
		r.broken(source.Span{Start: at, End: at}, err)
		r.stop = true
	}
}

// broken reports what encoding/xml could not read.
func (r *reader) broken(span source.Span, err error) {
	why := err.Error()
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		why = syntax.Msg
	}
	if strings.Contains(why, "character entity") {
		if i := bytes.LastIndexByte(r.file[:span.End], '&'); i >= 0 {
			span.Start = i
		}
		r.problem(span, "an entity stands here, and figures have none", "write the characters themselves")
		return
	}
	span.Start = max(span.Start, span.End-1)
	if strings.Contains(why, "CharsetReader") {
		r.problem(span, "the file says that it is not in UTF-8", "save it again as plain SVG in UTF-8")
		return
	}
	r.problem(span, "the file is not well-formed XML: "+strings.TrimPrefix(why, "xml: "), "save it again as plain SVG in UTF-8")
}

func (r *reader) problem(span source.Span, what, mend string) {
	r.problems = append(r.problems, Problem{span, what, mend})
}

// fault turns a fault inside an attribute's value into a problem with its place in the file.
func (r *reader) fault(a *attribute, f *fault) {
	if f != nil {
		r.problem(source.Span{Start: a.at + f.start, End: a.at + f.end}, f.what, f.mend)
	}
}

// number returns the value of an attribute, or 0 when it is absent.
func (r *reader) number(e *element, name string) float64 {
	a := e.find(name)
	if a == nil {
		return 0
	}
	v, f := number(a.value)
	r.fault(a, f)
	return v
}

// size is a number that must not be negative.
func (r *reader) size(e *element, name string) float64 {
	v := r.number(e, name)
	if v < 0 {
		a := e.find(name)
		r.fault(a, whole(a.value, name+" is negative", "write 0 or more"))
	}
	return v
}

// round rounds to hundredths and reports, once for an element, a number that is out of bounds.
func (r *reader) round(e *element, v float64) float64 {
	v = hundredths(v)
	if math.Abs(v) <= maxNumber {
		return v
	}
	n := len(r.problems)
	if n == 0 || r.problems[n-1].Span != e.span {
		r.problem(e.span, fmt.Sprintf("<%s> reaches too far from 0", e.name), "draw within 100000 units of 0")
	}
	return 0
}

func hundredths(v float64) float64 { return math.Round(v*100)/100 + 0 }
