package exchange

import (
	"fmt"
	"strconv"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
)

// A Code is what a tag stands for.
type Code struct {
	ID   string // "1", "2"; "t1" for one that only the translation has
	Lone bool   // it holds no words
	// Open and Close are Markdown: what stands before and after the words, or all of a
	// lone code in Open. A line break in it stands for one with the indent of its block.
	Open, Close string
	Type        string // what it is, for a translator: "bold", "number", "line break"
	About       string // which number, source or address
	Needed      bool   // it must come back exactly once

	key string // codes with the same key mean the same
}

const breakKey = "break"

// coded is one block of source and translation as tagged text with their codes.
type coded struct {
	source, target Tagged
	codes          []Code
}

// newCoded tags a pair. A code of the translation has the ID of the code of the
// source that means the same, the first that is not used yet; else one of its own.
func newCoded(p translate.Pair, src, target *lesson.Lesson) coded {
	var c coded
	s := tagger{file: src.File.Bytes}
	s.name = func(key string, code Code) string {
		code.ID, code.key = strconv.Itoa(len(c.codes)+1), key
		c.codes = append(c.codes, code)
		return code.ID
	}
	c.source = s.inlines(p.Source.Inlines)
	if p.Target == nil {
		return c
	}
	used, own, shared := map[int]bool{}, 0, len(c.codes)
	s = tagger{file: target.File.Bytes, name: func(key string, code Code) string {
		for i := range c.codes[:shared] {
			if c.codes[i].key == key && !used[i] {
				used[i] = true
				return c.codes[i].ID
			}
		}
		own++
		code.ID, code.key, code.Needed = fmt.Sprintf("t%d", own), key, false
		c.codes = append(c.codes, code)
		return code.ID
	}}
	c.target = s.inlines(p.Target.Inlines)
	return c
}

func (c coded) code(id string) *Code {
	for i := range c.codes {
		if c.codes[i].ID == id {
			return &c.codes[i]
		}
	}
	return nil
}

// plainTagged is the words of inlines without tags.
func plainTagged(ins []lesson.Inline) Tagged {
	return Tagged{{Kind: Words, Text: lesson.Plain(ins)}}
}

// A tagger makes tagged text of inlines, in the order of the text.
type tagger struct {
	file []byte
	name func(key string, c Code) string // the ID of a code; codes with the same key mean the same
	out  Tagged
}

func (t tagger) inlines(ins []lesson.Inline) Tagged {
	t.walk(ins)
	return t.out
}

func (t *tagger) walk(ins []lesson.Inline) {
	for i := range ins {
		in := &ins[i]
		if in.Kind == lesson.Text {
			t.out = append(t.out, Run{Kind: Words, Text: in.Text, Span: in.Span})
			continue
		}
		key, code := t.code(in)
		id := t.name(key, code)
		if code.Lone {
			t.out = append(t.out, Run{Kind: Lone, Text: id, Span: in.Span})
			continue
		}
		t.out = append(t.out, Run{Kind: Open, Text: id, Span: in.Span})
		t.walk(in.Children)
		t.out = append(t.out, Run{Kind: Close, Text: id, Span: in.Span})
	}
}

// code says what an inline is as a code, and a key that is the same for what means the same.
func (t *tagger) code(in *lesson.Inline) (key string, c Code) {
	written := strings.ReplaceAll(string(t.file[in.Span.Start:in.Span.End]), "\r\n", "\n")
	oneLine := strings.Join(strings.Split(written, "\n"), " ")
	lone := func(kind string) Code {
		return Code{Lone: true, Open: oneLine, Type: kind, About: in.Text, Needed: true}
	}
	switch in.Kind {
	case lesson.Strong:
		return "strong", Code{Open: "**", Close: "**", Type: "bold", Needed: true}
	case lesson.Emphasis:
		return "emphasis", Code{Open: "*", Close: "*", Type: "emphasis"}
	case lesson.Break:
		c = lone("line break")
		c.Open = "\\\n"
		return breakKey, c
	case lesson.CodeSpan:
		return "code " + in.Text, lone("code")
	case lesson.Image:
		return "image " + in.Target, lone("picture")
	}
	about := in.Scheme + ":" + in.Target
	if len(in.Children) == 0 || !strings.HasPrefix(written, "[") {
		c = lone(linkType(in))
		c.About = named(in)
		return "lone link " + about, c
	}
	c = Code{Open: "[", Type: linkType(in), About: named(in), Needed: in.Scheme != "term"}
	last := in.Children[len(in.Children)-1].Span.End
	if tail := string(t.file[last:in.Span.End]); strings.HasPrefix(tail, "](") && !strings.Contains(tail, "\n") {
		c.Close = tail
	} else if in.Scheme != "" {
		c.Close = "](<" + about + ">)"
	} else {
		c.Close = "](<" + in.Target + ">)"
	}
	return "link " + about, c
}

// named is where a link leads, without what its type says already.
func named(in *lesson.Inline) string {
	if linkType(in) == "address" {
		return strings.TrimPrefix(in.Scheme+":"+in.Target, ":")
	}
	return in.Target
}

func linkType(in *lesson.Inline) string {
	switch in.Scheme {
	case "number", "source", "term", "facility":
		return in.Scheme
	case "module":
		return "lesson"
	}
	return "address"
}
