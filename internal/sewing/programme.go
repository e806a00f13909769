package sewing

// maximise solves a linear programme: the x of no negative parts with rows*x <= limits
// and the greatest goal*x, where no limit is negative. It is the simplex method in
// dictionary form with Bland's rule, which cannot cycle. The answer is as good as
// floating point is; whoever relies on it proves it again in whole numbers.
func maximise(goal []float64, rows [][]float64, limits []float64) []float64 {
	const tiny = 1e-9
	n, m := len(goal), len(rows)
	// Variables 0 to n-1 are x, n to n+m-1 the slack of each row.
	outside, inside := make([]int, n), make([]int, m)
	for j := range outside {
		outside[j] = j
	}
	a, b, c := make([][]float64, m), append([]float64(nil), limits...), append([]float64(nil), goal...)
	for i := range rows {
		inside[i], a[i] = n+i, append([]float64(nil), rows[i]...)
	}
	for range 100 * (n + 1) { // far more steps than such small programmes take
		enter := -1
		for j := range c {
			if c[j] > tiny && (enter < 0 || outside[j] < outside[enter]) {
				enter = j
			}
		}
		if enter < 0 {
			break
		}
		leave := -1
		for i := range a {
			if a[i][enter] <= tiny {
				continue
			}
			if leave < 0 {
				leave = i
				continue
			}
			d := b[i]/a[i][enter] - b[leave]/a[leave][enter]
			if d < -tiny || d < tiny && inside[i] < inside[leave] {
				leave = i
			}
		}
		if leave < 0 {
			break // no limit holds this variable
		}
		p := a[leave]
		pivot := p[enter]
		for j := range p {
			p[j] /= pivot
		}
		p[enter] = 1 / pivot
		b[leave] /= pivot
		reduce := func(row []float64, f float64) {
			for j := range row {
				if j == enter {
					row[j] = -f * p[j]
				} else {
					row[j] -= f * p[j]
				}
			}
		}
		for i := range a {
			if f := a[i][enter]; i != leave && f != 0 {
				reduce(a[i], f)
				b[i] = max(0, b[i]-f*b[leave])
			}
		}
		reduce(c, c[enter])
		inside[leave], outside[enter] = outside[enter], inside[leave]
	}
	x := make([]float64, n)
	for i, v := range inside {
		if v < n {
			x[v] = b[i]
		}
	}
	return x
}
