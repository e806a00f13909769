package ward

import "time"

// A Group is babies of one range of birth weights, and what a guide expects of them.
type Group struct {
	From, To          int // birth weight in g, both included
	LossPercent       int // early loss that can be expected, at most
	LossDays          int // days of life in which it can happen, at most
	GainLow, GainHigh int // g a day, once birth weight is reached again
}

// A Guide is what weights are compared with.
type Guide struct {
	Groups    []Group
	RegainDay int // day of life by which birth weight is usually reached again
	LeastGain int // g for each kg and day, after the early loss
	OverDays  int // days over which that gain is counted, at least
}

// Group returns the group of a birth weight, or nil.
func (g *Guide) Group(birth int) *Group {
	for i := range g.Groups {
		if g.Groups[i].From <= birth && birth <= g.Groups[i].To {
			return &g.Groups[i]
		}
	}
	return nil
}

// LossLimit is the lowest weight at which the loss is not past a limit, in whole g.
func LossLimit(birth, percent int) int { return (birth*(100-percent) + 99) / 100 }

// LossTenths is the loss from the birth weight in tenths of a percent, rounded up, so
// that a loss past a limit never looks as if it were at it. It is negative for a gain.
func LossTenths(birth, now int) int { return -floor(1000*(now-birth), birth) }

// GainTenths is the gain in tenths of a g a day, to the nearest.
func GainTenths(first, last, days int) int { return floor(20*(last-first)+days, 2*days) }

// VelocityTenths is the gain in tenths of a g for each kg and day by the two-point
// average method: the gain of each day over the mean of the two weights. It is
// rounded down, so that a gain below a limit never looks as if it reached it.
func VelocityTenths(first, last, days int) int {
	return floor(20_000*(last-first), days*(first+last))
}

// floor divides by a positive number and rounds down.
func floor(a, b int) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// An Expected is what a weight can be on a day of life.
type Expected struct{ Day, Low, High int } // g; High is 0 when there is no upper end

// Expect says what a guide expects of a birth weight: no loss past the limit in the
// first days, birth weight reached again, then week by week the gain of the group.
// It ends with day last. It is nil when no group holds the birth weight.
func (g *Guide) Expect(birth, last int) []Expected {
	gr := g.Group(birth)
	if gr == nil {
		return nil
	}
	out := []Expected{{Day: gr.LossDays, Low: LossLimit(birth, gr.LossPercent)}, {Day: g.RegainDay, Low: birth}}
	for day := g.RegainDay + 7; day <= last; day += 7 {
		n := day - g.RegainDay
		out = append(out, Expected{day, birth + n*gr.GainLow, birth + n*gr.GainHigh})
	}
	return out
}

// A Weighing is one weight on one date.
type Weighing struct {
	Date  time.Time // midnight UTC
	Grams int
}

// A Flag is something in a record of weights that a health worker has to look at.
type Flag int

// What a record of weights can show.
const (
	LossPast    Flag = iota // the loss from the birth weight is past the limit of the group
	StillLosing             // the weight falls after the days of early loss
	NotRegained             // birth weight is not reached by the day it usually is
	GainLow                 // the gain is below the least over the days it is counted over
)

// A Reading is one weighing, compared with those before it.
type Reading struct {
	Weighing
	Day      int // of life; the first weighing is at birth, on day 1
	Since    int // days since the weighing before; 0 at birth
	Change   int // g since the weighing before
	PerDay   int // tenths of a g a day since the weighing before
	Loss     int // tenths of a percent of the birth weight; negative when above it
	Over     int // days that Velocity is counted over; 0 when there is none
	Velocity int // tenths of a g for each kg and day
	Flags    []Flag
}

// Read compares weighings with a guide. They are in order, one a day at most, and the
// first is the birth weight. Velocity is counted from the latest weighing that is
// OverDays or more before and not before the lowest weight, where the early loss ends.
func (g *Guide) Read(ws []Weighing) []Reading {
	var out []Reading
	if len(ws) == 0 {
		return nil
	}
	birth := ws[0].Grams
	gr := g.Group(birth)
	lowest := 0
	for i, w := range ws {
		r := Reading{Weighing: w, Day: days(ws[0], w) + 1, Loss: LossTenths(birth, w.Grams)}
		if i > 0 {
			r.Since = days(ws[i-1], w)
			r.Change = w.Grams - ws[i-1].Grams
			r.PerDay = GainTenths(ws[i-1].Grams, w.Grams, r.Since)
		}
		if w.Grams <= ws[lowest].Grams {
			lowest = i
		}
		for j := i - 1; j >= lowest; j-- {
			if d := days(ws[j], w); d >= g.OverDays {
				r.Over, r.Velocity = d, VelocityTenths(ws[j].Grams, w.Grams, d)
				break
			}
		}
		if gr != nil && r.Loss > 10*gr.LossPercent {
			r.Flags = append(r.Flags, LossPast)
		}
		if gr != nil && r.Day > gr.LossDays && r.Change < 0 {
			r.Flags = append(r.Flags, StillLosing)
		}
		if r.Day > g.RegainDay && r.Loss > 0 {
			r.Flags = append(r.Flags, NotRegained)
		}
		if r.Over > 0 && r.Velocity < 10*g.LeastGain {
			r.Flags = append(r.Flags, GainLow)
		}
		out = append(out, r)
	}
	return out
}

func days(a, b Weighing) int { return int(b.Date.Sub(a.Date).Hours() / 24) }
