package exchange

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// ReadXLIFF reads a file of XLIFF 2.0 or 2.1 as it comes back from a translator. It
// holds it to the constraints of the core that concern what a hand-off contains;
// elements and attributes of other namespaces are let through.
func ReadXLIFF(f *source.File) (*Return, []finding.Finding) {
	r := newReader(f)
	if !r.readable() {
		return nil, r.findings
	}
	root, wrong := parseXML(f.Bytes)
	if wrong != nil {
		r.say(Malformed, wrong.span, wrong.what, wrong.mend)
		return nil, r.findings
	}
	if r.head(root) {
		r.files(root)
	}
	if len(r.findings) > 0 {
		return nil, r.findings
	}
	return r.out, nil
}

func (r *reader) malformed(e *element, what, mend string, args ...any) {
	r.say(Malformed, e.span, fmt.Sprintf(what, args...), mend)
}

const asHandedOff = "send the file as it was handed off, with nothing but translations added"

func (r *reader) head(root *element) bool {
	version := root.attr("version")
	switch {
	case root.name != "xliff":
		r.malformed(root, "this is not XLIFF: the document begins with %q", asHandedOff, short(root.name))
	case root.space == xliffSpace && (version == "2.1" || version == "2.0"):
		r.out.Source, r.out.Target, r.out.Head = root.attr("srcLang"), root.attr("trgLang"), root.span
		if r.out.Source == "" || r.out.Target == "" {
			r.malformed(root, "the file does not say from which language it translates into which (srcLang, trgLang)", asHandedOff)
			return false
		}
		return true
	case root.space == xliffSpace:
		r.malformed(root, "the version %q is not one that can be read", "save it as XLIFF 2.1 (or 2.0)", short(version))
	default:
		r.malformed(root, "this is XLIFF of another namespace (%s), version %q", "save it as XLIFF 2.1; versions 1.2 and 2.2 are other formats", short(root.space), short(version))
	}
	return false
}

func (r *reader) files(root *element) {
	ids := map[string]bool{}
	for _, e := range r.elements(root, "file") {
		r.id(e, ids, "file")
		units := map[string]bool{}
		r.sequence(e, "skeleton?", "*", "notes?", "unit+|group+")
		r.units(e, e.attr("id"), units, map[string]bool{})
	}
	if len(ids) == 0 {
		r.malformed(root, "there is no file element", asHandedOff)
	}
}

// units reads the units of a file or group.
func (r *reader) units(parent *element, module string, ids, groups map[string]bool) {
	for _, e := range parent.children {
		switch {
		case e.is("group"):
			r.id(e, groups, "group")
			r.sequence(e, "*", "notes?", "unit*|group*")
			r.units(e, module, ids, groups)
		case e.is("unit"):
			r.id(e, ids, "unit")
			r.unit(e, module)
		case e.is("notes"):
			r.notes(e)
		}
	}
}

func (r *reader) unit(e *element, module string) {
	r.sequence(e, "*", "notes?", "originalData?", "segment+|ignorable+")
	out := Returned{Module: module, ID: e.attr("id"), Span: e.span}
	data := map[string]bool{}
	var segments []*element
	for _, c := range e.children {
		switch {
		case c.is("notes"):
			r.notes(c)
		case c.is("originalData"):
			for _, d := range r.elements(c, "data") {
				r.attributes(d)
				r.id(d, data, "data")
			}
		case c.is("segment"), c.is("ignorable"):
			segments = append(segments, c)
		case c.space == metaSpace && c.name == "metadata":
			digests(c, &out)
		}
	}
	if len(segments) != 1 || !segments[0].is("segment") {
		r.malformed(e, "the block %s was cut into several segments, which it forbids (canResegment)", "join the segments again", short(out.ID))
		return
	}
	r.segment(segments[0], &out, data)
	r.out.Units = append(r.out.Units, out)
}

// digests finds what the tool wrote down about the block when it was handed off.
func digests(e *element, out *Returned) {
	for _, c := range e.children {
		if c.space == metaSpace && c.name == "meta" {
			switch c.attr("type") {
			case sourceMeta:
				out.SourceDigest = strings.TrimSpace(c.words())
			case targetMeta:
				out.TargetDigest = strings.TrimSpace(c.words())
				if len(c.children) == 1 {
					out.digestSpan = c.children[0].span
				}
			}
		}
		digests(c, out)
	}
}

var (
	states   = []string{"initial", "translated", "reviewed", "final"}
	subState = regexp.MustCompile(`^[^\s:]+:.+$`)
	nmtoken  = regexp.MustCompile(`^[\pL\pN\pM._:·-]{1,200}$`)
)

func (r *reader) segment(e *element, out *Returned, data map[string]bool) {
	out.State = "initial"
	if e.has("state") {
		out.State = e.attr("state")
	}
	if !slices.Contains(states, out.State) {
		r.say(BadState, e.span, fmt.Sprintf("the state %q of %s is none of %s", short(out.State), short(out.ID), strings.Join(states, ", ")), "set it to translated when the block is done, else to initial")
	}
	if e.has("subState") && (!e.has("state") || !subState.MatchString(e.attr("subState"))) {
		r.say(BadState, e.span, fmt.Sprintf("the sub-state %q of %s has no state, or is not written as prefix:value", short(e.attr("subState")), short(out.ID)), "take it out")
	}
	r.sequence(e, "source", "target?")
	hasTarget := false
	for _, c := range e.children {
		in := inlineReader{reader: r, data: data, ids: map[string]bool{}, unit: out.ID}
		switch {
		case c.is("source"):
			r.attributes(c)
			in.read(c)
			out.Source = in.out.tidy()
		case c.is("target"):
			r.attributes(c)
			if order := c.attr("order"); order != "" && order != "1" {
				r.malformed(c, "the target of %s stands in another order, and the block has one segment only", "take the attribute order out", short(out.ID))
			}
			hasTarget = true
			in.read(c)
			out.Target, out.TargetSpan = in.out.tidy(), c.span
		}
	}
	if !hasTarget && out.State != "initial" && slices.Contains(states, out.State) {
		r.say(BadState, e.span, fmt.Sprintf("%s is in state %s, and has no target", short(out.ID), out.State), "translate it, or set its state to initial")
	}
}

func (r *reader) notes(e *element) {
	ids := map[string]bool{}
	for _, n := range r.elements(e, "note") {
		r.attributes(n)
		if n.has("id") {
			r.id(n, ids, "note")
		}
		if p := n.attr("priority"); n.has("priority") {
			if k, err := strconv.Atoi(p); err != nil || k < 1 || k > 10 {
				r.malformed(n, "the priority %q of a note is not from 1 to 10", "write 1 to 10, or take it out", short(p))
			}
		}
		if a := n.attr("appliesTo"); n.has("appliesTo") && a != "source" && a != "target" {
			r.malformed(n, "a note applies to source or target, not to %q", "write one of the two, or take it out", short(a))
		}
	}
}

// elements returns the children of a name in the core, and refuses other children of the core.
func (r *reader) elements(e *element, name string) []*element {
	r.sequence(e, name+"*")
	var out []*element
	for _, c := range e.children {
		if c.is(name) {
			out = append(out, c)
		}
	}
	return out
}

// id checks that an element has an ID that no other of its kind has.
func (r *reader) id(e *element, seen map[string]bool, what string) {
	switch id := e.attr("id"); {
	case !nmtoken.MatchString(id):
		r.malformed(e, "the ID %q of a %s is empty or has a blank or sign in it", asHandedOff, short(id), what)
	case seen[id]:
		r.malformed(e, "there are two of the %s %s", "take one of the two out", what, short(id))
	default:
		seen[id] = true
	}
}

func short(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
