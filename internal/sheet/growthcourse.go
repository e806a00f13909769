package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"wardleaf/internal/drawing"
	"wardleaf/internal/growth"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// This file holds what a growth chart says of one baby's measurements.

// GrowthLimits are the numbers of the pack that a course is held against.
func GrowthLimits(p *pack.Pack) growth.Limits {
	days := func(id string) int { return int(Amount(p, id)) }
	l := growth.Limits{
		LeastGain: Amount(p, "least-gain"), GainDays: days("least-gain-days"), GainUntil: days("least-gain-until")*7 + 6,
		SmallLow: Amount(p, "very-small-band"), SmallHigh: Amount(p, "small-band"),
		SmallLoss: Amount(p, "small-loss"), VerySmallLoss: Amount(p, "very-small-loss"),
		SmallLossDays: days("small-loss-days"), VerySmallLossDays: days("very-small-loss-days"),
		RegainDays: days("regain-age"),
	}
	if l.GainUntil < growth.FirstDay || l.GainDays == 0 {
		l.LeastGain = 0 // the pack does not say when it is to be marked
	}
	return l
}

// points plots what was measured, and joins the points by a thin line.
func (p *growthPlot) points(m growth.Measure, course []growth.Point) {
	var at []drawing.Point
	for _, pt := range course {
		if pt.Values[m] > 0 {
			at = append(at, p.at(pt.Age, pt.Values[m]))
		}
	}
	p.drawing.Line(drawing.Ink, 0.2, nil, at...)
	for _, a := range at {
		p.drawing.Dot(drawing.Ink, drawing.Paper, 0.3, a.X, a.Y, 0.95)
	}
}

// courseTable lists what was measured, with z-scores, gains and marks.
func courseTable(loc *locale.Locale, course []growth.Point, l growth.Limits, in growthInputs) lesson.Block {
	head := []string{loc.Label("date"), loc.Label("age")}
	for _, m := range growth.Measures {
		unit := units[m]
		if m == growth.Weight {
			unit = "g"
		}
		head = append(head, loc.Label(measureLabels[m])+" ("+unit+")")
	}
	out := [][]string{append(head, loc.Label("gain-column"), loc.Label("mark"))}
	for _, p := range course {
		row := []string{loc.Date(p.Date), completed(loc, p.Age)}
		for _, m := range growth.Measures {
			cell := ""
			if v := p.Values[m]; v > 0 {
				if m == growth.Weight {
					cell = loc.Decimal(strconv.FormatFloat(v*1000, 'f', 0, 64))
				} else {
					cell = loc.Decimal(growthAmount(m, v))
				}
				cell += " (" + Signed(loc, p.Z[m], 2) + ")"
			}
			row = append(row, cell)
		}
		gain := ""
		if !p.Since.IsZero() {
			gain = Signed(loc, p.Gain, 1)
		}
		var marks []string
		for _, m := range p.Marks {
			very := in.birthWeightOf(course) < l.SmallLow
			marks = append(marks, MarkName(loc, m, l, very))
		}
		out = append(out, append(row, gain, strings.Join(marks, "; ")))
	}
	return Table([]float64{0.17, 0.1, 0.155, 0.135, 0.135, 0.125, 0.18}, out, true, 1, 2, 3, 4, 5)
}

// birthWeightOf is the birth weight given, or that of the day of birth.
func (in growthInputs) birthWeightOf(course []growth.Point) float64 {
	if in.birthWeight == 0 && len(course) > 0 && course[0].Date.Equal(in.baby.Birth) {
		return course[0].Values[growth.Weight]
	}
	return in.birthWeight
}

// MarkName is what a mark says. very tells that the birth weight is in the smaller band.
func MarkName(loc *locale.Locale, m growth.Mark, l growth.Limits, very bool) string {
	amount := func(v float64) locale.Var { return locale.With("Amount", loc.Decimal(plain(v))) }
	switch {
	case m == growth.LowGain:
		return loc.Label("mark-low-gain", amount(l.LeastGain))
	case m == growth.MoreLoss && very:
		return loc.Label("mark-loss", amount(l.VerySmallLoss))
	case m == growth.MoreLoss:
		return loc.Label("mark-loss", amount(l.SmallLoss))
	}
	return loc.Label("mark-not-back")
}

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// Signed writes a number with its sign before it, in every direction of writing.
func Signed(loc *locale.Locale, v float64, decimals int) string {
	s := fmt.Sprintf("%+.*f", decimals, v)
	if zero := fmt.Sprintf("%.*f", decimals, 0.0); s[1:] == zero {
		return loc.Decimal(zero)
	}
	return "\u2066" + strings.NewReplacer("-", "−").Replace(loc.Decimal(s)) + "\u2069"
}

// GrowthNotes say how each figure of a course is worked out, and by which source.
func GrowthNotes(loc *locale.Locale, p *pack.Pack) []lesson.Block {
	l := GrowthLimits(p)
	written := func(name, id string) locale.Var { return locale.With(name, Written(loc, p, id)) }
	source := func(id string) string {
		if n := p.Numbers[id]; n != nil {
			return n.Source.Name
		}
		return ""
	}
	out := []lesson.Block{growthSource(loc), Text(loc.Label("growth-z")),
		Text(loc.Label("growth-gain", locale.With("Days", loc.Number(max(l.GainDays, 1)))))}
	if l.LeastGain > 0 {
		out = append(out, Cite(loc, p, loc.Label("growth-least", written("Amount", "least-gain"), written("Days", "least-gain-days")), source("least-gain")),
			Text(loc.Label("growth-until", written("Weeks", "least-gain-until"))))
	}
	if l.SmallLoss > 0 && l.SmallHigh > 0 {
		out = append(out, Cite(loc, p, loc.Label("growth-loss-small", written("Amount", "small-loss"), written("Band", "small-band"), written("Days", "small-loss-days")), source("small-loss")))
	}
	if l.VerySmallLoss > 0 && l.SmallLow > 0 {
		out = append(out, Cite(loc, p, loc.Label("growth-loss-very-small", written("Amount", "very-small-loss"), written("Band", "very-small-band"), written("Days", "very-small-loss-days")), source("very-small-loss")))
	}
	if l.RegainDays > 0 {
		out = append(out, Cite(loc, p, loc.Label("growth-regain", written("Days", "regain-age")), source("regain-age")))
	}
	return out
}
