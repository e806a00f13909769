package check

import (
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var cautionNoCall = &Rule{
	Name:   "caution-no-call",
	Title:  "A caution block does not say whom to call",
	Why:    "In the first minute nobody looks for a telephone number in another place.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "## Caution {.caution}\n\n- Stop at a danger sign.\n",
	After:  "## Caution {.caution}\n\n- Stop at a danger sign. Call [the ward](facility:ward-phone).\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Caution, func(l *lesson.Lesson, part *lesson.Part) {
			text, call := partText(part), p.words(l.Lang).call
			if strings.TrimSpace(text) != "" && !linksTo(part, "facility") && !(len(call) > 0 && holdsStem(text, call)) {
				p.Report(In(l, part.Span), "the caution block has no link to a contact of the facility, and no words say whom to call",
					"write whom to call, as a link such as [the ward](facility:ward-phone)")
			}
		})
	},
}

func linksTo(part *lesson.Part, scheme string) bool {
	found := false
	whole := lesson.Lesson{Parts: []lesson.Part{{Blocks: part.Blocks}}}
	whole.WalkInlines(func(in *lesson.Inline) {
		found = found || in.Kind == lesson.Link && in.Scheme == scheme
	})
	return found
}
