package lesson

// MapInlines returns a copy of blocks in which every inline, innermost first, is
// replaced by what fn returns for it. The blocks given are left as they are.
func MapInlines(bs []Block, fn func(Inline) []Inline) []Block {
	if bs == nil {
		return nil
	}
	out := append([]Block(nil), bs...)
	for i := range out {
		b := &out[i]
		b.Inlines = ReplaceInlines(b.Inlines, fn)
		b.Blocks = MapInlines(b.Blocks, fn)
		b.Items = append([]Item(nil), b.Items...)
		for k := range b.Items {
			b.Items[k].Blocks = MapInlines(b.Items[k].Blocks, fn)
		}
		b.Rows = append([]Row(nil), b.Rows...)
		for r := range b.Rows {
			cells := append([][]Inline(nil), b.Rows[r].Cells...)
			for c := range cells {
				cells[c] = ReplaceInlines(cells[c], fn)
			}
			b.Rows[r].Cells = cells
		}
	}
	return out
}

// ReplaceInlines is MapInlines for one run of inlines.
func ReplaceInlines(ins []Inline, fn func(Inline) []Inline) []Inline {
	if ins == nil {
		return nil
	}
	out := make([]Inline, 0, len(ins))
	for _, in := range ins {
		in.Children = ReplaceInlines(in.Children, fn)
		out = append(out, fn(in)...)
	}
	return out
}

// Map returns a copy of the lesson with every inline replaced by what fn returns for it.
func (l *Lesson) Map(fn func(Inline) []Inline) *Lesson {
	out := *l
	out.Title = ReplaceInlines(l.Title, fn)
	out.Lead = MapInlines(l.Lead, fn)
	out.Parts = append([]Part(nil), l.Parts...)
	for i := range out.Parts {
		out.Parts[i].Heading = ReplaceInlines(out.Parts[i].Heading, fn)
		out.Parts[i].Blocks = MapInlines(out.Parts[i].Blocks, fn)
	}
	return &out
}
