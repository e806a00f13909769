package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var criticalStepUnknown = &Rule{
	Name:   "critical-step-unknown",
	Title:  "A record names a critical step that the lesson does not have",
	Why:    "The step that must never be missed would not be marked, or the wrong one would.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "critical-steps: [9] # the lesson has 6 steps\n",
	After:  "critical-steps: [6]\n",
	Run: func(p *Pass) {
		for _, m := range p.Pack.Modules {
			l := m.Lessons[p.Pack.Source]
			if l == nil {
				continue
			}
			var parts []*lesson.Part
			for i := range l.Parts {
				if l.Parts[i].Role == lesson.Steps {
					parts = append(parts, &l.Parts[i])
				}
			}
			for _, r := range m.Record.CriticalSteps {
				at := InRecord(m, r.Span)
				if r.Part > len(parts) {
					p.Report(at, fmt.Sprintf("the lesson has %s with steps, not %d", count(len(parts), "part"), r.Part), "correct the number before the point")
				} else if n := len(parts[r.Part-1].Items(true)); r.Step > n {
					p.Report(at.Beside(l.File, parts[r.Part-1].Span, "the steps"),
						fmt.Sprintf("the part has %s, not %d", count(n, "step"), r.Step), "count the steps again; each part begins at 1")
				}
			}
		}
	},
}
