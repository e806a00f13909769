package exchange

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"wardleaf/internal/source"
)

// Tagged is text with numbered tags in it.
type Tagged []Run

// A Run is a stretch of text, or a tag.
type Run struct {
	Kind RunKind
	Text string // of a stretch of text; else the code's ID
	Span source.Span
}

// A RunKind tells runs apart.
type RunKind int

// The kinds of run.
const (
	Words RunKind = iota
	Open          // start of a pair
	Close         // end of a pair
	Lone          // a tag that holds no words
)

// String writes tagged text on one line: <1>words</1> for a pair, <2/> for a lone tag.
// What would read as a tag in the words themselves has &lt; for its first sign, and
// &lt; itself is written &amp;lt;.
func (t Tagged) String() string {
	var b strings.Builder
	for _, r := range t.tidy() {
		switch r.Kind {
		case Words:
			b.WriteString(hideTags(r.Text))
		case Open:
			b.WriteString("<" + r.Text + ">")
		case Close:
			b.WriteString("</" + r.Text + ">")
		case Lone:
			b.WriteString("<" + r.Text + "/>")
		}
	}
	return b.String()
}

// Plain returns the words alone.
func (t Tagged) Plain() string {
	var b strings.Builder
	for _, r := range t.tidy() {
		if r.Kind == Words {
			b.WriteString(r.Text)
		}
	}
	return strings.TrimSpace(b.String())
}

// Same reports whether two texts say the same with the same tags.
func (t Tagged) Same(u Tagged) bool { return t.String() == u.String() }

// tidy makes one blank of several and leaves none at the ends, joins neighbouring
// stretches of words, and moves blanks that stand just inside a pair outside of it,
// where they look the same and Markdown can have them.
func (t Tagged) tidy() Tagged {
	var out Tagged
	began := false   // something that shows has been put out
	pending := false // a blank is due before what shows next
	word := func(s string, at source.Span) {
		if n := len(out); n > 0 && out[n-1].Kind == Words {
			out[n-1].Text += s
			out[n-1].Span.End = at.End
			return
		}
		out = append(out, Run{Kind: Words, Text: s, Span: at})
	}
	// flush puts the blank out that is due, before the pairs that have just been opened.
	flush := func(at source.Span) {
		if !pending {
			return
		}
		pending = false
		i := len(out)
		for i > 0 && out[i-1].Kind == Open {
			i--
		}
		opened := slices.Clone(out[i:])
		out = out[:i]
		word(" ", at)
		out = append(out, opened...)
	}
	for _, r := range t {
		switch r.Kind {
		case Words:
			for i, field := range strings.FieldsFunc(r.Text, isBlank) {
				if i > 0 {
					pending = true
				} else if c, _ := utf8.DecodeRuneInString(r.Text); isBlank(c) {
					pending = began
				}
				flush(r.Span)
				word(field, r.Span)
				began = true
			}
			if c, _ := utf8.DecodeLastRuneInString(r.Text); isBlank(c) {
				pending = began
			}
		case Open, Close:
			out = append(out, r)
		case Lone:
			flush(r.Span)
			out = append(out, r)
			began = true
		}
	}
	return out
}

func isBlank(c rune) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

var (
	tagText  = regexp.MustCompile(`<(/?)(t?[1-9][0-9]{0,3})(/?)>`)
	hidden   = regexp.MustCompile(`<(/?t?[1-9][0-9]{0,3}/?>)`)
	entities = regexp.MustCompile(`&((?:amp;)*lt;)`)
)

func hideTags(s string) string {
	return hidden.ReplaceAllString(entities.ReplaceAllString(s, "&amp;$1"), "&lt;$1")
}

var shown = regexp.MustCompile(`&((?:amp;)*)lt;`)

func showTags(s string) string {
	return shown.ReplaceAllStringFunc(s, func(m string) string {
		if m == "&lt;" {
			return "<"
		}
		return "&" + m[len("&amp;"):]
	})
}

// parseTagged reads what String writes. Whether the tags are the right ones is for
// the caller to say.
func parseTagged(s string) Tagged {
	var out Tagged
	at := 0
	words := func(to int) {
		if to > at {
			out = append(out, Run{Kind: Words, Text: showTags(s[at:to])})
		}
	}
	for _, m := range tagText.FindAllStringSubmatchIndex(s, -1) {
		closing, lone := m[3] > m[2], m[7] > m[6]
		if closing && lone {
			continue // neither; it stays as words
		}
		words(m[0])
		r := Run{Kind: Open, Text: s[m[4]:m[5]]}
		switch {
		case closing:
			r.Kind = Close
		case lone:
			r.Kind = Lone
		}
		out = append(out, r)
		at = m[1]
	}
	words(len(s))
	return out
}
