package growth

import "time"

// Limits are what a course of weights is held against. They come from the pack's
// numbers; where one is 0, nothing is marked by it.
type Limits struct {
	LeastGain float64 // g/kg/day
	GainDays  int     // over so many days or more
	GainUntil int     // postmenstrual days up to which it is marked

	// Birth weight bands in kg: very small is under SmallLow, small up to SmallHigh.
	SmallLow, SmallHigh              float64
	SmallLoss, VerySmallLoss         float64 // percent
	SmallLossDays, VerySmallLossDays int     // days after birth by which the early loss is over
	RegainDays                       int     // days by which birth weight is back
}

// A Mark is what a course of weights is marked with.
type Mark int

// Marks.
const (
	LowGain  Mark = iota // gain under the least, over GainDays or more, after the early loss
	MoreLoss             // more weight lost than is expected early
	NotBack              // birth weight not back by RegainDays
)

// A Point is one row of a course, worked out.
type Point struct {
	Row
	Z     [3]float64 // by Measure, where Values is not 0
	Gain  float64    // g/kg/day since Since by the average two-point method, when Since is set
	Since time.Time  // the weight that the gain is counted from
	Loss  float64    // percent of the birth weight, when it is known
	Marks []Mark
}

// Course works out rows sorted by date. birthWeight is in kg, 0 when it is not known;
// a weight on the day of birth is used then.
//
// A gain is counted from the last weight that is at least GainDays older. It is marked
// only when that weight is the lowest of the early days or later, since before it the
// early loss is not over, and only up to GainUntil: gains a kg fall as babies grow.
func Course(b Baby, birthWeight float64, rows []Row, l Limits) []Point {
	if birthWeight == 0 && len(rows) > 0 && rows[0].Date.Equal(b.Birth) {
		birthWeight = rows[0].Values[Weight]
	}
	most, early := 0.0, l.VerySmallLossDays
	switch {
	case birthWeight == 0 || birthWeight > l.SmallHigh:
	case birthWeight < l.SmallLow:
		most = l.VerySmallLoss
	default:
		most, early = l.SmallLoss, l.SmallLossDays
	}
	lowest := lowestEarly(b, rows, early)
	var out []Point
	for i, r := range rows {
		p := Point{Row: r}
		for _, m := range Measures {
			if r.Values[m] > 0 {
				p.Z[m], _ = Z(m, b.Sex, r.Age, r.Values[m])
			}
		}
		now := r.Values[Weight]
		if now > 0 {
			for k := i - 1; k >= 0; k-- {
				before := rows[k].Values[Weight]
				days := Days(rows[k].Date, r.Date)
				if before == 0 || days < max(l.GainDays, 1) {
					continue
				}
				p.Gain, _ = Velocity(before*1000, now*1000, days)
				p.Since = rows[k].Date
				if k >= lowest && p.Gain < l.LeastGain && r.Age <= l.GainUntil {
					p.Marks = append(p.Marks, LowGain)
				}
				break
			}
			if birthWeight > 0 {
				p.Loss = Loss(birthWeight, now)
				if most > 0 && p.Loss > most {
					p.Marks = append(p.Marks, MoreLoss)
				}
				if l.RegainDays > 0 && Days(b.Birth, r.Date) >= l.RegainDays && now < birthWeight {
					p.Marks = append(p.Marks, NotBack)
				}
			}
		}
		out = append(out, p)
	}
	return out
}

// lowestEarly is the row of the lowest weight in the days of the early loss, or the
// first row after them.
func lowestEarly(b Baby, rows []Row, days int) int {
	best := -1
	for i, r := range rows {
		if w := r.Values[Weight]; w > 0 && Days(b.Birth, r.Date) <= days && (best < 0 || w < rows[best].Values[Weight]) {
			best = i
		}
	}
	return max(best, 0)
}
