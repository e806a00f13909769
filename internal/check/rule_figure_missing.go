package check

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// sheets are the computed sheets that a lesson can place.
var sheets = []string{"carrier-pattern", "contact-log", "cutting-plan", "feeding-table", "growth-chart", "sign-tally", "weight-record"}

var figureMissing = &Rule{
	Name:   "figure-missing",
	Title:  "A picture is not in the pack",
	Why:    "The step that it shows would be printed without it.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "![Tuck the cloth in](figures/tuked.svg)\n",
	After:  "![Tuck the cloth in](figures/tucked.svg)\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.Walk(func(b *lesson.Block) {
				if b.Kind != lesson.Figure || b.Source == "" || p.Pack.Figures[b.Source] != nil {
					return
				}
				if name, isSheet := strings.CutPrefix(b.Source, "sheet:"); isSheet {
					if !slices.Contains(sheets, name) {
						p.Report(In(l, b.Span), fmt.Sprintf("there is no sheet %q", name),
							finding.Meant(name, sheets)+"use one of: "+strings.Join(sheets, ", "))
					}
					return
				}
				p.Report(In(l, b.Span), fmt.Sprintf("there is no file %s", b.Source),
					fmt.Sprintf("put %s into the folder %s, or correct the name", path.Base(b.Source), path.Dir(b.Source)))
			})
		})
	},
}
