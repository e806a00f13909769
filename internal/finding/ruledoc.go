package finding

import (
	"fmt"
	"strings"
)

// A RuleDoc is what is to be said about a rule, in the rule's own words.
type RuleDoc struct {
	Name   string
	Title  string // one sentence without a full stop
	Why    string
	Level  Level
	Before string // the smallest text that breaks the rule
	After  string // the same text, mended
}

// Explain returns all of it as plain text, ending in a line end.
func (d RuleDoc) Explain() string {
	return fmt.Sprintf("%s: %s\n\n%s.\n\nwhy: %s\n\nbefore:\n%s\nafter:\n%s",
		d.Name, d.Level, d.Title, d.Why, indent(d.Before), indent(d.After))
}

// indent puts four blanks before each line that is not empty.
func indent(s string) string {
	var b strings.Builder
	for line := range strings.Lines(strings.TrimRight(s, "\n") + "\n") {
		if line != "\n" {
			b.WriteString("    ")
		}
		b.WriteString(line)
	}
	return b.String()
}
