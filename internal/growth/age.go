package growth

import (
	"math"
	"time"
)

// PostmenstrualDays is gestation at birth and the days since, added: weeks and days of
// gestation and both dates without a time of day.
func PostmenstrualDays(weeks, days int, birth, on time.Time) int {
	return weeks*7 + days + Days(birth, on)
}

// Days counts the days from one date to another.
func Days(from, to time.Time) int { return int(math.Round(to.Sub(from).Hours() / 24)) }

// Velocity is the gain in g a kg a day by the average two-point method: the daily gain
// over the mean of both weights. Weights are in g. It is not ok without days between.
func Velocity(first, last float64, days int) (gkgd float64, ok bool) {
	if days <= 0 || first <= 0 || last <= 0 {
		return 0, false
	}
	return 1000 * (last - first) / float64(days) / ((first + last) / 2), true
}

// Loss is the part of the birth weight that is lost, in percent; negative when gained.
func Loss(birth, now float64) float64 { return (birth - now) / birth * 100 }
