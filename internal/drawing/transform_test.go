package drawing

import (
	"math"
	"testing"
)

// Cases from the text and the grammar of SVG 1.1, sections 7.4 to 7.6: where (2, 1) goes.
func TestTransform(t *testing.T) {
	tests := []struct {
		value string
		want  Point
	}{
		{"", Point{2, 1}},
		{"translate(10)", Point{12, 1}},
		{"translate(10 20)", Point{12, 21}},
		{"scale(3)", Point{6, 3}},
		{"scale(3,-1)", Point{6, -1}},
		{"rotate(90)", Point{-1, 2}},
		{"rotate(90 2 0)", Point{1, 0}},
		{"skewX(45)", Point{3, 1}},
		{"skewY(45)", Point{2, 3}},
		{"matrix(1 2 3 4 5 6)", Point{10, 14}},
		{"matrix(1-2,3-4 5-6)", Point{10, -14}},
		{"translate(10) scale(2)", Point{14, 2}},
		{"scale(2)translate(10)", Point{24, 2}},
		{" scale ( 2 ) ,\n translate ( 1e1 , .5 ) ", Point{24, 3}},
	}
	for _, tt := range tests {
		m, f := parseTransform(tt.value)
		if f != nil {
			t.Errorf("%q: at %d: %s", tt.value, f.start, f.what)
			continue
		}
		if got := m.apply(Point{2, 1}); math.Hypot(got.X-tt.want.X, got.Y-tt.want.Y) > 1e-9 {
			t.Errorf("%q: %v, want %v", tt.value, got, tt.want)
		}
	}
	faults := []struct {
		value string
		at    int
	}{
		{"translate", 0}, {"move(1)", 0}, {"Scale(2)", 0}, {"scale()", 6}, {"scale(1 2 3)", 0}, {"rotate(1 2)", 0},
		{"matrix(1 2 3 4 5)", 0}, {"scale(2", 7}, {"scale(2,)", 7}, {"scale(2),", 9}, {"scale(2),,scale(2)", 9},
		{"rotate(30deg)", 9}, {"scale(200%)", 9}, {"scale(1e6)", 6}, {"scale(2) x", 9}, {",scale(2)", 0},
	}
	for _, tt := range faults {
		if _, f := parseTransform(tt.value); f == nil || f.start != tt.at {
			t.Errorf("%q: fault %+v, want one at %d", tt.value, f, tt.at)
		}
	}
}
