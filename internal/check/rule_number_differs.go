package check

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var numberDiffers = &Rule{
	Name:   "number-differs",
	Title:  "A shown number is not the number that is kept",
	Why:    "A wrong dose, weight or temperature on paper can hurt a baby, and nobody compares ten languages by eye.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "[36.1 to 37.5\u00a0°C](number:normal-temperature)\n",
	After:  "[36.5 to 37.5\u00a0°C](number:normal-temperature)\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.WalkInlines(func(in *lesson.Inline) {
				n := p.Pack.Numbers[in.Target]
				if in.Kind != lesson.Link || in.Scheme != "number" || n == nil {
					return
				}
				want := []string{n.Amount}
				if n.Amount == "" {
					want = []string{n.Low, n.High}
				}
				got := amounts(lesson.Plain(in.Children))
				if got == nil { // "twice a day"
					got = p.words(l.Lang).quantities(lesson.Plain(in.Children)).words
				}
				if !slices.Equal(got, want) {
					kept := strings.Join(want, " to ")
					p.Report(In(l, in.Span).Beside(n.File, n.Span, "kept here as "+strings.TrimSpace(kept+" "+n.Unit)),
						fmt.Sprintf("the text shows %s; the number %s is %s", shown(got), n.ID, kept),
						"write "+kept+" in the digits of this language, low before high, with no mark for thousands; or correct the number where it is kept")
				}
			})
		})
	},
}

// An amount has one decimal mark at most: point, comma or U+066B, the Arabic decimal
// separator (CLDR uses no other).
var amountText = regexp.MustCompile(`[0-9]+(?:[.,\x{066B}][0-9]+)?`)

// amounts finds the amounts in a text, in order, in digits 0 to 9 with a point.
// Any decimal digit of Unicode counts. Amounts are compared as written: 2.5 is not
// 2.50, which claims to be more exact.
func amounts(text string) []string {
	text = foldDigits(text)
	if !strings.ContainsAny(text, "0123456789") {
		return nil
	}
	out := amountText.FindAllString(text, -1)
	for i := range out {
		out[i] = strings.NewReplacer(",", ".", "\u066b", ".").Replace(out[i])
	}
	return out
}

// digit is the value of a decimal digit. Unicode keeps such digits in runs of ten
// from zero (TUS 4.6), and no run touches another but for the mathematical digits,
// whose five runs begin at U+1D7CE.
func digit(r rune) rune {
	if r >= 0x1D7CE && r <= 0x1D7FF {
		return (r - 0x1D7CE) % 10
	}
	n := rune(0)
	for unicode.Is(unicode.Nd, r-n-1) {
		n++
	}
	return n % 10
}

func shown(amounts []string) string {
	if len(amounts) == 0 {
		return "no number"
	}
	return strings.Join(amounts, " and ")
}
