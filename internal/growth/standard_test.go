package growth

import (
	"math"
	"testing"
)

// The appendix of the standards (Villar J et al., Lancet Glob Health 2015;3:e681-e691)
// gives these values at 34 weeks.
func TestAppendixAt34Weeks(t *testing.T) {
	for _, tt := range []struct {
		m    Measure
		s    Sex
		z    float64
		want float64
	}{
		{Weight, Boy, 0, 2.04}, {Weight, Girl, 0, 1.86}, {Weight, Boy, -1.88, 1.51}, {Weight, Girl, -1.88, 1.38},
		{Head, Boy, 0, 31.27}, {Head, Girl, 0, 30.48},
	} {
		got, ok := Value(tt.m, tt.s, 34*7, tt.z)
		if !ok || math.Round(got*100)/100 != tt.want {
			t.Errorf("measure %d, sex %d, z %v: %.4f, the appendix has %v", tt.m, tt.s, tt.z, got, tt.want)
		}
	}
}

// The same equations, worked out apart from this program, give these centiles: weight
// in kg (p3, p50, p97) and the middle head circumference in cm, boys and then girls.
func TestCentilesByWeek(t *testing.T) {
	for _, row := range []struct {
		week             int
		b3, b50, b97, bh float64
		g3, g50, g97, gh float64
	}{
		{28, 0.57, 0.829, 1.20, 25.9, 0.52, 0.757, 1.10, 25.1},
		{30, 0.85, 1.189, 1.67, 27.9, 0.77, 1.085, 1.52, 27.1},
		{32, 1.17, 1.595, 2.18, 29.7, 1.06, 1.456, 1.99, 28.9},
		{33, 1.34, 1.812, 2.46, 30.5, 1.22, 1.654, 2.24, 29.7},
		{34, 1.51, 2.035, 2.74, 31.3, 1.38, 1.858, 2.50, 30.5},
		{35, 1.70, 2.263, 3.02, 32.0, 1.55, 2.066, 2.76, 31.2},
		{36, 1.88, 2.495, 3.31, 32.7, 1.72, 2.278, 3.02, 31.9},
		{37, 2.07, 2.729, 3.60, 33.3, 1.89, 2.491, 3.29, 32.5},
		{38, 2.26, 2.964, 3.89, 33.9, 2.06, 2.706, 3.55, 33.1},
		{40, 2.64, 3.433, 4.47, 35.0, 2.41, 3.134, 4.08, 34.2},
		{42, 3.01, 3.894, 5.04, 36.0, 2.75, 3.555, 4.60, 35.3},
		{44, 3.37, 4.343, 5.59, 37.0, 3.08, 3.965, 5.11, 36.2},
		{50, 4.37, 5.585, 7.14, 39.3, 3.99, 5.098, 6.51, 38.5},
		{64, 6.12, 7.787, 9.91, 43.0, 5.58, 7.109, 9.05, 42.2},
	} {
		for _, c := range []struct {
			m      Measure
			s      Sex
			z      float64
			want   float64
			within float64
		}{
			{Weight, Boy, Centiles[0].Z, row.b3, 0.005}, {Weight, Boy, 0, row.b50, 0.0005}, {Weight, Boy, Centiles[4].Z, row.b97, 0.005},
			{Weight, Girl, Centiles[0].Z, row.g3, 0.005}, {Weight, Girl, 0, row.g50, 0.0005}, {Weight, Girl, Centiles[4].Z, row.g97, 0.005},
			{Head, Boy, 0, row.bh, 0.05}, {Head, Girl, 0, row.gh, 0.05},
		} {
			got, ok := Value(c.m, c.s, row.week*7, c.z)
			if !ok || math.Abs(got-c.want) > c.within+1e-9 {
				t.Errorf("week %d, measure %d, sex %d, z %.2f: %.4f, want %v", row.week, c.m, c.s, c.z, got, c.want)
			}
		}
	}
}

// Centiles stay in their order, and rise with age, at every tenth of a day.
func TestCentilesNeverCross(t *testing.T) {
	for _, m := range Measures {
		for _, s := range Sexes {
			before := map[int]float64{}
			for step := FirstDay * 10; step <= LastDay*10; step++ {
				mean, sd := moments(m, s, float64(step)/70)
				last := 0.0
				for _, c := range Centiles {
					v := mean + c.Z*sd
					if v <= last && last != 0 || v < before[c.Percent] && before[c.Percent] != 0 {
						t.Fatalf("measure %d, sex %d, %.1f days: centile %d is %.4f", m, s, float64(step)/10, c.Percent, v)
					}
					last, before[c.Percent] = v, v
				}
			}
		}
	}
}

func TestZOfValue(t *testing.T) {
	for _, m := range Measures {
		for _, s := range Sexes {
			for d := FirstDay; d <= LastDay; d++ {
				for z := -4.0; z <= 4; z += 0.5 {
					v, _ := Value(m, s, d, z)
					if got, ok := Z(m, s, d, v); !ok || math.Abs(got-z) > 1e-9 {
						t.Fatalf("measure %d, sex %d, day %d: z %v comes back as %v", m, s, d, z, got)
					}
				}
			}
		}
	}
}

func TestNothingOutsideTheRange(t *testing.T) {
	for _, d := range []int{-1, 0, 27*7 - 1, 64*7 + 1, 10000} {
		if v, ok := Value(Weight, Boy, d, 0); ok || v != 0 {
			t.Errorf("day %d has the value %v", d, v)
		}
		if _, ok := Z(Weight, Boy, d, 2); ok {
			t.Errorf("day %d has a z-score", d)
		}
	}
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if z, ok := Z(Weight, Boy, 34*7, v); ok {
			t.Errorf("%v kg has the z-score %v", v, z)
		}
	}
	for _, d := range []int{27 * 7, 64 * 7} {
		if !Holds(d) {
			t.Errorf("day %d is left out", d)
		}
	}
}

// The normal distribution: Abramowitz and Stegun, Handbook of Mathematical Functions,
// table 26.1, and its usual quantiles.
func TestPercent(t *testing.T) {
	for z, want := range map[float64]float64{0: 50, 1: 84.13447, -1: 15.86553, 2: 97.72499, -1.88079: 3, 1.28155: 90} {
		if got := Percent(z); math.Abs(got-want) > 0.0005 {
			t.Errorf("z %v is centile %.5f, want %v", z, got, want)
		}
	}
}
