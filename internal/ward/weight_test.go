package ward

import (
	"fmt"
	"math"
	"testing"
	"time"
)

// who2003 is pages C-53, F-26 and F-30 of WHO, Managing newborn problems (2003).
var who2003 = Guide{
	Groups: []Group{
		{From: 0, To: 1499, LossPercent: 15, LossDays: 10, GainLow: 20, GainHigh: 30},
		{From: 1500, To: 2500, LossPercent: 10, LossDays: 5, GainLow: 30, GainHigh: 35},
	},
	RegainDay: 14, LeastGain: 15, OverDays: 3,
}

func TestWorkedWeights(t *testing.T) {
	if got := LossTenths(1800, 1656); got != 80 { // (1800-1656)/1800 = 8.0 %
		t.Errorf("loss: got %d tenths", got)
	}
	// 1500 g to 1605 g in 5 days: 21.0 g a day; 13.5 g a kg and day by the two-point
	// average (105/5/1.5525), as by the exponential method; 14.0 from the first weight.
	if got := GainTenths(1500, 1605, 5); got != 210 {
		t.Errorf("gain: got %d tenths", got)
	}
	if got := VelocityTenths(1500, 1605, 5); got != 135 {
		t.Errorf("velocity: got %d tenths", got)
	}
	if e := 1000 * math.Log(1605.0/1500) / 5; math.Abs(e-13.5) > 0.05 {
		t.Errorf("the exponential method gives %.2f", e)
	}
	for _, c := range []struct{ birth, percent, limit int }{{1600, 10, 1440}, {1500, 10, 1350}, {1400, 15, 1190}, {1499, 15, 1275}, {1235, 15, 1050}} {
		if got := LossLimit(c.birth, c.percent); got != c.limit {
			t.Errorf("limit of %d g: got %d, want %d", c.birth, got, c.limit)
		}
	}
}

// A weight at the limit is within it, and a gram less is past it, for every birth weight.
func TestLimitAgreesWithLoss(t *testing.T) {
	for birth := LeastWeight; birth <= 2500; birth++ {
		p := who2003.Group(birth).LossPercent
		at := LossLimit(birth, p)
		if LossTenths(birth, at) > 10*p || LossTenths(birth, at-1) <= 10*p {
			t.Fatalf("%d g: limit %d g is a loss of %d tenths, a gram less %d", birth, at, LossTenths(birth, at), LossTenths(birth, at-1))
		}
	}
}

// The average method lies between the gain over the first and over the last weight,
// and near the exponential one while the weights are near each other.
func TestVelocityLaws(t *testing.T) {
	for first := 800; first < 2600; first += 37 {
		for last := first * 8 / 10; last < first*12/10; last += 11 {
			for _, n := range []int{1, 3, 7} {
				got := float64(VelocityTenths(first, last, n)) / 10
				exact := 1000 * math.Log(float64(last)/float64(first)) / float64(n)
				if math.Abs(got-exact) > 0.1+0.01*math.Abs(exact) {
					t.Fatalf("%d to %d g in %d days: %v, exponential %v", first, last, n, got, exact)
				}
			}
		}
	}
}

func TestExpect(t *testing.T) {
	got := fmt.Sprint(who2003.Expect(1600, 28))
	// 1440 g is 10 % less; from day 14, 30 to 35 g a day: 7 days 210 to 245, 14 days 420 to 490.
	if want := "[{5 1440 0} {14 1600 0} {21 1810 1845} {28 2020 2090}]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	got = fmt.Sprint(who2003.Expect(1400, 21)) // 15 % less; 20 to 30 g a day
	if want := "[{10 1190 0} {14 1400 0} {21 1540 1610}]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if who2003.Expect(2501, 28) != nil {
		t.Error("a baby of more than 2.5 kg has no published band here")
	}
	for grams, loss := range map[int]int{1499: 15, 1500: 10, 2500: 10} {
		if g := who2003.Group(grams); g == nil || g.LossPercent != loss {
			t.Errorf("%d g: got %+v", grams, g)
		}
	}
}

func TestFlags(t *testing.T) {
	for _, c := range []struct {
		name string
		days []int // after birth
		g    []int
		want string // flags of the last weighing
	}{
		{"at the limit", []int{0, 3}, []int{1600, 1440}, "[]"},
		{"past the limit", []int{0, 3}, []int{1600, 1439}, "[0]"},
		{"past 10 % but very small", []int{0, 3}, []int{1400, 1200}, "[]"},
		{"past 15 %", []int{0, 3}, []int{1400, 1189}, "[0]"},
		{"falls on day 5", []int{0, 3, 4}, []int{1600, 1500, 1490}, "[]"},
		{"falls on day 6", []int{0, 3, 5}, []int{1600, 1500, 1490}, "[1]"},
		{"not regained on day 14", []int{0, 4, 10, 13}, []int{1600, 1500, 1590, 1599}, "[3]"},
		{"not regained on day 15", []int{0, 4, 11, 14}, []int{1600, 1450, 1510, 1599}, "[2]"},
		{"regained on day 15", []int{0, 4, 11, 14}, []int{1600, 1450, 1510, 1600}, "[]"},
		{"13.5 g a kg and day", []int{0, 20, 25}, []int{1400, 1500, 1605}, "[3]"},
		{"two days after the lowest", []int{0, 3, 5}, []int{1600, 1500, 1505}, "[]"},
		{"15 g a kg and day and more", []int{0, 20, 23}, []int{1400, 1500, 1570}, "[]"},
		{"over 2.5 kg", []int{0, 20}, []int{3000, 2900}, "[2]"},
	} {
		var ws []Weighing
		for i, d := range c.days {
			ws = append(ws, Weighing{time.Date(2026, 11, 1+d, 0, 0, 0, 0, time.UTC), c.g[i]})
		}
		rs := who2003.Read(ws)
		last := rs[len(rs)-1]
		if got := fmt.Sprint(last.Flags); got != c.want || rs[0].Day != 1 || len(rs[0].Flags) > 0 {
			t.Errorf("%s: got %s, want %s (%+v)", c.name, got, c.want, last)
		}
	}
}
