package piece

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	"wardleaf/internal/typeset"
)

// This file holds the last sides of a flip chart: the warning signs.

// signs divides the warning signs over as few fronts as hold them in letters large
// enough for the distance of the group, evenly where they all fit so.
func (f *chart) signs() []*lesson.Part {
	all := f.lesson.Part(lesson.WarningSigns)
	if all == nil {
		return nil
	}
	n := items(all)
	fits := func(from, to int) bool {
		try := f.setSigns(f.s.Resized(f.large), some(all, from, to), to == n, &page.Tag{})
		return typeset.Height(try) <= f.frame.Height()
	}
	var full, even []*lesson.Part
	for from := 0; from < n; {
		to := from + 1
		for to < n && fits(from, to+1) {
			to++
		}
		full = append(full, some(all, from, to))
		from = to
	}
	for i := range full {
		from, to := i*n/len(full), (i+1)*n/len(full)
		if !fits(from, to) {
			return full
		}
		even = append(even, some(all, from, to))
	}
	return even
}

// signSide is a front with warning signs; the last of them says whom to call.
func (f *chart) signSide(text measure.Length, signs *lesson.Part, last bool, tag *page.Tag) []typeset.Strip {
	return f.fitted(tag, sizes(text.Points()*1.3, 8), func(s *typeset.Setter, t *page.Tag) []typeset.Strip {
		return f.setSigns(s, signs, last, t)
	})
}

func (f *chart) setSigns(s *typeset.Setter, signs *lesson.Part, last bool, tag *page.Tag) []typeset.Strip {
	w := f.frame.Width()
	s.FigureWidth = s.Sizes.Text.Scale(6.5)
	out := s.SignPairs(uncitedPart(signs), false, w, tag)
	if !last {
		return out
	}
	return append(out, typeset.SpaceBefore(s.Calls(f.calling(), s.Sizes.Text.Scale(1.3), w, tag), s.Grid/2)...)
}

// signWords is the side of the trainer while the group sees warning signs.
func (f *chart) signWords(signs *lesson.Part, tag *page.Tag) []typeset.Strip {
	w, h := f.frame.Width(), f.frame.Height()
	plain := *signs
	plain.Blocks = withoutPictures(signs.Blocks)
	return f.fitted(tag, sizes(14, 8), func(s *typeset.Setter, t *page.Tag) []typeset.Strip {
		head := s.Text(f.Locale.Label("talking-points"), typeset.PartLook, 0, w, t.Add("H2"))
		say := f.s.Resized(typeset.Sized(s.Sizes.Text.Scale(1.35)))
		head = append(head, say.SignPairs(&plain, true, w, t)...)
		head = append(head, typeset.SpaceBefore(say.Text(f.Locale.Label("ask-group"), typeset.BoldLook, 0, w, t.Add("P")), say.Grid)...)
		return append(head, f.keys(s, head, h, t)...)
	})
}

// withoutPictures returns lists without the pictures in their items.
func withoutPictures(bs []lesson.Block) []lesson.Block {
	var out []lesson.Block
	for _, b := range bs {
		if b.Kind == lesson.Figure {
			continue
		}
		b.Items = append([]lesson.Item(nil), b.Items...)
		for k := range b.Items {
			b.Items[k].Blocks = withoutPictures(b.Items[k].Blocks)
		}
		out = append(out, b)
	}
	return out
}
