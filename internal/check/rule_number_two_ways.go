package check

import (
	"fmt"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

var numberTwoWays = &Rule{
	Name:   "number-two-ways",
	Title:  "The same quantity is kept as two numbers that differ",
	Why:    "Two lessons then teach two limits, and a family that hears both trusts neither.",
	Level:  finding.Warning,
	Needs:  Source,
	Before: "rub: {about: how long to rub the back, amount: 10}\nback-rub: {about: how long to rub the back, amount: 20}\n",
	After:  "back-rub: {about: how long to rub the back, amount: 10}\n",
	Run: func(p *Pass) {
		first := map[string]*pack.Number{}
		for _, id := range pack.Sorted(p.Pack.Numbers) {
			n := p.Pack.Numbers[id]
			about := strings.Join(strings.Fields(fold(n.About)), " ")
			if about == "" {
				continue
			}
			before := first[about]
			if before == nil {
				first[about] = n
				continue
			}
			if [4]string{before.Amount, before.Low, before.High, before.Unit} != [4]string{n.Amount, n.Low, n.High, n.Unit} {
				p.Report(Where{File: n.File, Span: n.Span}.Beside(before.File, before.Span, "the other"),
					fmt.Sprintf("%s and %s are both about %q, and differ", before.ID, id, n.About),
					"keep one of the two, or say in about what sets them apart")
			}
		}
	},
}
