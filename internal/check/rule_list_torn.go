package check

import (
	"fmt"
	"regexp"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

var listTorn = &Rule{
	Name:   "list-torn",
	Title:  "A numbered line is not part of its list",
	Why:    "It is printed as plain text, without its number and its picture, and a step in plain text is not done.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "1. Tuck the edge in.\n\n![The edge](figures/tuck.svg)\n2. Look at the face.\n",
	After:  "1. Tuck the edge in.\n\n   ![The edge](figures/tuck.svg)\n\n2. Look at the face.\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.Walk(func(b *lesson.Block) {
				if b.Kind != lesson.Paragraph || b.Span.End > len(l.File.Bytes) {
					return
				}
				for _, at := range listLine.FindAllSubmatchIndex(l.File.Bytes[b.Span.Start:b.Span.End], -1) {
					span := source.Span{Start: b.Span.Start + at[2], End: b.Span.Start + at[3]}
					p.Report(In(l, span), fmt.Sprintf("%q begins a line that belongs to the paragraph above", l.File.Bytes[span.Start:span.End]),
						"put a blank line before it; indent a picture or paragraph above it, which belongs to the step before, as far as the words of that step")
				}
			})
		})
	},
}

// listStart is how a line of a numbered list begins, in the digits of any script.
var listStart = regexp.MustCompile(`^\s*\p{Nd}{1,2}[.)]\s`)

// listLine is such a line that is not the first of its paragraph.
var listLine = regexp.MustCompile(`\n *(\p{Nd}{1,2}[.)]) `)
