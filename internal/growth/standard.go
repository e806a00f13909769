// Package growth holds the INTERGROWTH-21st preterm postnatal standards and the
// arithmetic of a small baby's growth: age, gain, loss.
//
// The equations are those of Villar J et al., Postnatal growth standards for preterm
// infants: the Preterm Postnatal Follow-up Study of the INTERGROWTH-21st Project,
// Lancet Glob Health 2015;3:e681-e691. They hold from 27 to 64 weeks of postmenstrual
// age and are never used outside it. The package draws nothing and reads no file.
package growth

import "math"

// Citation names the publication of the standards.
const Citation = "Villar J et al. Lancet Global Health 2015;3:e681-e691 (INTERGROWTH-21st)"

// Sex is that of the baby, as the equations need it.
type Sex int

// Sexes.
const (
	Girl Sex = iota
	Boy
)

// Sexes lists both.
var Sexes = []Sex{Girl, Boy}

// Measure is what was measured.
type Measure int

// Measures and their units.
const (
	Weight Measure = iota // kg
	Length                // cm
	Head                  // cm, circumference
)

// Measures lists all.
var Measures = []Measure{Weight, Length, Head}

// The range of the standards in days of postmenstrual age: 27 weeks 0 days to 64 weeks 0 days.
const (
	FirstDay = 27 * 7
	LastDay  = 64 * 7
)

// Holds reports whether the standards hold at an age in days; they are not extrapolated.
func Holds(days int) bool { return days >= FirstDay && days <= LastDay }

// moments returns mean and standard deviation at x weeks: of the natural logarithm of
// weight or length, or of head circumference itself.
func moments(m Measure, s Sex, x float64) (mean, sd float64) {
	boy := float64(s)
	switch m {
	case Weight:
		return 2.591277 - 0.01155*math.Sqrt(x) - 2201.705/(x*x) + 0.0911639*boy,
			0.1470258 + 505.92394/(x*x) - 140.0576*math.Log(x)/(x*x)
	case Length:
		return 4.136244 - 547.0018/(x*x) + 0.0026066*x + 0.0314961*boy,
			0.050489 + 310.44761/(x*x) - 90.0742*math.Log(x)/(x*x)
	}
	return 55.53617 - 852.0059/x + 0.7957903*boy,
		3.0582292 + 3910.05/(x*x) - 180.5625/x
}

// Moments returns mean and standard deviation at an age in days, and whether the
// standards hold there. Those of weight and length are of the natural logarithm.
func Moments(m Measure, s Sex, days int) (mean, sd float64, ok bool) {
	if !Holds(days) {
		return 0, 0, false
	}
	mean, sd = moments(m, s, float64(days)/7)
	return mean, sd, true
}

// Value returns the measure (kg or cm) that lies z standard deviations from the mean at
// an age in days, and whether the standards hold there.
func Value(m Measure, s Sex, days int, z float64) (float64, bool) {
	mean, sd, ok := Moments(m, s, days)
	if v := mean + z*sd; m == Head {
		return v, ok
	} else if ok {
		return math.Exp(v), true
	}
	return 0, false
}

// Z returns how many standard deviations a measure (kg or cm) lies from the mean at an
// age in days. It is not ok outside the range of the standards or for what is not above 0.
func Z(m Measure, s Sex, days int, value float64) (z float64, ok bool) {
	mean, sd, ok := Moments(m, s, days)
	if !ok || !(value > 0) || math.IsInf(value, 0) {
		return 0, false
	}
	if m != Head {
		value = math.Log(value)
	}
	return (value - mean) / sd, true
}

// A Centile is a curve of the charts.
type Centile struct {
	Percent int
	Z       float64 // of the normal distribution, to five places
}

// Centiles are those that the charts show, lowest first.
var Centiles = []Centile{{3, -1.88079}, {10, -1.28155}, {50, 0}, {90, 1.28155}, {97, 1.88079}}

// Percent returns the centile of a z-score, from 0 to 100.
func Percent(z float64) float64 { return 50 * math.Erfc(-z/math.Sqrt2) }
