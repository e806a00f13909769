package exchange

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// Namespaces of XLIFF 2.1 and of the modules that are written.
const (
	xliffSpace   = "urn:oasis:names:tc:xliff:document:2.0" // of 2.1, too
	matchesSpace = "urn:oasis:names:tc:xliff:matches:2.0"
	metaSpace    = "urn:oasis:names:tc:xliff:metadata:2.0"
)

// XLIFF writes a job as XLIFF 2.1: one file element a module, one unit a block. Text
// stands between tags without line breaks of its own.
func (j *Job) XLIFF() []byte {
	w := &xmlWriter{}
	w.line(0, `<?xml version="1.0" encoding="UTF-8"?>`)
	w.line(0, `<xliff xmlns="%s" xmlns:mda="%s" xmlns:mtc="%s" version="2.1" srcLang="%s" trgLang="%s">`,
		xliffSpace, metaSpace, matchesSpace, attr(j.Source), attr(j.Target))
	for _, m := range j.Modules {
		dir := "ltr"
		if j.RTL {
			dir = "rtl"
		}
		w.line(1, `<file id="%s" original="%s" trgDir="%s">`, attr(m.ID), attr(m.Path), dir)
		w.line(2, `<notes>`)
		w.line(3, `<note category="context" appliesTo="source">Lesson "%s". Keep every tag of a block once; the words between tags are yours to order. Set the state to translated when a block is done: blocks in state initial are not taken back.</note>`, text(m.Title))
		w.line(2, `</notes>`)
		for _, it := range m.Items {
			w.unit(&it)
		}
		w.line(1, `</file>`)
	}
	w.line(0, `</xliff>`)
	return []byte(w.b.String())
}

type xmlWriter struct{ b strings.Builder }

func (w *xmlWriter) line(depth int, format string, args ...any) {
	w.b.WriteString(strings.Repeat("  ", depth))
	fmt.Fprintf(&w.b, format, args...)
	w.b.WriteByte('\n')
}

func (w *xmlWriter) unit(it *Item) {
	w.line(2, `<unit id="%s" canResegment="no" type="wardleaf:%s">`, attr(it.ID), strings.ReplaceAll(string(it.Kind), " ", "-"))
	if len(it.Previous) > 0 {
		w.line(3, `<mtc:matches>`)
		w.line(4, `<mtc:match ref="#s1" type="tm">`)
		w.line(5, `<source>%s</source>`, text(it.Previous.Plain()))
		w.line(5, `<target>%s</target>`, text(it.Target.Plain()))
		w.line(4, `</mtc:match>`)
		w.line(3, `</mtc:matches>`)
	}
	w.line(3, `<mda:metadata>`)
	w.line(4, `<mda:metaGroup>`)
	w.line(5, `<mda:meta type="%s">%s</mda:meta>`, sourceMeta, it.SourceDigest)
	w.line(5, `<mda:meta type="%s">%s</mda:meta>`, targetMeta, it.TargetDigest)
	w.line(4, `</mda:metaGroup>`)
	w.line(3, `</mda:metadata>`)
	w.line(3, `<notes>`)
	for _, n := range it.Notes {
		priority := ""
		if n.Category == "change" {
			priority = ` priority="2"`
		}
		w.line(4, `<note category="%s"%s>%s</note>`, attr(n.Category), priority, text(n.Text))
	}
	w.line(3, `</notes>`)
	refs := w.data(it.Codes)
	w.line(3, `<segment id="s1" state="%s">`, it.State)
	w.line(4, `<source>%s</source>`, inline(it.Source, it.Codes, refs))
	if len(it.Target) > 0 {
		w.line(4, `<target>%s</target>`, inline(it.Target, it.Codes, refs))
	}
	w.line(3, `</segment>`)
	w.line(2, `</unit>`)
}

// What the digests of a block are called in the metadata of its unit.
const (
	sourceMeta = "wardleaf:source-digest"
	targetMeta = "wardleaf:target-digest"
)

// data writes the Markdown of the codes, each once, and returns the ID of each.
func (w *xmlWriter) data(codes []Code) map[string]string {
	refs := map[string]string{}
	var all []string
	for _, c := range codes {
		for _, s := range []string{c.Open, c.Close} {
			if _, known := refs[s]; !known && s != "" {
				refs[s] = "d" + strconv.Itoa(len(refs)+1)
				all = append(all, s)
			}
		}
	}
	if len(all) > 0 {
		w.line(3, `<originalData>`)
		for _, s := range all {
			w.line(4, `<data id="%s">%s</data>`, refs[s], text(strings.ReplaceAll(s, "\n", " ")))
		}
		w.line(3, `</originalData>`)
	}
	return refs
}

// inline writes tagged text as content of source or target.
func inline(t Tagged, codes []Code, refs map[string]string) string {
	c := coded{codes: codes}
	var b strings.Builder
	for _, r := range t.tidy() {
		switch r.Kind {
		case Words:
			b.WriteString(text(r.Text))
		case Close:
			b.WriteString("</pc>")
		case Open:
			code := c.code(r.Text)
			fmt.Fprintf(&b, `<pc id="%s" dataRefStart="%s" dataRefEnd="%s"%s>`, code.ID, refs[code.Open], refs[code.Close], hints(code))
		case Lone:
			code := c.code(r.Text)
			fmt.Fprintf(&b, `<ph id="%s" dataRef="%s"%s/>`, code.ID, refs[code.Open], hints(code))
		}
	}
	return b.String()
}

// hints say what a code is and what may be done with it.
func hints(c *Code) string {
	var s string
	switch c.Type {
	case "bold":
		s = ` type="fmt" subType="xlf:b"`
	case "emphasis":
		s = ` type="fmt" subType="xlf:i"`
	case "line break":
		s = ` type="fmt" subType="xlf:lb"`
	case "picture":
		s = ` type="image"`
	case "code":
		s = ` type="other"`
	default:
		s = ` type="link" subType="wardleaf:` + c.Type + `"`
	}
	if c.About != "" && !c.Lone {
		s += fmt.Sprintf(` dispStart="%s"`, attr("["+c.About))
		s += ` dispEnd="]"`
	} else if c.About != "" {
		s += fmt.Sprintf(` disp="%s"`, attr("["+c.About+"]"))
	}
	if c.Needed {
		s += ` canCopy="no" canDelete="no"`
	} else {
		s += ` canCopy="no"`
	}
	return s
}

// text escapes what stands between tags. A character that XML cannot hold becomes U+FFFD.
func text(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(strings.Map(func(r rune) rune {
		if !xmlChar(r) {
			return unicode.ReplacementChar
		}
		return r
	}, s))
}

func attr(s string) string { return strings.ReplaceAll(text(s), `"`, "&quot;") }

// xmlChar reports the characters of XML 1.0, production 2.
func xmlChar(r rune) bool {
	return r == '\t' || r == '\n' || r == '\r' || r >= ' ' && r <= 0xD7FF || r >= 0xE000 && r <= 0xFFFD || r >= 0x10000 && r <= unicode.MaxRune
}
