package piece

import (
	"slices"

	"wardleaf/internal/lesson"
)

// overfull finds how many items too many a lesson has for a piece: it takes the last
// items off the parts of the given roles, always off the part with the most items,
// until the rest fits. The part that most were taken from is the one to shorten; it is
// nil when no number of items taken away would help.
func overfull(l *lesson.Lesson, fits func(*lesson.Lesson) (bool, error), roles ...lesson.Role) (*TooLong, error) {
	out := &TooLong{Lesson: l}
	short := *l
	short.Parts = append([]lesson.Part(nil), l.Parts...)
	taken := make([]int, len(l.Parts))
	for {
		longest := -1
		for i := range short.Parts {
			p := &short.Parts[i]
			for _, r := range roles {
				if p.Role == r && items(p) > 1 && (longest < 0 || items(p) > items(&short.Parts[longest])) {
					longest = i
				}
			}
		}
		if longest < 0 {
			break
		}
		short.Parts[longest] = withoutLast(short.Parts[longest])
		taken[longest]++
		out.Items++
		if ok, err := fits(&short); err != nil || ok {
			out.Part = &l.Parts[slices.Index(taken, slices.Max(taken))]
			return out, err
		}
	}
	return out, nil
}

// withoutLast returns a part without the last item of its last list that has any.
func withoutLast(p lesson.Part) lesson.Part {
	p.Blocks = append([]lesson.Block(nil), p.Blocks...)
	for i := len(p.Blocks) - 1; i >= 0; i-- {
		if n := len(p.Blocks[i].Items); n > 0 {
			p.Blocks[i].Items = p.Blocks[i].Items[:n-1]
			break
		}
	}
	return p
}
