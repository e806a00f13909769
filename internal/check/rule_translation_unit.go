package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

// Linked numbers are held to the number that is kept by unit-differs; this holds the rest.
var translationUnit = &Rule{
	Name:   "translation-unit",
	Title:  "A number has another unit in the translation than in its source",
	Why:    "5 minutes for 5 seconds, or grams for kilograms, is as wrong as a wrong number.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: Rub for 10 seconds.\nhi.md: १० मिनट तक रगड़ें।\n",
	After:  "en.md: Rub for 10 seconds.\nhi.md: १० सेकंड तक रगड़ें।\n",
	Run: func(p *Pass) {
		p.besides(func(b beside) {
			here, there := p.words(b.l.Lang), p.words(b.src.Lang)
			ours := here.measured(saidWithout(b.Target.Inlines, "source", "number"))
			for amount, use := range there.measured(saidWithout(b.Source.Inlines, "source", "number")) {
				own, found := ours[amount]
				if !found || own.unit == use.unit || counts(own.unit, use.unit) || sameForm(here.units, own.form, use.unit) || sameForm(there.units, use.form, own.unit) {
					continue
				}
				p.Report(b.where(), fmt.Sprintf("%s has the unit %q here, and %q in the source", amount, own.form, use.form),
					"write the unit of the source, or correct the source first")
				return
			}
		})
	},
}

// measured are the units of the amounts that a text has once, by amount.
func (x *lexicon) measured(text string) map[string]unitUse {
	out, seen := map[string]unitUse{}, map[string]int{}
	for _, n := range numerals(text) {
		as := amounts(n.text)
		if len(as) != 1 {
			continue
		}
		seen[as[0]]++
		if use, ok := x.unitOf(text, n); ok {
			out[as[0]] = use
		}
	}
	for amount, times := range seen {
		if times > 1 {
			delete(out, amount)
		}
	}
	return out
}
