package sewing

import "slices"

// Bound returns a length of cloth that no plan for the order can be shorter than.
//
// Each step of the proof is sound by itself:
//
//  1. Cut the cloth across at any place: the pieces that the cut meets lie side by side,
//     so their widths add up to no more than the cloth. Every piece must be met over
//     its whole length. The least length that covers all pieces in this way is a linear
//     programme over such rows (minCover).
//  2. Cut along the cloth instead: the pieces met lie end to end within the length. The
//     least width that covers all pieces must not be more than the cloth's.
//  3. No plan is shorter than its longest piece.
//  4. Slide every piece towards the start until it touches another or the start: the
//     plan's length is then a sum of lengths of pieces.
//
// So the bound is the first sum of lengths that passes them all.
func Bound(sizes [3]Rect, o Order) Length {
	ways := o.ways(sizes)
	var across, along []span
	for _, w := range ways {
		across = append(across, span{w.kind, w.Width, w.Length})
		along = append(along, span{w.kind, w.Length, w.Width})
	}
	area, width := int64(o.Count)*areaEach(sizes), int64(o.Width)
	tallest := max(sizes[Body].Length, sizes[Belt].Length)
	least := max(minCover(across, o.Count, o.Width), Length((area+width-1)/width), tallest)
	if least > farthest*tallest {
		return least
	}
	for _, l := range sums(ways, o.Count, least, least+3*tallest) {
		if minCover(along, o.Count, l) <= o.Width {
			return l
		}
	}
	return least
}

// farthest is how many pieces end to end steps 2 and 4 are still worth their while:
// in a longer cloth nearly any length is a sum of lengths.
const farthest = 20

// A span is a piece seen in one direction: how much of a row it takes, and how long it runs.
type span struct {
	kind      Kind
	take, run Length
}

// mostPatterns bounds the work of minCover; with more patterns it says only 0.
const mostPatterns = 3000

// minCover returns a length that is no more than the least total of rows that cover
// n carriers, where the pieces in a row take no more than room. It solves the
// programme in floating point, then proves the answer in whole numbers: with any worth
// given to every kind, no row holds more than the dearest row does, so the rows must be
// at least as long as the worth of all pieces divided by the worth of that row.
func minCover(spans []span, n int, room Length) Length {
	rows := patterns(spans, room)
	if rows == nil {
		return 0
	}
	// One variable for each span, worth per length of run, and one for each kind, worth
	// of a piece: at most what it is worth lying either way.
	nv := len(spans) + len(Each)
	var m [][]float64
	var rhs []float64
	for _, r := range rows {
		row := make([]float64, nv)
		for i, c := range r {
			row[i] = float64(c)
		}
		m, rhs = append(m, row), append(rhs, 1)
	}
	for i, s := range spans {
		row := make([]float64, nv)
		row[len(spans)+int(s.kind)], row[i] = 1, -s.run.Millimetres()
		m, rhs = append(m, row), append(rhs, 0)
	}
	goal := make([]float64, nv)
	for k, e := range Each {
		goal[len(spans)+k] = float64(e)
	}
	y := maximise(goal, m, rhs)

	const unit = 1 << 20
	worth := make([]int64, len(spans))
	for i := range spans {
		worth[i] = int64(y[i] * unit)
	}
	var dearest int64
	for _, r := range rows {
		var v int64
		for i, c := range r {
			v += int64(c) * worth[i]
		}
		dearest = max(dearest, v)
	}
	if dearest == 0 {
		return 0
	}
	var each int64 // of one carrier; below 2^22 * 2^21 * 5
	for k, e := range Each {
		low := int64(-1)
		for i, s := range spans {
			if s.kind == Kind(k) && (low < 0 || worth[i]*int64(s.run) < low) {
				low = worth[i] * int64(s.run)
			}
		}
		each += int64(e) * max(low, 0)
	}
	return Length((int64(n)*each + dearest - 1) / dearest)
}

// patterns lists every fullest way to fill a room: how many of each span. It returns nil
// when there are too many.
func patterns(spans []span, room Length) [][]int {
	var out [][]int
	counts := make([]int, len(spans))
	least := spans[0].take
	for _, s := range spans {
		least = min(least, s.take)
	}
	tooMany := false
	var fill func(i int, left Length)
	fill = func(i int, left Length) {
		if tooMany {
			return
		}
		if i == len(spans) {
			if left < least {
				out = append(out, slices.Clone(counts))
				tooMany = len(out) > mostPatterns
			}
			return
		}
		for c := int(left / spans[i].take); c >= 0; c-- {
			counts[i] = c
			fill(i+1, left-Length(c)*spans[i].take)
		}
		counts[i] = 0
	}
	fill(0, room)
	if tooMany {
		return nil
	}
	return out
}

// sums lists the lengths from low to high, in order, that pieces end to end can have.
func sums(ways []way, n int, low, high Length) []Length {
	reach := map[Length]bool{0: true}
	for _, k := range Kinds {
		for range Each[k] * n {
			var more []Length
			for l := range reach {
				for _, w := range ways {
					if t := l + w.Length; w.kind == k && t <= high && !reach[t] {
						more = append(more, t)
					}
				}
			}
			if more == nil {
				break
			}
			for _, l := range more {
				reach[l] = true
			}
		}
	}
	var out []Length
	for l := range reach {
		if l >= low {
			out = append(out, l)
		}
	}
	slices.Sort(out)
	return out
}
