package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// That a term exists at all is for link-broken to say.
var termUndefined = &Rule{
	Name:   "term-undefined",
	Title:  "A term has no approved wording in the language of a lesson",
	Why:    "Each translator then finds a word of their own, and a family hears three words for one danger.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "terms.yaml: danger-sign: {en: danger sign}\nhi.md: [खतरे का लक्षण](term:danger-sign)\n",
	After:  "terms.yaml: danger-sign: {en: danger sign, hi: खतरे का लक्षण}\n",
	Run: func(p *Pass) {
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			said := map[string]bool{}
			l.WalkInlines(func(in *lesson.Inline) {
				t := p.Pack.Terms[in.Target]
				if in.Kind != lesson.Link || in.Scheme != "term" || t == nil || t.In[l.Lang] != "" || said[t.ID] {
					return
				}
				said[t.ID] = true
				p.Report(In(l, in.Span).Beside(t.File, t.Span, "kept here"), fmt.Sprintf("the term %s has no wording in %q", t.ID, l.Lang),
					"let a clinician who speaks the language choose one, and write it in terms.yaml")
			})
		})
	},
}
