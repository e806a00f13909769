package check

import (
	"fmt"
	"regexp"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

var placeholderLeft = &Rule{
	Name:   "placeholder-left",
	Title:  "A stand-in for words that were to come is still there",
	Why:    "It would be printed and handed to a family.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "Call the ward on TODO.\n",
	After:  "Call [the ward](facility:ward-phone).\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			if at := placeholder.FindStringIndex(r.text); at != nil {
				p.Report(r.where(at[0]), fmt.Sprintf("%q stands here", r.text[at[0]:at[1]]), "write the words that belong here, or take it out")
			}
		})
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.Walk(func(b *lesson.Block) {
				if at := placeholder.FindString(b.Alt); at != "" {
					p.Report(In(l, b.Span), fmt.Sprintf("the alternative text holds %q", strings.TrimSpace(at)), "say what the picture shows to do")
				}
			})
		})
	},
}

// Signs that writers leave for themselves: words in capitals, braces of templates,
// filler, and rows of question marks.
var placeholder = regexp.MustCompile(`\b(?:TODO|FIXME|TBD|TBC|XXX+)\b|(?i:\blorem ipsum\b)|\{\{[^}]*\}\}|\{[0-9a-zA-Z_]+\}|%[sd]\b|\?\?\?+|\[(?i:insert|fill in|translate)[^\]]*\]`)
