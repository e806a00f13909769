package shape

import (
	"unicode"

	"github.com/go-text/typesetting/language"

	"wardleaf/internal/font"
)

// family returns the first family of the chain that can show a rune. Marks, joiners
// and characters that are never drawn stay with the family before them when it can
// show them, so that a cluster is not torn apart.
func (s *Shaper) family(p *paragraph, at int, bold bool, before *font.Family) *font.Family {
	r := p.Runes[at]
	if before != nil && (ignorable(r) || unicode.Is(unicode.M, r) && before.Has(r, bold)) {
		return before
	}
	if p.latin[at] && s.latin != nil && s.latin.Has(r, bold) {
		return s.latin
	}
	for _, f := range s.chain {
		if f.Has(r, bold) {
			return f
		}
	}
	if before != nil {
		return before
	}
	return s.chain[0]
}

// latinStretches marks what the Latin family sets in text of any script: Latin
// letters, European digits with their percent and degree signs, and what joins them
// without a space or bracket, as in 2.5 or COVID-19. Most families carry these, too,
// but not at the height that Latin has beside their own letters once they are scaled.
func latinStretches(runes []rune) []bool {
	latin := make([]bool, len(runes))
	joining := -1 // the first of the joining characters since one was marked
	for i, r := range runes {
		switch {
		case r >= '0' && r <= '9', r == '%', r == '°', language.LookupScript(r) == language.Latin:
			latin[i] = true
			for j := joining; j >= 0 && j < i; j++ {
				latin[j] = true
			}
			joining = i + 1
		case isSpace(r), unicode.In(r, unicode.Ps, unicode.Pe), !unscripted(r):
			joining = -1
		}
	}
	return latin
}

// unscripted reports a character that belongs to no script of its own.
func unscripted(r rune) bool {
	s := language.LookupScript(r)
	return s == language.Common || s == language.Inherited
}

// ignorable reports characters that steer layout and are never drawn: joiners,
// bidi controls, zero-width space and line ends.
func ignorable(r rune) bool {
	switch {
	case r >= 0x200B && r <= 0x200F, r >= 0x202A && r <= 0x202E, r >= 0x2060 && r <= 0x2069, r == 0xFEFF, r == '\n', r == 0x00AD:
		return true
	}
	return false
}

// isSpace reports spaces that separate words; a no-break space belongs to its word.
func isSpace(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }
