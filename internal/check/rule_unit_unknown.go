package check

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

var unitUnknown = &Rule{
	Name:   "unit-unknown",
	Title:  "A number has a unit that is not on the list",
	Why:    "A unit that is written in another way in every place, or is not known where the page is read, turns a right number into a wrong amount.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "back-rub: {amount: 10, unit: secs}\n",
	After:  "back-rub: {amount: 10, unit: seconds}\n",
	Run: func(p *Pass) {
		for _, id := range pack.Sorted(p.Pack.Numbers) {
			n := p.Pack.Numbers[id]
			if n.Unit == "" || slices.Contains(knownUnits, n.Unit) {
				continue
			}
			p.Report(Where{File: n.File, Span: n.Span}, fmt.Sprintf("the unit of %s is %q", id, n.Unit),
				"use one of: "+strings.Join(knownUnits, ", "))
		}
	},
}

// knownUnits are the units of a pack, in English whatever its languages. There is
// no litre: its sign is too like the digit 1.
var knownUnits = []string{
	"%", "breaths a minute", "cm", "days", "g", "g a day", "g/kg/day", "g a month", "g a week", "hours", "kg", "m", "mg", "minutes",
	"ml", "ml a day", "mm", "months", "seconds", "times a day", "times a week", "weeks", "years", "°C",
}
