package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
)

var cautionNoStop = &Rule{
	Name:   "caution-no-stop",
	Title:  "A caution block does not say when to stop",
	Why:    "Someone alone with the baby must read here at what sign to stop and get help.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "## Caution {.caution}\n\n- Call the ward for advice.\n",
	After:  "## Caution {.caution}\n\n- At a danger sign, stop and call the ward.\n",
	Run: func(p *Pass) {
		p.Parts(lesson.Caution, func(l *lesson.Lesson, part *lesson.Part) {
			stop := p.words(l.Lang).stop
			if text := partText(part); len(stop) > 0 && text != "" && !holdsStem(text, stop) {
				p.Report(In(l, part.Span), "no words here say when to stop, or what not to do",
					"say at which signs to stop and get help")
			}
		})
	},
}

// partText is all the text of a part, a space between its blocks.
func partText(part *lesson.Part) string {
	text := ""
	whole := lesson.Lesson{Parts: []lesson.Part{{Blocks: part.Blocks}}}
	whole.Walk(func(b *lesson.Block) {
		if s := lesson.Plain(b.Inlines); s != "" {
			text += s + " "
		}
	})
	return text
}
