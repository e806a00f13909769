package linebreak

import (
	"slices"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// uniseg v0.4.7 passes the whole of LineBreakTest.txt and yet errs in two
// places, both of them longer contexts than that file holds:
//
//   - A hyphen-minus before a digit never gets a break before it, though LB4,
//     LB5, LB8, LB18 and LB20 outrank LB25: "at -5" cannot break at its space,
//     nor "\n-5" after its line feed. See readHyphens.
//   - After an emoji with a skin tone (LB30b) it loses its state and reports a
//     mandatory break whatever follows. See segments.next.

// segments cuts a text at its line break opportunities.
type segments struct {
	rest  string
	state int
}

func newSegments(text []rune) segments {
	return segments{rest: string(readHyphens(text)), state: -1}
}

// next returns the text up to the next break. Its rune count is right, though
// not always its hyphens.
func (s *segments) next() (segment string, must, ok bool) {
	whole := s.rest
	if whole == "" {
		return "", false, false
	}
	segment, rest, must, state := uniseg.FirstLineSegmentInString(whole, s.state)
	length := len(segment)
	for must && rest != "" && !uniseg.HasTrailingLineBreakInString(segment) {
		// A mandatory break without a separator: the state was lost. No rule
		// looks back past an emoji modifier, so begin again with that one to
		// learn what may follow it.
		_, size := utf8.DecodeLastRuneInString(segment)
		length -= size
		segment, rest, must, state = uniseg.FirstLineSegmentInString(whole[length:], -1)
		length += len(segment)
	}
	s.rest, s.state = rest, state
	return whole[:length], must, true
}

// readHyphens returns text with a letter in place of each hyphen-minus that
// stands between an opportunity and a digit. There a letter (AL) and a
// hyphen (HY) break alike under every rule: LB4 to LB20 before them do not
// tell the two apart, and neither lets go of the digit (LB23, LB25).
func readHyphens(text []rune) []rune {
	var read []rune
	for i := 1; i+1 < len(text); i++ {
		if text[i] == '-' && beginsAfresh(text[i-1]) && numeric(text[i+1]) {
			if read == nil {
				read = slices.Clone(text)
			}
			read[i] = 'a'
		}
	}
	if read == nil {
		return text
	}
	return read
}

// beginsAfresh reports whether a hyphen can begin a line after r: classes SP,
// ZW, CB, and the separators BK, CR, LF and NL.
func beginsAfresh(r rune) bool {
	switch r {
	case ' ', 0x200B, 0xFFFC, '\n', '\v', '\f', '\r', 0x85, 0x2028, 0x2029:
		return true
	}
	return false
}

// numeric holds every character of class NU, and full-width digits (ID),
// which part from a letter as they do from a hyphen.
func numeric(r rune) bool {
	return unicode.Is(unicode.Nd, r) || r == 0x066B || r == 0x066C
}
