package check

import (
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var cautionEmpty = &Rule{
	Name:   "caution-empty",
	Title:  "The caution block says nothing",
	Why:    "An empty box looks like a warning that was lost in printing.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "## Caution {.caution}\n\n## Steps {.steps}\n",
	After:  "## Caution {.caution}\n\n- Follow your local protocol.\n\n## Steps {.steps}\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Caution, func(l *lesson.Lesson, part *lesson.Part) {
			if !hasWords(part.Blocks) {
				p.Report(In(l, part.Span), "the caution block says nothing", "write below it what can go wrong and whom to call")
			}
		})
	},
}

// hasWords reports whether blocks hold any text.
func hasWords(bs []lesson.Block) bool {
	found := false
	(&lesson.Lesson{Lead: bs}).WalkInlines(func(in *lesson.Inline) {
		found = found || strings.TrimSpace(in.Text) != "" && in.Kind != lesson.Image
	})
	return found
}
