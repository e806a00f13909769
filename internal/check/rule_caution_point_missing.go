package check

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

// A point may be worded in several ways; pack.yaml lists them for each language.
var cautionPointMissing = &Rule{
	Name:   "caution-point-missing",
	Title:  "A caution block lacks a point that pack.yaml asks of every lesson",
	Why:    "Each family may hold one lesson only, so each must say what all of them must know.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "pack.yaml: caution-points: {local-protocol: {en: [local protocol]}}\nen.md: - Call the ward.\n",
	After:  "pack.yaml: caution-points: {local-protocol: {en: [local protocol]}}\nen.md: - Call the ward. Follow your local protocol.\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Caution, func(l *lesson.Lesson, part *lesson.Part) {
			text := fold(partText(part))
			if strings.TrimSpace(text) == "" {
				return // caution-empty says so
			}
			for _, point := range p.Pack.CautionPoints {
				ways := point.Ways[l.Lang]
				if len(ways) > 0 && !slices.ContainsFunc(ways, func(w string) bool { return strings.Contains(text, fold(w)) }) {
					p.Report(In(l, part.Span).Beside(p.Pack.File, point.Span, "asked for here"),
						fmt.Sprintf("the caution block lacks the point %s", point.ID),
						fmt.Sprintf("write it as %q", ways[0]))
				}
			}
		})
	},
}
