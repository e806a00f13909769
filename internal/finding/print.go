package finding

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"path"
	"strings"
	"unicode"

	"github.com/rivo/uniseg"
)

// Text prints findings for people, in the order given: the place as the GNU coding
// standards have it (file:line:column, both from 1, columns counting code points),
// the line itself with a mark below, and what to do. name stands before every path.
func Text(w io.Writer, fs []Finding, name string) error {
	var b bytes.Buffer
	for i, f := range fs {
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s: %s: %s: %s\n", f.Place.label(name), f.Level, f.Rule, f.What)
		f.Place.quote(&b)
		fmt.Fprintf(&b, "  why:  %s\n  mend: %s\n", f.Why, f.Mend)
		if len(f.Edits) > 0 {
			b.WriteString("        wardleaf check --fix does it\n")
		}
		if f.Silenced != "" {
			fmt.Fprintf(&b, "  kept out of the way by pack.yaml: %s\n", f.Silenced)
		}
		for _, r := range f.Related {
			fmt.Fprintf(&b, "  see:  %s: %s\n", r.Place.label(name), r.Text)
			r.Place.quote(&b)
		}
	}
	_, err := w.Write(b.Bytes())
	return err
}

// positioned reports whether a place has a line and column.
func (p Place) positioned() bool { return p.File != nil && len(p.File.Bytes) > 0 }

func (p Place) label(name string) string {
	if !p.positioned() {
		return p.file(name)
	}
	line, column := p.File.Position(p.Span.Start)
	return fmt.Sprintf("%s:%d:%d", p.file(name), line, column)
}

func (p Place) file(name string) string {
	if p.File == nil {
		return name
	}
	return path.Join(name, p.File.Path)
}

// quoteWidth is how many cells of a terminal a quoted line may take.
const quoteWidth = 96

// quote prints the line of a place with a caret below its column. A long line is cut
// to what stands around the column. The caret counts cells in the order in which the
// text is stored; a terminal that turns right-to-left text round shows the words
// before the column on the other side.
func (p Place) quote(b *bytes.Buffer) {
	if !p.positioned() {
		return
	}
	line, column := p.File.Position(p.Span.Start)
	runes := []rune(p.File.Line(line))
	column = min(column-1, len(runes))
	before, after := safe(string(runes[:column])), safe(string(runes[column:]))
	if strings.TrimSpace(before+after) == "" {
		return
	}
	before = cut(before, quoteWidth/2, true)
	after = cut(after, quoteWidth-uniseg.StringWidth(before), false)
	fmt.Fprintf(b, "    %s\n    %s^\n", before+after, strings.Repeat(" ", uniseg.StringWidth(before)))
}

// safe makes a line harmless and of known width: a tab is four blanks, and what
// would steer the terminal or turn the direction of the text is a replacement character.
func safe(s string) string {
	s = strings.ReplaceAll(strings.ToValidUTF8(s, "\uFFFD"), "\t", "    ")
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069 {
			return '\uFFFD'
		}
		return r
	}, s)
}

// cut keeps whole clusters of s that take no more than width cells, from its end or
// its start, and puts an ellipsis where something was left out.
func cut(s string, width int, end bool) string {
	total := uniseg.StringWidth(s)
	if total <= width {
		return s
	}
	state, used := -1, 0
	for rest := s; rest != ""; {
		var w int
		_, rest, w, state = uniseg.FirstGraphemeClusterInString(rest, state)
		used += w
		if end && total-used < width {
			return "…" + rest
		}
		if !end && used >= width-1 {
			return s[:len(s)-len(rest)] + "…"
		}
	}
	return s
}

// The JSON form is stable: fields are added, never renamed or taken away, while
// "version" is 1. Lines and columns count from 1, columns in code points; they are
// left out when a file could not be read. Paths are relative to the pack.
type report struct {
	Version  int           `json:"version"`
	Findings []jsonFinding `json:"findings"`
}

type jsonFinding struct {
	Rule  string `json:"rule"`
	Level string `json:"level"` // note, warning or error
	jsonPlace
	What     string        `json:"what"`
	Why      string        `json:"why"`
	Mend     string        `json:"mend"`
	Language string        `json:"language,omitempty"` // the language it stops; absent: all
	Module   string        `json:"module,omitempty"`   // the module it stops; absent: all
	Related  []jsonRelated `json:"related,omitempty"`
	Edits    []jsonEdit    `json:"edits,omitempty"`    // mend it, all of them together, in the same file
	Silenced string        `json:"silenced,omitempty"` // why the pack keeps it out of the way
}

type jsonPlace struct {
	File      string `json:"file,omitempty"`
	Line      int    `json:"line,omitempty"`
	Column    int    `json:"column,omitempty"`
	EndLine   int    `json:"endLine,omitempty"`
	EndColumn int    `json:"endColumn,omitempty"` // of the first code point after the place
}

type jsonEdit struct {
	jsonPlace
	Text string `json:"text"` // to stand there instead
}

type jsonRelated struct {
	jsonPlace
	Text string `json:"text"`
}

// JSON prints findings for programs, in the order given.
func JSON(w io.Writer, fs []Finding) error {
	r := report{Version: 1, Findings: []jsonFinding{}}
	for _, f := range fs {
		j := jsonFinding{
			Rule: f.Rule, Level: f.Level.String(), jsonPlace: f.Place.json(),
			What: f.What, Why: f.Why, Mend: f.Mend, Language: f.Lang, Module: f.Module, Silenced: f.Silenced,
		}
		for _, e := range f.Edits {
			j.Edits = append(j.Edits, jsonEdit{Place{f.Place.File, e.Span}.json(), e.Text})
		}
		for _, rel := range f.Related {
			j.Related = append(j.Related, jsonRelated{rel.Place.json(), rel.Text})
		}
		r.Findings = append(r.Findings, j)
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(r)
}

func (p Place) json() jsonPlace {
	if p.File == nil {
		return jsonPlace{}
	}
	j := jsonPlace{File: p.File.Path}
	if p.positioned() {
		j.Line, j.Column = p.File.Position(p.Span.Start)
		j.EndLine, j.EndColumn = p.File.Position(p.Span.End)
	}
	return j
}
