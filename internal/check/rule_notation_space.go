package check

import (
	"fmt"
	"strings"

	"wardleaf/internal/finding"
)

// The space is that of ISO 80000-1; either no-break space is right.
var notationSpace = &Rule{
	Name:   "notation-space",
	Title:  "An amount and its unit are not joined by a no-break space",
	Why:    "At the end of a line the amount can part from its unit, and an amount that touches its unit can be misread.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "[37.5 °C](number:hot-act)\n",
	After:  "[37.5\u00a0°C](number:hot-act)\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			for _, link := range r.links("number") {
				for _, n := range numerals(r.text[link.start:link.end]) {
					use, ok := p.words(r.lesson.Lang).unitOf(r.text[link.start:link.end], n)
					if !ok || use.gap == "\u00a0" || use.gap == "\u202f" {
						continue
					}
					what := "no space"
					switch {
					case strings.Contains(use.gap, " "):
						what = "a space that can break"
					case use.gap != "":
						what = "a hyphen or another space"
					}
					at := link.start + n.end
					if use.before {
						at = link.start + n.start - len(use.gap)
					}
					p.Mend(r.where(link.start), fmt.Sprintf("%s stands between %s and %s", what, n.text, use.form),
						"put a no-break space (U+00A0) between them", r.edit(at, use.gap, "\u00a0")...)
					break
				}
			}
		})
	},
}
