package redline

import "slices"

// An Op says what becomes of a stretch of the old text.
type Op int

// Ops.
const (
	Same   Op = iota
	Struck    // only in the old text
	Added     // only in the new text
)

// maxEdits bounds the work on texts that have next to nothing in common, which grows
// with the square of their differences. Above it everything between the common start
// and the common end counts as replaced.
const maxEdits = 2000

// script returns a shortest way to turn a into b, an Op for each element: Same takes
// one of both, Struck one of a, Added one of b. It is the greedy algorithm of E. Myers,
// An O(ND) difference algorithm and its variations, Algorithmica 1 (1986).
func script[T comparable](a, b []T) []Op {
	start := 0
	for start < len(a) && start < len(b) && a[start] == b[start] {
		start++
	}
	end := 0
	for end < len(a)-start && end < len(b)-start && a[len(a)-1-end] == b[len(b)-1-end] {
		end++
	}
	out := repeat(Same, start)
	out = append(out, middle(a[start:len(a)-end], b[start:len(b)-end])...)
	return append(out, repeat(Same, end)...)
}

func repeat(op Op, n int) []Op { return slices.Repeat([]Op{op}, n) }

func middle[T comparable](a, b []T) []Op {
	n, m := len(a), len(b)
	replaced := append(repeat(Struck, n), repeat(Added, m)...)
	if n == 0 || m == 0 {
		return replaced
	}
	// far[d] holds, for each diagonal k = x-y from -d to d, the furthest x that d edits reach.
	var far [][]int
	at := func(d, k int) int {
		if d < 0 || k < -d || k > d {
			return -1
		}
		return far[d][k+d]
	}
	down := func(d, k int) bool { return k == -d || k != d && at(d-1, k-1) < at(d-1, k+1) }
	for d := 0; d <= min(n+m, maxEdits); d++ {
		far = append(far, make([]int, 2*d+1))
		for k := -d; k <= d; k += 2 {
			x := 0
			switch {
			case d == 0:
			case down(d, k):
				x = at(d-1, k+1)
			default:
				x = at(d-1, k-1) + 1
			}
			for x < n && x-k < m && a[x] == b[x-k] {
				x++
			}
			far[d][k+d] = x
			if x >= n && x-k >= m {
				return trace(n, m, d, at, down)
			}
		}
	}
	return replaced
}

// trace walks back from the end of both texts along the furthest points.
func trace(n, m, d int, at func(d, k int) int, down func(d, k int) bool) []Op {
	var back []Op
	x, y := n, m
	for ; d > 0; d-- {
		k := x - y
		before := k - 1
		op := Struck
		if down(d, k) {
			before, op = k+1, Added
		}
		px := at(d-1, before)
		sx := px // where the run of equal elements begins, after the edit
		if op == Struck {
			sx++
		}
		back = append(back, repeat(Same, x-sx)...)
		back = append(back, op)
		x, y = px, px-before
	}
	back = append(back, repeat(Same, x)...)
	slices.Reverse(back)
	return back
}
