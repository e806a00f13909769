package check

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var partUnknown = &Rule{
	Name:   "part-unknown",
	Title:  "A heading has a class that is no kind of part",
	Why:    "A misspelt part is printed as plain text and is missing from the pieces made of that part.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "## Warning signs {.warning-sings}\n",
	After:  "## Warning signs {.warning-signs}\n",
	Run: func(p *Pass) {
		var names []string
		for _, r := range lesson.Roles {
			names = append(names, string(r))
		}
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			for _, part := range l.Parts {
				for _, c := range part.Classes {
					if !slices.Contains(names, c) {
						p.Report(In(l, part.Span), fmt.Sprintf("there is no kind of part called %q", c),
							finding.Meant(c, names)+"use one of: "+strings.Join(names, ", "))
					}
				}
				if len(part.Classes) > 1 && part.Role != lesson.Prose && string(part.Role) != part.Classes[len(part.Classes)-1] {
					p.Report(In(l, part.Span), "a part can be of one kind only", "keep one class in the braces")
				}
			}
		})
	},
}
