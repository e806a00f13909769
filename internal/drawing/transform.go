package drawing

import (
	"math"
	"slices"
	"strings"
)

// A matrix maps (x, y) to (m[0]x + m[2]y + m[4], m[1]x + m[3]y + m[5]), as in SVG 1.1, section 7.4.
type matrix [6]float64

var identity = matrix{1, 0, 0, 1, 0, 0}

// times returns the matrix that applies n first and m after it.
func (m matrix) times(n matrix) matrix {
	return matrix{
		m[0]*n[0] + m[2]*n[1], m[1]*n[0] + m[3]*n[1],
		m[0]*n[2] + m[2]*n[3], m[1]*n[2] + m[3]*n[3],
		m[0]*n[4] + m[2]*n[5] + m[4], m[1]*n[4] + m[3]*n[5] + m[5],
	}
}

func (m matrix) apply(p Point) Point {
	return Point{m[0]*p.X + m[2]*p.Y + m[4], m[1]*p.X + m[3]*p.Y + m[5]}
}

// scale returns by how much the matrix enlarges lengths on average: the root of how much it enlarges areas.
func (m matrix) scale() float64 { return math.Sqrt(math.Abs(m[0]*m[3] - m[1]*m[2])) }

// upright says whether the matrix only moves and enlarges.
func (m matrix) upright() bool {
	small := 1e-9 * m.scale()
	return m[0] > 0 && math.Abs(m[1]) <= small && math.Abs(m[2]) <= small && math.Abs(m[0]-m[3]) <= small
}

// functions are the transforms of SVG 1.1, section 7.6, with the counts of numbers that each takes.
var functions = map[string]struct {
	counts []int
	matrix func(v []float64) matrix
}{
	"matrix": {[]int{6}, func(v []float64) matrix { return matrix(v) }},
	"translate": {[]int{1, 2}, func(v []float64) matrix {
		return matrix{1, 0, 0, 1, v[0], append(v, 0)[1]}
	}},
	"scale": {[]int{1, 2}, func(v []float64) matrix {
		return matrix{v[0], 0, 0, append(v, v[0])[1], 0, 0}
	}},
	"rotate": {[]int{1, 3}, func(v []float64) matrix {
		sin, cos := math.Sincos(v[0] * math.Pi / 180)
		turn := matrix{cos, sin, -sin, cos, 0, 0}
		if len(v) == 1 {
			return turn
		}
		return matrix{1, 0, 0, 1, v[1], v[2]}.times(turn).times(matrix{1, 0, 0, 1, -v[1], -v[2]})
	}},
	"skewX": {[]int{1}, func(v []float64) matrix { return matrix{1, 0, math.Tan(v[0] * math.Pi / 180), 1, 0, 0} }},
	"skewY": {[]int{1}, func(v []float64) matrix { return matrix{1, math.Tan(v[0] * math.Pi / 180), 0, 1, 0, 0} }},
}

// parseTransform reads a list of transforms; the last one is applied first.
func parseTransform(s string) (matrix, *fault) {
	m := identity
	sc := scanner{s: s}
	for sc.space(); !sc.done(); sc.space() {
		start := sc.i
		n := strings.IndexByte(s[start:], '(')
		if n < 0 {
			sc.fail(start, "a transform such as translate(10, 20) is expected here", "write its name and its numbers in round brackets")
			break
		}
		f, ok := functions[strings.TrimRight(s[start:start+n], " \t\r\n")]
		if !ok {
			sc.fail(start, "the transform is unknown", "use matrix, translate, scale, rotate, skewX or skewY")
			break
		}
		sc.i += n + 1
		sc.space()
		v := []float64{sc.number()}
		for sc.end(); sc.more(); sc.end() {
			sc.commaSpace()
			v = append(v, sc.number())
		}
		sc.space()
		if sc.peek() != ')' {
			sc.fail(sc.i, "a closing bracket is expected here"+sc.notHere(), "close the transform with )")
			break
		}
		if !slices.Contains(f.counts, len(v)) {
			sc.fail(start, "the transform has too few or too many numbers", "translate and scale take 1 or 2, rotate 1 or 3, skewX and skewY 1, matrix 6")
			break
		}
		sc.i++
		m = m.times(f.matrix(v))
		sc.space()
		if sc.peek() == ',' {
			sc.commaSpace()
			if sc.done() {
				sc.fail(sc.i, "a transform is expected after the comma", "remove the comma")
			}
		}
	}
	return m, sc.fault
}
