package piece

import (
	"slices"
	"sort"

	"wardleaf/internal/lesson"
)

// overfull finds how many items too many a lesson has for a piece: the least number
// without which it fits, when items are taken off the end of parts of the given roles,
// always of the part with the most. The part that most are taken from is the one to
// shorten; it is nil when no number of items taken away would help.
func overfull(l *lesson.Lesson, fits func(*lesson.Lesson) (bool, error), roles ...lesson.Role) (*TooLong, error) {
	has := make([]int, len(l.Parts))
	most := 0
	for i := range l.Parts {
		if slices.Contains(roles, l.Parts[i].Role) {
			has[i] = items(&l.Parts[i])
			most += max(has[i]-1, 0)
		}
	}
	var failed error
	n := sort.Search(most, func(n int) bool {
		ok, err := fits(cut(l, kept(has, n)))
		if err != nil {
			failed = err
		}
		return ok || err != nil
	})
	out := &TooLong{Lesson: l, Items: n}
	if n == most {
		return out, failed
	}
	taken := kept(has, n)
	for i := range taken {
		taken[i] = has[i] - taken[i]
	}
	out.Part = &l.Parts[slices.Index(taken, slices.Max(taken))]
	return out, failed
}

// kept returns how many items each part keeps when n are taken, one at a time from
// the part with the most.
func kept(has []int, n int) []int {
	out := slices.Clone(has)
	for ; n > 0; n-- {
		out[slices.Index(out, slices.Max(out))]--
	}
	return out
}

// cut returns a lesson whose parts keep so many items; parts with none are left as they are.
func cut(l *lesson.Lesson, keep []int) *lesson.Lesson {
	short := *l
	short.Parts = slices.Clone(l.Parts)
	for i := range short.Parts {
		if keep[i] > 0 {
			short.Parts[i] = *some(&l.Parts[i], 0, keep[i])
		}
	}
	return &short
}

// some returns a part with those items of its lists from one count up to another.
func some(p *lesson.Part, from, to int) *lesson.Part {
	out := *p
	out.Blocks = nil
	at := 0
	for _, b := range p.Blocks {
		n := len(b.Items)
		b.Items = b.Items[min(max(from-at, 0), n):min(max(to-at, 0), n)]
		if at += n; len(b.Items) > 0 || n == 0 && from == 0 {
			out.Blocks = append(out.Blocks, b)
		}
	}
	return &out
}
