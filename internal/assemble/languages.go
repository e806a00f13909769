package assemble

import (
	"fmt"

	"wardleaf/internal/check"
	"wardleaf/internal/finding"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// unknownLanguages reports languages of the pack that the program has no labels or
// digits for. They stop that language only.
func unknownLanguages(p *pack.Pack, c *locale.Catalog) []finding.Finding {
	var out []finding.Finding
	for _, l := range p.Languages {
		if _, err := c.For(l, p.Digits[l], p.Calendars[l]); err != nil {
			out = append(out, finding.Finding{
				Rule: "language-unknown", Level: finding.Error, Lang: l,
				Place: finding.Place{File: file(p)},
				What:  fmt.Sprintf("language %s cannot be printed: %v", l, err),
				Why:   check.Find("language-unknown").Why,
				Mend:  "take the language out of pack.yaml, or add its labels to the program",
			})
		}
	}
	return out
}

func file(p *pack.Pack) *source.File {
	if p.File != nil {
		return p.File
	}
	return source.New("pack.yaml", nil)
}
