package redline

import (
	"strings"

	"github.com/rivo/uniseg"
)

// A Run is a stretch of text that was kept, struck or added. Kept and struck runs make
// up the old text, kept and added runs the new one.
type Run struct {
	Op   Op
	Text string
}

// compareWords finds the words that differ between two texts, by a shortest edit script.
func compareWords(old, now string) []Run {
	a, b := words(old), words(now)
	var out []Run
	var struck, added strings.Builder
	flush := func() {
		for _, r := range []Run{{Struck, struck.String()}, {Added, added.String()}} {
			if r.Text != "" {
				out = append(out, r)
			}
		}
		struck.Reset()
		added.Reset()
	}
	ops := script(a, b)
	for i, op := range ops {
		switch op {
		case Struck:
			struck.WriteString(a[0])
			a = a[1:]
		case Added:
			added.WriteString(b[0])
			b = b[1:]
		case Same:
			word := a[0]
			a, b = a[1:], b[1:]
			// A space between two changes is no landmark: it goes with both.
			if blank(word) && struck.Len() > 0 && added.Len() > 0 && i+1 < len(ops) && ops[i+1] != Same {
				struck.WriteString(word)
				added.WriteString(word)
				continue
			}
			flush()
			if n := len(out); n > 0 && out[n-1].Op == Same {
				out[n-1].Text += word
			} else {
				out = append(out, Run{Same, word})
			}
		}
	}
	flush()
	return out
}

// words takes a text apart at the word boundaries of UAX #29. Spaces and marks are
// words of their own, so that they add up to the text.
func words(text string) []string {
	var out []string
	state := -1
	for text != "" {
		var w string
		w, text, state = uniseg.FirstWordInString(text, state)
		out = append(out, w)
	}
	return out
}

func blank(s string) bool { return strings.TrimSpace(s) == "" }

// said puts together what one side said: Struck gives the old text, Added the new one.
func said(runs []Run, side Op) string {
	var b strings.Builder
	for _, r := range runs {
		if r.Op == Same || r.Op == side {
			b.WriteString(r.Text)
		}
	}
	return b.String()
}

// Was is the old text.
func Was(runs []Run) string { return said(runs, Struck) }

// Now is the new text.
func Now(runs []Run) string { return said(runs, Added) }

// whole is a text that was struck, added or kept in one piece; nothing when it is empty.
func whole(op Op, text string) []Run {
	if text == "" {
		return nil
	}
	return []Run{{op, text}}
}

// Core takes the spaces at both ends of a run apart from its words, so that a rule or a
// bracket goes with the words alone.
func Core(text string) (before, words, after string) {
	words = strings.TrimSpace(text)
	before, after, _ = strings.Cut(text, words)
	return before, words, after
}
