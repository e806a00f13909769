package check

import (
	"strings"

	"wardleaf/internal/finding"
)

// The marks are those of CLDR. Other typographic marks are left: house styles differ.
var notationQuotation = &Rule{
	Name:   "notation-quotation",
	Title:  "A typewriter's quotation mark stands in the text",
	Why:    "It does not show where the words of another person begin and end, and looks unfinished in print.",
	Level:  finding.Note,
	Needs:  Source,
	Before: "Say, \"I have her.\"\n",
	After:  "Say, “I have her.”\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			before, after, known := p.Catalog.Quotes(r.lesson.Lang)
			if !known {
				return
			}
			marks := strings.Count(r.text, `"`)
			for n, at := 0, -1; n < marks; n++ {
				at += 1 + strings.Index(r.text[at+1:], `"`)
				mark := before
				if n%2 == 1 {
					mark = after
				}
				what, how := `here is " where `+mark+" is meant", "use "+before+" and "+after
				if marks%2 == 1 { // which one has no partner is not known
					p.Report(r.where(at), `one " of this paragraph has no partner`, how)
					return
				}
				p.Mend(r.where(at), what, how, r.edit(at, `"`, mark)...)
			}
		})
	},
}
