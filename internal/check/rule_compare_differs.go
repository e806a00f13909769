package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

// In a range, no "at least" or "over" may stand. Ways that point the same way are let
// pass: their words overlap in many languages.
var compareDiffers = &Rule{
	Name:   "compare-differs",
	Title:  "A shown number compares the wrong way round",
	Why:    "\"Under\" for \"at least\" makes a healthy baby of one who needs help.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "[under 60 breaths](number:fast-breathing) # kept as at-least 60\n",
	After:  "[60 breaths or more](number:fast-breathing)\n",
	Run: func(p *Pass) {
		p.comparedLinks(func(r running, link linked, n *pack.Number, said map[bool]bool) {
			if n.Low != "" && said[true] {
				p.Report(r.where(link.start).Beside(n.File, n.Span, "kept here as "+n.Low+" to "+n.High),
					fmt.Sprintf("%q compares; the number %s goes from %s to %s", r.shown(link), n.ID, n.Low, n.High),
					"write both ends of the range, or correct it where it is kept")
			}
			if n.Compare != "" && len(said) > 0 && !said[upward(n.Compare)] {
				p.Report(r.where(link.start).Beside(n.File, n.Span, "kept here as "+n.Compare+" "+n.Amount),
					fmt.Sprintf("%q is the wrong way round; the number %s is %s %s", r.shown(link), n.ID, n.Compare, n.Amount),
					"write it the way round that the number is kept, or correct it where it is kept")
			}
		})
	},
}

// comparedLinks calls fn for every link to a number that is kept, with the ways in which
// the words of the link compare.
func (p *Pass) comparedLinks(fn func(r running, link linked, n *pack.Number, said map[bool]bool)) {
	p.running(func(r running) {
		for _, link := range r.links("number") {
			if n := p.Pack.Numbers[link.target]; n != nil {
				fn(r, link, n, p.words(r.lesson.Lang).comparisons(r.text[link.start:link.end]))
			}
		}
	})
}

// shown is the text of a link for a message.
func (r *running) shown(l linked) string { return r.text[l.start:l.end] }

// upward reports whether a comparison points to larger amounts.
func upward(compare string) bool { return compare == "at-least" || compare == "over" }

// comparisons reports which ways the words of a text compare: true for larger amounts,
// false for smaller ones. Longer forms go first, so that "no more than" is not "more than".
func (x *lexicon) comparisons(text string) map[bool]bool {
	text = fold(text)
	said := map[bool]bool{}
	for _, c := range x.compare {
		if n := countWords(text, c.form); n > 0 {
			said[upward(c.way)] = true
			text = cutWords(text, c.form)
		}
	}
	return said
}
