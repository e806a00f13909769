package translate

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"

	"wardleaf/internal/lesson"
)

// UnitDigest identifies what a unit says: its words, its bold and slanted words, line
// breaks and links with where they lead, and the picture that an alternative text
// stands for. It is the start of a SHA-256, 12 hexadecimal digits. Marks written in
// another way, and the values of the numbers linked to, do not change it.
func UnitDigest(u Unit) string {
	sum := sha256.Sum256([]byte(u.Picture + "\x00" + Said(u.Inlines)))
	return hex.EncodeToString(sum[:6])
}

// Said writes what inlines say as one string. Two runs of inlines with the same
// string read the same on every page. Marks in it are control characters, which no
// lesson holds.
func Said(ins []lesson.Inline) string {
	var b strings.Builder
	var walk func([]lesson.Inline)
	walk = func(ins []lesson.Inline) {
		for _, in := range ins {
			switch in.Kind {
			case lesson.Text:
				b.WriteString(in.Text)
				continue
			case lesson.Break:
				b.WriteString("\x01/")
				continue
			case lesson.Strong:
				b.WriteString("\x01b")
			case lesson.Emphasis:
				b.WriteString("\x01e")
			case lesson.CodeSpan:
				b.WriteString("\x01c" + in.Text)
			case lesson.Link:
				b.WriteString("\x01l" + in.Scheme + ":" + in.Target + "\x03")
			case lesson.Image:
				b.WriteString("\x01i" + in.Target + "\x03" + in.Text)
			}
			walk(in.Children)
			b.WriteByte('\x02')
		}
	}
	walk(ins)
	return blank(b.String())
}

// blank makes one blank of several, as a page does, and none at either end.
func blank(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\t' || r == '\n' || r == '\r' }), " ")
}
