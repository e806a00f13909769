package exchange

import (
	"fmt"
	"slices"
	"strings"
)

// coreAttributes are what the elements of the core may carry (XLIFF 2.1, 4.2.2 and
// 4.3); attributes of other namespaces may stand anywhere.
var coreAttributes = map[string]string{
	"xliff":        "version srcLang trgLang",
	"file":         "id original translate canResegment srcDir trgDir",
	"skeleton":     "href",
	"group":        "id name canResegment translate srcDir trgDir type",
	"unit":         "id name canResegment translate srcDir trgDir type",
	"segment":      "id canResegment state subState",
	"ignorable":    "id",
	"notes":        "",
	"note":         "id appliesTo category priority",
	"originalData": "",
	"data":         "id dir",
	"source":       "",
	"target":       "order",
	"cp":           "hex",
	"ph":           "id canCopy canDelete canReorder copyOf dataRef disp equiv subFlows type subType",
	"pc":           "id canCopy canDelete canOverlap canReorder copyOf dataRefEnd dataRefStart dir dispEnd dispStart equivEnd equivStart subFlowsEnd subFlowsStart subType type",
	"sc":           "id canCopy canDelete canOverlap canReorder copyOf dataRef dir disp equiv isolated subFlows subType type",
	"ec":           "id startRef canCopy canDelete canOverlap canReorder copyOf dataRef dir disp equiv isolated subFlows subType type",
	"mrk":          "id translate type ref value",
	"sm":           "id translate type ref value",
	"em":           "startRef",
}

// values are those of attributes that have a closed list of them.
var values = map[string][]string{
	"translate": {"yes", "no"}, "canResegment": {"yes", "no"}, "canCopy": {"yes", "no"}, "canDelete": {"yes", "no"},
	"canOverlap": {"yes", "no"}, "canReorder": {"yes", "firstNo", "no"}, "isolated": {"yes", "no"},
	"srcDir": {"ltr", "rtl", "auto"}, "trgDir": {"ltr", "rtl", "auto"}, "dir": {"ltr", "rtl", "auto"},
}

var inlineTypes = []string{"fmt", "ui", "quote", "link", "image", "other"}

// attributes refuses attributes that the core does not know, and values it does not.
func (r *reader) attributes(e *element) {
	known, core := coreAttributes[e.name]
	if e.space != xliffSpace || !core {
		return
	}
	for _, a := range e.attrs {
		if a.space != "" {
			continue
		}
		if !slices.Contains(strings.Fields(known), a.name) {
			r.malformed(e, "the element %s has no attribute %s", "take it out, or give it a namespace of its own", e.name, short(a.name))
			continue
		}
		if of := values[a.name]; of != nil && !slices.Contains(of, a.value) {
			r.malformed(e, "the attribute %s is %q, and must be one of %s", "write one of them", a.name, short(a.value), strings.Join(of, ", "))
		}
	}
}

// sequence holds the children of an element to an order. Each step is a name with a
// mark: "source" once, "notes?" at most once, "file*" any number, "segment+|ignorable+"
// any number of either and one at least; "*" is any number of elements of other
// namespaces. Text is blanks alone.
func (r *reader) sequence(e *element, steps ...string) {
	r.attributes(e)
	counts := make([]int, len(steps))
	at := 0
	for _, c := range e.children {
		if c.name == "" {
			if strings.TrimSpace(c.text) != "" {
				r.malformed(c, "text stands where only elements may", "take it out, or put it into a target")
			}
			continue
		}
		next := slices.IndexFunc(steps[at:], func(s string) bool { return fits(c, s) })
		if next < 0 {
			if c.space != xliffSpace && slices.Contains(steps, "*") {
				r.malformed(c, "the element %s stands too late in %s", "put it first in it", short(c.name), e.name)
			} else {
				r.malformed(c, "the element %s may not stand here in %s", asHandedOff, short(c.name), e.name)
			}
			return
		}
		at += next
		counts[at]++
		if counts[at] > 1 && !strings.ContainsAny(steps[at], "*+") {
			r.malformed(c, "there is more than one %s in %s", "keep one of them", c.name, e.name)
			return
		}
	}
	for i, s := range steps {
		if counts[i] == 0 && !strings.ContainsAny(s, "?*") {
			r.malformed(e, "the element %s lacks %s", asHandedOff, e.name, strings.NewReplacer("+", "", "|", " or ").Replace(s))
		}
	}
}

func fits(c *element, step string) bool {
	if step == "*" {
		return c.space != xliffSpace
	}
	for _, name := range strings.Split(step, "|") {
		if c.is(strings.TrimRight(name, "?*+")) {
			return true
		}
	}
	return false
}

// An inlineReader reads the content of one source or target.
type inlineReader struct {
	*reader
	data map[string]bool // IDs of original data
	ids  map[string]bool // of codes and marks read so far
	unit string
	open []string // IDs of pairs that are open
	out  Tagged
}

func (r *inlineReader) read(e *element) {
	r.content(e)
	if len(r.open) > 0 {
		r.malformed(e, "the tag %s of %s is opened and not closed", "close it behind the words it belongs to", short(r.open[0]), short(r.unit))
	}
}

func (r *inlineReader) content(e *element) {
	for _, c := range e.children {
		if c.name == "" {
			r.out = append(r.out, Run{Kind: Words, Text: c.text, Span: c.span})
			continue
		}
		if c.space != xliffSpace {
			r.malformed(c, "an element of another namespace stands inside the text", "take it out")
			continue
		}
		r.attributes(c)
		switch c.name {
		case "pc":
			id := r.code(c, "dataRefStart", "dataRefEnd")
			r.push(Open, id, c)
			r.content(c)
			r.pop(id, c)
		case "ph":
			r.out = append(r.out, Run{Kind: Lone, Text: r.code(c, "dataRef"), Span: c.span})
			r.empty(c)
		case "sc":
			r.push(Open, r.code(c, "dataRef"), c)
			r.empty(c)
		case "ec":
			if c.has("id") == c.has("startRef") || c.has("id") && c.attr("isolated") != "yes" {
				r.malformed(c, "the end tag must name its start (startRef)", "write the ID of the tag it closes")
			}
			r.pop(c.attr("startRef"), c)
			r.empty(c)
		case "mrk":
			r.mark(c)
			r.content(c)
		case "sm":
			r.mark(c)
		case "em":
		case "cp":
			r.say(BadText, c.span, fmt.Sprintf("a control character (%s) stands in %s", short(c.attr("hex")), short(r.unit)), "take it out")
		default:
			r.malformed(c, "the element %s may not stand inside the text", "take it out", short(c.name))
		}
	}
}

func (r *inlineReader) push(kind RunKind, id string, c *element) {
	r.open = append(r.open, id)
	r.out = append(r.out, Run{Kind: kind, Text: id, Span: c.span})
}

// pop closes the pair that was opened last; pairs that cross cannot be written as Markdown.
func (r *inlineReader) pop(id string, c *element) {
	n := len(r.open)
	if n == 0 || r.open[n-1] != id {
		r.malformed(c, "the tag %s of %s is closed where it is not the last one opened", "let tags lie inside each other, not across", short(id), short(r.unit))
		return
	}
	r.open = r.open[:n-1]
	r.out = append(r.out, Run{Kind: Close, Text: id, Span: c.span})
}

// code checks a tag's ID and that its data exists.
func (r *inlineReader) code(c *element, refs ...string) string {
	r.id(c, r.ids, "tag")
	for _, ref := range refs {
		if c.has(ref) && !r.data[c.attr(ref)] {
			r.malformed(c, "the tag %s of %s points to original data %q, and there is none", asHandedOff, short(c.attr("id")), short(r.unit), short(c.attr(ref)))
		}
	}
	if t := c.attr("type"); c.has("type") && !slices.Contains(inlineTypes, t) {
		r.malformed(c, "the type %q of a tag is none of %s", asHandedOff, short(t), strings.Join(inlineTypes, ", "))
	}
	if c.has("subType") && (!c.has("type") || !subState.MatchString(c.attr("subType"))) {
		r.malformed(c, "the sub-type %q of a tag has no type, or is not written as prefix:value", asHandedOff, short(c.attr("subType")))
	}
	return c.attr("id")
}

func (r *inlineReader) mark(c *element) { r.id(c, r.ids, "mark") }

func (r *inlineReader) empty(c *element) {
	if len(c.children) > 0 {
		r.malformed(c, "the tag %s holds something, and must be empty", "take out what stands in it", c.name)
	}
}
