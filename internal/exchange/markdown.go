package exchange

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"wardleaf/internal/source"
	"wardleaf/internal/translate"
)

// said writes tagged text with what its tags mean for their IDs, so that texts tagged
// in different lessons can be compared.
func said(t Tagged, codes []Code) string {
	c := coded{codes: codes}
	out := slices.Clone(t)
	for i := range out {
		if out[i].Kind != Words {
			if code := c.code(out[i].Text); code != nil {
				out[i].Text = "\x01" + code.key // no words hold this character
			}
		}
	}
	return out.String()
}

// trimBreaks takes the blanks beside line breaks away, which no page shows.
func trimBreaks(t Tagged, codes []Code) Tagged {
	c := coded{codes: codes}
	out := t.tidy()
	isBreak := func(i int) bool {
		return i >= 0 && i < len(out) && out[i].Kind == Lone && c.code(out[i].Text) != nil && c.code(out[i].Text).key == breakKey
	}
	for i := range out {
		if out[i].Kind != Words {
			continue
		}
		if isBreak(i - 1) {
			out[i].Text = strings.TrimLeft(out[i].Text, " ")
		}
		if isBreak(i + 1) {
			out[i].Text = strings.TrimRight(out[i].Text, " ")
		}
	}
	return out
}

// A place is where the Markdown of a block goes.
type place struct {
	kind   translate.UnitKind
	indent string // of lines after the first
	eol    string
}

// placeIn is the place of a unit in the bytes of a lesson.
func placeIn(b []byte, u translate.Unit) place {
	line := b[bytes.LastIndexByte(b[:u.Span.Start], '\n')+1 : u.Span.Start]
	p := place{kind: u.Kind, eol: "\n"}
	for _, c := range string(line) {
		if c != '>' && c != '\t' {
			c = ' '
		}
		p.indent += string(c)
	}
	if bytes.Contains(b, []byte("\r\n")) {
		p.eol = "\r\n"
	}
	return p
}

// markdown writes tagged text as Markdown on one line, or on several at line breaks.
func markdown(t Tagged, codes []Code, at place) string {
	c := coded{codes: codes}
	var b strings.Builder
	start := true // of a line
	runs := trimBreaks(t, codes)
	for i, r := range runs {
		switch r.Kind {
		case Words:
			opens := i+1 < len(runs) && runs[i+1].Kind == Open
			b.WriteString(escape(r.Text, at.kind, start, opens, i+1 == len(runs)))
			start = start && r.Text == ""
		case Open, Lone:
			code := c.code(r.Text).Open
			b.WriteString(strings.ReplaceAll(code, "\n", at.eol+at.indent))
			start = strings.HasSuffix(code, "\n")
		case Close:
			b.WriteString(c.code(r.Text).Close)
		}
	}
	return b.String()
}

var (
	charReference = regexp.MustCompile(`^&(?:#[0-9xX]|[A-Za-z][A-Za-z0-9]*;)`)
	// blockStart are the beginnings of a line that would make it another block.
	blockStart = regexp.MustCompile(`^(?:[#>+=~-]|[0-9]{1,9}[.)])`)
)

// escape writes words so that CommonMark reads them as words. start and end say
// whether they begin or end a line; opens, that a tag follows.
func escape(s string, kind translate.UnitKind, start, opens, end bool) string {
	var b strings.Builder
	if start {
		if m := blockStart.FindString(s); m != "" {
			b.WriteString(m[:len(m)-1] + `\` + m[len(m)-1:])
			s = s[len(m):]
		}
	}
	for i := 0; i < len(s); {
		c, n := utf8.DecodeRuneInString(s[i:])
		switch c {
		case '\\', '*', '_', '`', '[', ']', '<':
			b.WriteByte('\\')
		case '|':
			if kind == translate.Cell || start {
				b.WriteByte('\\')
			}
		case '{', '#':
			if kind == translate.Heading || kind == translate.Title {
				b.WriteByte('\\')
			}
		case '&':
			if charReference.MatchString(s[i:]) {
				b.WriteByte('\\')
			}
		case '!':
			if opens && i+n == len(s) {
				b.WriteByte('\\')
			}
		}
		b.WriteString(s[i : i+n])
		i += n
	}
	return b.String()
}

// An edit replaces a span of a lesson.
type edit struct {
	span source.Span
	text string
}

// splice makes edits, which do not overlap, to bytes.
func splice(b []byte, edits []edit) []byte {
	edits = slices.Clone(edits)
	slices.SortFunc(edits, func(a, b edit) int { return a.span.Start - b.span.Start })
	var out []byte
	at := 0
	for _, e := range edits {
		out = append(append(out, b[at:e.span.Start]...), e.text...)
		at = e.span.End
	}
	return append(out, b[at:]...)
}
