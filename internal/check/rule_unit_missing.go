package check

import (
	"fmt"
	"slices"

	"wardleaf/internal/finding"
)

// Of a rate, such as breaths a minute, one of the two is enough.
var unitMissing = &Rule{
	Name:   "unit-missing",
	Title:  "A shown number does not name the unit of the number that is kept",
	Why:    "20 without a unit is read as whatever is usual, and 20 cl is ten times 20 ml.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "[up to 20\u00a0cl](number:cup-fill) # kept as 20 ml\n",
	After:  "[up to 20\u00a0ml](number:cup-fill)\n",
	Run: func(p *Pass) {
		p.running(func(r running) {
			x := p.words(r.lesson.Lang)
			for _, link := range r.links("number") {
				n := p.Pack.Numbers[link.target]
				if n == nil {
					continue
				}
				var forms []unitForm // of the units that are kept, where the language has words for them
				for _, kept := range p.recordWords().named(n.Unit) {
					for _, u := range x.units {
						if u.unit == kept {
							forms = append(forms, u)
						}
					}
				}
				text := r.text[link.start:link.end]
				_, after := unitAfter(r.text[link.end:], forms)
				if !x.known || len(forms) == 0 || after || names(text, forms) || names(text, x.units) { // another unit is for unit-differs to judge
					continue
				}
				p.Report(r.where(link.start).Beside(n.File, n.Span, "kept here in "+n.Unit),
					fmt.Sprintf("no unit is named that is known to be %s", n.Unit),
					"write the amount with the unit that is kept; if it is there and not known, write it as its sign or in a usual form")
			}
		})
	},
}

// named lists the units that a text names, such as time and day of "times a day".
func (x *lexicon) named(text string) []string {
	var out []string
	for _, u := range x.units {
		if names(text, []unitForm{u}) && !slices.Contains(out, u.unit) {
			out = append(out, u.unit)
		}
	}
	return out
}

// names reports whether a text names one of the units, beside a numeral or elsewhere.
func names(text string, forms []unitForm) bool {
	for _, n := range numerals(text) {
		if _, ok := unitAfter(text[n.end:], forms); ok {
			return true
		}
	}
	text = fold(text)
	return slices.ContainsFunc(forms, func(u unitForm) bool { return countWords(text, u.form) > 0 })
}
