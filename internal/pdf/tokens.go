package pdf

import (
	"fmt"
	"strings"
	"unicode/utf16"

	"wardleaf/internal/page"
)

// nameToken writes a name object: ISO 32000-1, 7.3.5.
func nameToken(s string) string {
	var b strings.Builder
	b.WriteByte('/')
	for i := range len(s) {
		if c := s[i]; c > ' ' && c < 0x7F && !strings.ContainsRune("()<>[]{}/%#", rune(c)) {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(&b, "#%02X", c)
		}
	}
	return b.String()
}

// textString writes a text string object: ISO 32000-1, 7.9.2.2.
func textString(s string) string {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return "<FEFF" + utf16Hex(s) + ">"
		}
	}
	return byteString(s)
}

// byteString writes printable ASCII as a literal string object: ISO 32000-1, 7.3.4.2.
func byteString(s string) string {
	return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(s) + ")"
}

func utf16Hex(s string) string {
	var b strings.Builder
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String()
}

// colour writes the operands of rg and RG.
func colour(c page.Colour) string {
	return number(float64(c.R)/255) + " " + number(float64(c.G)/255) + " " + number(float64(c.B)/255)
}

// number writes a number with at most three decimals.
func number(v float64) string {
	s := fmt.Sprintf("%.3f", v)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}
