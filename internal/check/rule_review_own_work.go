package check

import (
	"fmt"
	"strings"

	"wardleaf/internal/finding"
)

var reviewOwnWork = &Rule{
	Name:   "review-own-work",
	Title:  "A lesson is signed off by whoever wrote or translated it",
	Why:    "Nobody sees their own mistakes; a second pair of eyes is what a sign-off is for.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "review: {by: Ward educator}\nsign-offs:\n  - role: Ward educator\n",
	After:  "review: {by: Ward educator}\nsign-offs:\n  - role: Neonatal nurse in charge\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			for _, s := range m.Record.SignOffs {
				by := m.Record.By
				if s.Lang != p.Pack.Source {
					by = m.Record.Translations[s.Lang].By
				}
				if by == "" || !strings.EqualFold(by, s.Role) {
					continue
				}
				at := InRecord(m, s.Span)
				at.Lang = s.Lang
				p.Report(at, fmt.Sprintf("%q made the lesson in this language, and signed it off", s.Role),
					"let someone else read and sign it, and take this sign-off out")
			}
		}
	},
}
