package check

import (
	"testing"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// TestSilenceSays keeps out of the way what has the words, in what it says or in its line,
// and nothing else of the rule.
func TestSilenceSays(t *testing.T) {
	file := source.New("hands/fr.md", []byte("6. Rincez jusqu'à la fin.\n7. Prenez votre\u00a0téléphone.\n"))
	at := func(start int, what string) finding.Finding {
		return finding.Finding{Rule: "negation-lost", Level: finding.Warning, What: what, Place: finding.Place{File: file, Span: source.Span{Start: start, End: start}}, Module: "hands", Lang: "fr"}
	}
	fs := []finding.Finding{at(3, `no word for "until no soap is left"`), at(35, `no word for "Do not pick up"`)}
	for words, want := range map[string][2]bool{
		"": {true, true}, "no soap": {true, false}, "votre téléphone": {false, true}, "7. ": {false, true}, "elsewhere": {},
	} {
		q := pack.Silence{Rule: "negation-lost", Module: "hands", Says: words, Reason: "right as it is", Until: pack.Date{Time: today}}
		got := [2]bool{silences(q, &fs[0], today), silences(q, &fs[1], today)}
		if got != want {
			t.Errorf("%q silences %v, want %v", words, got, want)
		}
	}
}
