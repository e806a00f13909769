package check

import (
	"golang.org/x/text/unicode/norm"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

var textNotNormalised = &Rule{
	Name:   "text-not-normalised",
	Title:  "A text is not in normal form C of Unicode",
	Why:    "The same word is stored in two ways: a search finds one of them, and a comparison of two languages or two dates sees a change where there is none.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "Hold the be\u0301be\u0301.\n",
	After:  "Hold the b\u00e9b\u00e9.\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			b := l.File.Bytes
			at := norm.NFC.QuickSpan(b)
			if at == len(b) || norm.NFC.IsNormal(b) {
				return
			}
			good := norm.NFC.Bytes(b)
			first := 0
			for first < len(b) && first < len(good) && b[first] == good[first] {
				first++
			}
			p.Mend(In(l, source.Span{Start: first, End: first}), "from here on, letters and their marks are stored apart, or in another order",
				"save the file in normal form C", finding.Edit{Span: source.Span{End: len(b)}, Text: string(good)})
		})
	},
}
