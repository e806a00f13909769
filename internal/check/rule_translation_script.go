package check

import (
	"fmt"
	"unicode"

	"wardleaf/internal/finding"
)

var translationScript = &Rule{
	Name:   "translation-script",
	Title:  "A block is written in the script of another language",
	Why:    "Nobody who reads this language can read it.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "hi.md: মুখ খোলা রাখুন।\n",
	After:  "hi.md: चेहरा खुला रखें।\n",
	Run: func(p *Pass) {
		p.besides(func(b beside) {
			script, _, _ := p.Catalog.Script(b.l.Lang)
			table := scriptTables[script]
			if table == nil {
				return
			}
			letters, foreign := 0, 0
			var first rune
			for _, c := range b.text {
				if !unicode.IsLetter(c) {
					continue
				}
				letters++
				if !unicode.Is(table, c) && !unicode.Is(unicode.Latin, c) { // leftovers are found by another rule
					if foreign++; first == 0 {
						first = c
					}
				}
			}
			if 2*foreign > letters {
				p.Report(b.where(), fmt.Sprintf("most letters, such as %q, are not of the script %s", first, script), "put the translation into this language here")
			}
		})
	},
}

// scriptTables are the letters of the scripts of locale, by ISO 15924.
var scriptTables = map[string]*unicode.RangeTable{
	"Latn": unicode.Latin, "Deva": unicode.Devanagari, "Beng": unicode.Bengali, "Taml": unicode.Tamil, "Telu": unicode.Telugu,
	"Arab": unicode.Arabic, "Aran": unicode.Arabic, "Ethi": unicode.Ethiopic, "Mymr": unicode.Myanmar, "Khmr": unicode.Khmer, "Thai": unicode.Thai,
}
