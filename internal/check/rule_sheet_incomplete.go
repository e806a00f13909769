package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/sheet"
)

var sheetIncomplete = &Rule{
	Name:   "sheet-incomplete",
	Title:  "A sheet is placed that uses a number or source the pack does not keep",
	Why:    "What the sheet cannot say is left out of it, and who reads it does not know that a limit is missing.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "![Hours of contact](sheet:contact-log)\n",
	After:  "numbers.yaml: hours-least: {about: least hours a day, amount: 8, unit: hours, status: common-practice}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			if l.Lang != p.Pack.Source { // said once, in the language that lessons are written in
				return
			}
			l.Walk(func(b *lesson.Block) {
				s := sheet.Find(b.Sheet())
				if s == nil {
					return
				}
				for _, id := range s.Numbers {
					if p.Pack.Numbers[id] == nil {
						p.Report(In(l, b.Span), fmt.Sprintf("the %s uses the number %s, which numbers.yaml does not have", s.Name, id), "add it there with its source")
					}
				}
				for _, id := range s.Sources {
					if p.Pack.Sources[id] == nil {
						p.Report(In(l, b.Span), fmt.Sprintf("the %s cites the source %s, which sources.yaml does not have", s.Name, id), "add it there")
					}
				}
			})
		})
	},
}
