package check

import (
	"bytes"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

var cautionNotFirst = &Rule{
	Name:   "caution-not-first",
	Title:  "The caution block is not the first part",
	Why:    "Readers begin to act at the first step; a warning after it comes too late.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "## Steps {.steps}\n\n## Caution {.caution}\n",
	After:  "## Caution {.caution}\n\n## Steps {.steps}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			if c := l.Part(lesson.Caution); c != nil && c != &l.Parts[0] {
				p.Mend(In(l, c.Span).Beside(l.File, l.Parts[0].Span, "this part comes before it"),
					"the caution block is not the first part of the lesson",
					"move it up, before every other heading of level 2", moveFirst(l, c)...)
			}
		})
	},
}

// moveFirst are the edits that move a part before all others.
func moveFirst(l *lesson.Lesson, part *lesson.Part) []finding.Edit {
	b := l.File.Bytes
	from, to := lineStart(b, part.Span.Start), len(b)
	for i := range l.Parts {
		if at := l.Parts[i].Span.Start; at > part.Span.Start && at < to {
			to = lineStart(b, at)
		}
	}
	text := strings.TrimRight(string(b[from:to]), "\r\n") + "\n\n"
	first := lineStart(b, l.Parts[0].Span.Start)
	return []finding.Edit{
		{Span: source.Span{Start: first, End: first}, Text: text},
		{Span: source.Span{Start: from, End: to}},
	}
}

func lineStart(b []byte, i int) int { return bytes.LastIndexByte(b[:i], '\n') + 1 }
