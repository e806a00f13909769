package check

import (
	"fmt"
	"unicode"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// Names of sources keep the digits in which they are found.
var digitsOther = &Rule{
	Name:   "digits-other",
	Title:  "A number is written in other digits than the language's",
	Why:    "Two kinds of digits on one page are misread: Bengali 4 looks like 8, and Arabic 5 like 0.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "digits: {hi: deva}\nhi.md: 40 सेकंड\n",
	After:  "digits: {hi: deva}\nhi.md: ४० सेकंड\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			zero, known := zeros[p.Pack.Digits[r.lesson.Lang]]
			if !known {
				return
			}
			for i, s := range r.stretches {
				if s.scheme == "source" || i > 0 && r.stretches[i-1].inline == s.inline || listStart.MatchString(s.inline.Text) { // list-torn says that
					continue
				}
				if at, mended := otherDigits(s.inline.Text, zero); at >= 0 {
					span := s.inline.Span
					what := fmt.Sprintf("%q is no digit of this language", []rune(s.inline.Text[at:])[0])
					if string(r.lesson.File.Bytes[span.Start:span.End]) != s.inline.Text { // it is written with an escape
						p.Report(In(r.lesson, span), what, "write the number in the digits that pack.yaml sets for the language")
						continue
					}
					p.Mend(In(r.lesson, source.Span{Start: span.Start + at, End: span.End}), what,
						"write the number in the digits that pack.yaml sets for the language", finding.Edit{Span: span, Text: mended})
				}
			}
		})
	},
}

// zero is the first digit of the numbering system that the pack sets for a language.
func (p *Pass) zero(lang string) string {
	if z, ok := zeros[p.Pack.Digits[lang]]; ok {
		return string(z)
	}
	return "0"
}

// zeros are the first digits of the numbering systems that a pack may set.
var zeros = map[string]rune{
	"latn": '0', "arab": 0x0660, "arabext": 0x06F0, "beng": 0x09E6, "deva": 0x0966, "khmr": 0x17E0,
	"mymr": 0x1040, "tamldec": 0x0BE6, "telu": 0x0C66, "thai": 0x0E50,
}

// otherDigits returns where the first digit of another system stands, or -1, and the
// text in digits from zero on.
func otherDigits(text string, zero rune) (at int, mended string) {
	at = -1
	out := []rune{}
	for i, c := range text {
		if unicode.Is(unicode.Nd, c) {
			d := zero + digit(c)
			if d != c && at < 0 {
				at = i
			}
			c = d
		}
		out = append(out, c)
	}
	return at, string(out)
}
