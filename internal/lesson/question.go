package lesson

import "wardleaf/internal/source"

// A Question is one question of a quiz part.
type Question struct {
	Stem    []Block
	Options []Option
	Reason  []Block
	Span    source.Span
}

// An Option is one answer to choose from.
type Option struct {
	Blocks []Block
	Right  bool
	Span   source.Span
}

// Questions reads the questions of a quiz part: each item of its ordered lists is
// one; a nested task list holds the options, a nested quote the reason, and the
// rest is the stem. It accepts any part; what is malformed comes out as a question
// without options or reason, for a rule to say.
func (p *Part) Questions() []Question {
	var out []Question
	for _, b := range p.Blocks {
		if b.Kind != List || !b.Ordered {
			continue
		}
		for _, it := range b.Items {
			q := Question{Span: it.Span}
			for _, ib := range it.Blocks {
				switch {
				case ib.Kind == List && isTasks(ib):
					for _, o := range ib.Items {
						q.Options = append(q.Options, Option{Blocks: o.Blocks, Right: o.Task == Ticked, Span: o.Span})
					}
				case ib.Kind == Quote:
					q.Reason = append(q.Reason, ib.Blocks...)
				default:
					q.Stem = append(q.Stem, ib)
				}
			}
			out = append(out, q)
		}
	}
	return out
}

func isTasks(b Block) bool {
	for _, it := range b.Items {
		if it.Task == NoTask {
			return false
		}
	}
	return len(b.Items) > 0
}

// Items returns the items of a part's own lists, ordered ones (steps) or the others.
func (p *Part) Items(ordered bool) []Item {
	var out []Item
	for _, b := range p.Blocks {
		if b.Kind == List && b.Ordered == ordered {
			out = append(out, b.Items...)
		}
	}
	return out
}

// Figure returns the first picture of an item, or nil. A sheet is no picture.
func (it *Item) Figure() *Block {
	for i := range it.Blocks {
		if it.Blocks[i].Kind == Figure && it.Blocks[i].Sheet() == "" {
			return &it.Blocks[i]
		}
	}
	return nil
}

// Right counts the options marked as right.
func (q *Question) Right() int {
	n := 0
	for _, o := range q.Options {
		if o.Right {
			n++
		}
	}
	return n
}
