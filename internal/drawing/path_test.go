package drawing

import (
	"math"
	"reflect"
	"testing"
)

// Cases written from the grammar and the text of SVG 1.1 (Second Edition), section 8.3.
func TestPathData(t *testing.T) {
	z := Segment{Op: Close}
	tests := []struct {
		section, d string
		want       []Segment
	}{
		{"8.3.9 nothing", "", nil},
		{"8.3.9 white space", " \t\r\n", nil},
		{"8.3.2 moveto", "M1 2L3 4", []Segment{m(1, 2), l(3, 4)}},
		{"8.3.2 first m is absolute", "m1 2L3 4", []Segment{m(1, 2), l(3, 4)}},
		{"8.3.2 further pairs are lines", "M1 2 3 4 5 6", []Segment{m(1, 2), l(3, 4), l(5, 6)}},
		{"8.3.2 further relative pairs", "m1 2 3 4 5 6", []Segment{m(1, 2), l(4, 6), l(9, 12)}},
		{"8.3.2 m after a part", "M1 1h1m2 2h1", []Segment{m(1, 1), l(2, 1), m(4, 3), l(5, 3)}},
		{"8.3.2 moves alone draw nothing", "M1 1M2 2", nil},
		{"8.3.2 a move replaces the one before", "M1 1M2 2h1M9 9", []Segment{m(2, 2), l(3, 2)}},
		{"8.3.3 closepath", "M1 1h2v2z", []Segment{m(1, 1), l(3, 1), l(3, 3), z}},
		{"8.3.3 a new part starts where the last did", "M1 1h2v2Zh5", []Segment{m(1, 1), l(3, 1), l(3, 3), z, m(1, 1), l(6, 1)}},
		{"8.3.3 m counts from the start of the closed part", "M1 1h2zm5 5h1", []Segment{m(1, 1), l(3, 1), z, m(6, 6), l(7, 6)}},
		{"8.3.3 a point that is closed", "M5 5z", []Segment{m(5, 5), z}},
		{"8.3.4 lineto", "M1 1L2 3l4 5 6 7", []Segment{m(1, 1), l(2, 3), l(6, 8), l(12, 15)}},
		{"8.3.4 horizontal", "M1 2H5 7h-1 2", []Segment{m(1, 2), l(5, 2), l(7, 2), l(6, 2), l(8, 2)}},
		{"8.3.4 vertical", "M1 2V5 7v-1 2", []Segment{m(1, 2), l(1, 5), l(1, 7), l(1, 6), l(1, 8)}},
		{"8.3.6 curveto", "M0 0C1 2 3 4 5 6", []Segment{m(0, 0), c(1, 2, 3, 4, 5, 6)}},
		{"8.3.6 relative, repeated", "M1 1c1 2 3 4 5 6 1 2 3 4 5 6", []Segment{m(1, 1), c(2, 3, 4, 5, 6, 7), c(7, 9, 9, 11, 11, 13)}},
		{"8.3.6 smooth mirrors the last control", "M0 0C0 3 3 6 6 6S9 9 9 12", []Segment{m(0, 0), c(0, 3, 3, 6, 6, 6), c(9, 6, 9, 9, 9, 12)}},
		{"8.3.6 smooth after smooth", "M0 0c0 3 3 6 6 6s3 3 3 6 1 1 1 3", []Segment{m(0, 0), c(0, 3, 3, 6, 6, 6), c(9, 6, 9, 9, 9, 12), c(9, 15, 10, 13, 10, 15)}},
		{"8.3.6 smooth after no curve", "M1 2S3 4 5 6", []Segment{m(1, 2), c(1, 2, 3, 4, 5, 6)}},
		{"8.3.6 smooth after a quadratic", "M0 0Q3 3 6 0S9 9 12 0", []Segment{m(0, 0), c(2, 2, 4, 2, 6, 0), c(6, 0, 9, 9, 12, 0)}},
		{"8.3.6 smooth after a closepath", "M1 1C0 3 3 6 6 6zS9 9 9 12", []Segment{m(1, 1), c(0, 3, 3, 6, 6, 6), z, m(1, 1), c(1, 1, 9, 9, 9, 12)}},
		{"8.3.7 quadratic", "M0 0Q3 6 6 0", []Segment{m(0, 0), c(2, 4, 4, 4, 6, 0)}},
		{"8.3.7 relative", "M1 1q3 6 6 0", []Segment{m(1, 1), c(3, 5, 5, 5, 7, 1)}},
		{"8.3.7 smooth, twice", "M0 0q3 6 6 0t6 0T18 0", []Segment{m(0, 0), c(2, 4, 4, 4, 6, 0), c(8, -4, 10, -4, 12, 0), c(14, 4, 16, 4, 18, 0)}},
		{"8.3.7 smooth after no quadratic", "M0 0C1 1 2 2 3 3T6 6", []Segment{m(0, 0), c(1, 1, 2, 2, 3, 3), c(3, 3, 4, 4, 6, 6)}},
		{"8.3.8 arc of a quarter", "M10 0A10 10 0 0 1 0 10", []Segment{m(10, 0), c(10, 5.523, 5.523, 10, 0, 10)}},
		{"8.3.8 flags need no separator", "M10 0a10 10 0 01-10 10", []Segment{m(10, 0), c(10, 5.523, 5.523, 10, 0, 10)}},
		{"8.3.8 flags and number run together", "M0 10A10 10 0 0110 0", []Segment{m(0, 10), c(0, 4.477, 4.477, 0, 10, 0)}},
		{"F.6.2 arc to the same point", "M1 1A5 5 0 1 1 1 1h1", []Segment{m(1, 1), l(2, 1)}},
		{"F.6.2 arc without radius", "M1 1A0 5 0 1 1 9 9", []Segment{m(1, 1), l(9, 9)}},
		{"F.6.6 radii too small, repeated", "M0 0a1 1 0 0120 0 1 1 0 01-20 0", []Segment{m(0, 0),
			c(0, -5.523, 4.477, -10, 10, -10), c(15.523, -10, 20, -5.523, 20, 0),
			c(20, 5.523, 15.523, 10, 10, 10), c(4.477, 10, 0, 5.523, 0, 0)}},
		{"8.3.9 point ends a number with a point", "M.5.5L1.5.5", []Segment{m(.5, .5), l(1.5, .5)}},
		{"8.3.9 sign ends a number", "M1-2L+3-4", []Segment{m(1, -2), l(3, -4)}},
		{"8.3.9 digits may end in a point", "M1. 2.L3.,4.", []Segment{m(1, 2), l(3, 4)}},
		{"8.3.9 exponents", "M1e1-2E-1L.5e+1,1E0", []Segment{m(10, -.2), l(5, 1)}},
		{"8.3.9 comma among white space", "M1 , 2\n,3\t4 , 5,6", []Segment{m(1, 2), l(3, 4), l(5, 6)}},
		{"8.3.9 white space around commands", " M 1 2 \n L 3 4 z ", []Segment{m(1, 2), l(3, 4), z}},
	}
	for _, tt := range tests {
		got, f := parsePath(tt.d)
		if f != nil {
			t.Errorf("%s %q: fault at %d: %s", tt.section, tt.d, f.start, f.what)
			continue
		}
		for i := range got {
			for j, p := range got[i].P {
				got[i].P[j] = Point{math.Round(p.X*1000) / 1000, math.Round(p.Y*1000) / 1000}
			}
		}
		if !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%s %q:\ngot  %v\nwant %v", tt.section, tt.d, got, tt.want)
		}
	}
}

// What the grammar of SVG 1.1, section 8.3.9, does not allow, with the byte where it goes wrong.
func TestPathDataErrors(t *testing.T) {
	tests := []struct {
		d    string
		at   int
		what string
	}{
		{"L1 2", 0, "the path starts with L"},
		{"z", 0, "the path starts with z"},
		{"1 2", 0, "a path command is expected here, not '1'"},
		{"M", 1, "a number is expected here, not the end"},
		{"M1", 2, "a number is expected here, not the end"},
		{"M1 L2 3", 3, "a number is expected here, not 'L'"},
		{"M1.L2.,3.", 3, "a number is expected here, not 'L'"},
		{"M,1 2", 1, "a number is expected here, not ','"},
		{"M1,,2", 3, "a number is expected here, not ','"},
		{"M1 2,", 4, "a path command is expected here, not ','"},
		{"M1 2,L3 4", 4, "a path command is expected here, not ','"},
		{"M1 2z3", 5, "a path command is expected here, not '3'"},
		{"M1 2 3", 6, "a number is expected here, not the end"},
		{"M1 2X", 4, "a path command is expected here, not 'X'"},
		{"M1 2é", 4, "a path command is expected here, not 'é'"},
		{"M1 .", 3, "a number is expected here, not '.'"},
		{"M1 --2", 3, "a number is expected here, not '-'"},
		{"M1e 2", 2, "a number is expected here, not 'e'"},
		{"MNaN 2", 1, "a number is expected here, not 'N'"},
		{"M1 Infinity", 3, "a number is expected here, not 'I'"},
		{"M0x10 2", 2, "a number is expected here, not 'x'"},
		{"M1px 2", 2, "a number is expected here, not 'p'"},
		{"M1 1e6", 3, "this number is too large"},
		{"M1 1e999", 3, "this number is too large"},
		{"M1 -100000.01", 3, "this number is too large"},
		{"M0 0C1 2 3 4 5", 14, "a number is expected here, not the end"},
		{"M0 0A5 5 0 2 0 9 9", 11, "a flag of an arc is expected here, not '2'"},
		{"M0 0A5 5 0 0.0 9 9", 12, "a flag of an arc is expected here, not '.'"},
		{"M0 0A-5 5 0 0 0 9 9", 5, "the radius of an arc is negative"},
		{"M0 0A5 5 0 0", 12, "a flag of an arc is expected here, not the end"},
	}
	for _, tt := range tests {
		_, f := parsePath(tt.d)
		if f == nil {
			t.Errorf("%q: no fault", tt.d)
		} else if f.start != tt.at || f.what != tt.what {
			t.Errorf("%q: at %d: %s; want at %d: %s", tt.d, f.start, f.what, tt.at, tt.what)
		}
	}
}
