package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/piece"
	"wardleaf/internal/source"
)

var glyphMissing = &Rule{
	Name:   "glyph-missing",
	Title:  "No font can show a character",
	Why:    "An empty box would be printed in its place.",
	Level:  finding.Error,
	Needs:  Pages,
	Before: "Wash your hands 🧼\n",
	After:  "Wash your hands\n",
}

// Glyphs says which characters of a language the fonts of a piece could not show.
func Glyphs(p *pack.Pack, lang string, missing []piece.Missing) []finding.Finding {
	pass := &Pass{Pack: p, rule: glyphMissing}
	for _, m := range missing {
		at := Where{File: p.Facility.File, Lang: lang}
		if m.Lesson != nil {
			at = In(m.Lesson, m.Gap.Span)
		} else if at.File == nil {
			at.File = source.New("pack.yaml", nil)
		}
		pass.Report(at, fmt.Sprintf("no font can show %q (U+%04X)", m.Gap.Rune, m.Gap.Rune),
			"take the character out or use another; for a script that is not supported yet, a font must be added to the program")
	}
	finding.Sort(pass.findings)
	return pass.findings
}
