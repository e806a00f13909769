package check

import (
	"slices"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

var signOffVoid = &Rule{
	Name:   "sign-off-void",
	Title:  "A sign-off no longer stands, since what it approved has changed",
	Why:    "Words, numbers or figures that no clinician has read since may be wrong; the pages say that they await review.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "sign-offs: # and a word of en.md was changed on 2026-11-25\n  - role: Neonatal nurse\n    lang: en\n    date: 2026-11-20\n    digest: sha256:0123…\n",
	After:  "sign-offs:\n  - role: Neonatal nurse\n    lang: en\n    date: 2026-11-20\n    digest: sha256:0123…\n  - role: Neonatal nurse\n    lang: en\n    date: 2026-11-26\n    digest: sha256:89ab…\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			offs := m.Record.SignOffs
			for i, s := range offs {
				// Earlier ones of the same reviewer are kept as history.
				if slices.ContainsFunc(offs[i+1:], func(later pack.SignOff) bool {
					return later.Role == s.Role && later.Lang == s.Lang
				}) {
					continue
				}
				at := InRecord(m, s.Span)
				at.Lang = s.Lang
				switch digest := translate.Digest(p.Pack, m, s.Lang); {
				case digest == "":
					p.Report(at, "this approves a lesson in the language \""+s.Lang+"\", and there is none",
						"write the language of the lesson that was read, or take the sign-off out")
				case digest != s.Digest:
					p.Report(at, "the lesson, a number it links to or a figure it shows has changed since this was signed",
						"let a clinician read it again, then run: wardleaf signoff "+m.ID+" --lang "+s.Lang+" --role ROLE")
				}
			}
		}
	},
}
