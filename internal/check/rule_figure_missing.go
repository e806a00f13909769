package check

import (
	"fmt"
	"path"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/sheet"
)

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
				if strings.HasPrefix(b.Source, "sheet:") {
					if name := b.Sheet(); sheet.Find(name) == nil {
						p.Report(In(l, b.Span), fmt.Sprintf("there is no sheet %q", name),
							finding.Meant(name, sheet.Names())+"use one of: "+strings.Join(sheet.Names(), ", "))
					}
					return
				}
				p.Report(In(l, b.Span), fmt.Sprintf("there is no file %s", b.Source),
					fmt.Sprintf("put %s into the folder %s, or correct the name", path.Base(b.Source), path.Dir(b.Source)))
			})
		})
	},
}
