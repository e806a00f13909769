package growth

import (
	"math"
	"slices"
	"testing"
	"time"
)

func day(t *testing.T, s string) time.Time {
	t.Helper()
	d, err := time.Parse(time.DateOnly, s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Worked by hand with a calendar.
func TestPostmenstrualDays(t *testing.T) {
	for _, tt := range []struct {
		weeks, days         int
		birth, on           string
		wantWeeks, wantRest int
	}{
		{31, 4, "2026-09-01", "2026-09-01", 31, 4},
		{31, 4, "2026-09-01", "2026-09-04", 32, 0},
		{28, 6, "2026-11-25", "2026-12-25", 33, 1},
		{30, 0, "2024-02-27", "2024-03-01", 30, 3}, // over a leap day
		{34, 2, "2026-12-30", "2027-01-06", 35, 2}, // over a new year
		{25, 0, "2026-03-20", "2026-04-03", 27, 0}, // over a change of the clocks
	} {
		got := PostmenstrualDays(tt.weeks, tt.days, day(t, tt.birth), day(t, tt.on))
		if got != tt.wantWeeks*7+tt.wantRest {
			t.Errorf("%d+%d, born %s, on %s: %d+%d, want %d+%d", tt.weeks, tt.days, tt.birth, tt.on, got/7, got%7, tt.wantWeeks, tt.wantRest)
		}
	}
}

// 1500 g to 1605 g in 5 days is 21 g a day, and 13.5 g/kg/day by the average two-point
// method (the method as Fenton TR et al. name it; the example worked by hand).
func TestVelocity(t *testing.T) {
	got, ok := Velocity(1500, 1605, 5)
	if !ok || math.Abs(got-13.5) > 0.05 {
		t.Errorf("%.3f", got)
	}
	for _, days := range []int{0, -3} {
		if _, ok := Velocity(1500, 1605, days); ok {
			t.Errorf("a gain over %d days", days)
		}
	}
}

// 1800 g to 1656 g is 8 percent.
func TestLoss(t *testing.T) {
	if got := Loss(1800, 1656); math.Abs(got-8) > 1e-9 {
		t.Error(got)
	}
}

// The limits as published: WHO, Managing newborn problems, 2003, pages C-53, F-26 and F-30.
var published = Limits{
	LeastGain: 15, GainDays: 3, GainUntil: 36*7 + 6, SmallLow: 1.5, SmallHigh: 2.5,
	SmallLoss: 10, VerySmallLoss: 15, SmallLossDays: 5, VerySmallLossDays: 10, RegainDays: 14,
}

func TestCourseMarks(t *testing.T) {
	type weights map[int]float64 // day after birth, kg
	for _, tt := range []struct {
		name  string
		weeks int
		w     weights
		want  map[int][]Mark
	}{
		{"good gain", 31, weights{0: 1.6, 3: 1.5, 6: 1.58, 10: 1.7}, nil},
		{"loss within ten percent", 31, weights{0: 1.8, 4: 1.62}, nil},
		{"loss over ten percent", 31, weights{0: 1.8, 4: 1.60}, map[int][]Mark{4: {MoreLoss}}},
		{"over ten, under fifteen, very small", 31, weights{0: 1.4, 4: 1.22}, nil},
		{"loss over fifteen, very small", 31, weights{0: 1.4, 4: 1.18}, map[int][]Mark{4: {MoreLoss}}},
		{"1.5 kg is in the larger group", 31, weights{0: 1.5, 4: 1.34}, map[int][]Mark{4: {MoreLoss}}},
		{"low gain after the loss", 31, weights{0: 1.6, 4: 1.5, 9: 1.605}, map[int][]Mark{9: {LowGain}}},
		{"a gain over two days is not judged", 31, weights{4: 1.5, 6: 1.51}, nil},
		{"the early loss itself is no low gain", 31, weights{0: 1.6, 4: 1.5}, nil},
		{"still falling after the first days", 31, weights{0: 1.6, 5: 1.5, 8: 1.47}, map[int][]Mark{8: {LowGain}}},
		{"not back at fourteen days", 31, weights{0: 1.6, 3: 1.5, 14: 1.59}, map[int][]Mark{14: {LowGain, NotBack}}},
		{"low gain is not marked after 36 weeks", 36, weights{0: 2.4, 4: 2.3, 7: 2.31, 12: 2.45}, nil},
		{"no band above 2.5 kg", 36, weights{0: 3.0, 4: 2.6}, nil},
	} {
		b := Baby{Birth: day(t, "2026-09-01"), Weeks: tt.weeks, Sex: Girl}
		var rows []Row
		for d := range 30 {
			if w := tt.w[d]; w > 0 {
				date := b.Birth.AddDate(0, 0, d)
				rows = append(rows, Row{Date: date, Age: PostmenstrualDays(b.Weeks, b.Days, b.Birth, date), Values: [3]float64{Weight: w}})
			}
		}
		for _, p := range Course(b, 0, rows, published) {
			d := Days(b.Birth, p.Date)
			if !slices.Equal(p.Marks, tt.want[d]) {
				t.Errorf("%s: day %d is marked %v, want %v (gain %.1f, loss %.1f)", tt.name, d, p.Marks, tt.want[d], p.Gain, p.Loss)
			}
		}
	}
}
