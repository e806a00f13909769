package redline

import (
	"fmt"
	"io"
	"strings"
)

// Text prints a view for a terminal. The words that were struck stand in brackets on
// the line "was", those that were added on the line "now".
func Text(w io.Writer, v *View, was, now string) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n  %s\n  %s\n", v.Title, v.Pack, v.Was, v.Now)
	if v.None != "" {
		fmt.Fprintf(&b, "\n%s\n", v.None)
	}
	width := max(len([]rune(was)), len([]rune(now))) + 1
	entry := func(e *Entry, runs []Run, where string) {
		fmt.Fprintf(&b, "  %3s  %s\n", e.Number, where)
		if e.What != "" {
			fmt.Fprintf(&b, "       %s\n", e.What)
		}
		side := func(name string, op Op) {
			fmt.Fprintf(&b, "       %-*s %s\n", width, name+":", bracketed(runs, op))
		}
		if e.Kind != New && changed(runs) && Was(runs) != "" {
			side(was, Struck)
		}
		if e.Kind != Gone && len(runs) > 0 && Now(runs) != "" {
			side(now, Added)
		}
		for _, m := range e.Marks {
			fmt.Fprintf(&b, "       %s\n", m)
		}
	}
	if len(v.First) > 0 {
		fmt.Fprintf(&b, "\n%s\n", v.FirstTitle)
		for i := range v.First {
			e := &v.First[i]
			entry(e, Excerpt(e.Runs), e.Section+" – "+e.Where)
		}
	}
	for _, s := range v.Sections {
		fmt.Fprintf(&b, "\n%s\n", s.Title)
		for _, n := range s.Notes {
			fmt.Fprintf(&b, "  %s\n", n)
		}
		for i := range s.Entries {
			e := &s.Entries[i]
			entry(e, e.Runs, e.Where)
			for _, l := range e.Lines {
				fmt.Fprintf(&b, "       %s\n", l)
			}
		}
	}
	_, err := io.WriteString(w, Bare(b.String()))
	return err
}

// Bare takes the isolates out of text, for a place that orders text itself and may show
// them as boxes.
func Bare(text string) string { return strings.NewReplacer("\u2068", "", "\u2069", "").Replace(text) }

func changed(runs []Run) bool {
	for _, r := range runs {
		if r.Op != Same {
			return true
		}
	}
	return false
}

// bracketed is one side of a text, with brackets around what the other does not have.
// When all of it is, there are none.
func bracketed(runs []Run, side Op) string {
	var b strings.Builder
	for _, r := range runs {
		switch {
		case r.Op == side && len(runs) > 1:
			before, words, after := Core(r.Text)
			b.WriteString(before + "[" + words + "]" + after)
		case r.Op == side || r.Op == Same:
			b.WriteString(r.Text)
		}
	}
	return b.String()
}
