package lesson

import "strings"

// SplitSign takes the blocks of a warning sign written as "**Sign**, when: what to do"
// apart at the first colon after its bold start. The colon stays with the sign. sign
// is nil, and do is all there is, when the item is not written so.
func SplitSign(bs []Block) (sign []Inline, do []Block) {
	if len(bs) == 0 || bs[0].Kind != Paragraph || len(bs[0].Inlines) < 2 || bs[0].Inlines[0].Kind != Strong {
		return nil, bs
	}
	ins := bs[0].Inlines
	for i, in := range ins {
		before, after, found := strings.Cut(in.Text, ":")
		if in.Kind != Text || !found {
			continue
		}
		head, tail, first := in, in, bs[0]
		head.Text, tail.Text = before+":", strings.TrimLeft(after, " ")
		first.Inlines = append([]Inline{tail}, ins[i+1:]...)
		return append(append(sign, ins[:i]...), head), append([]Block{first}, bs[1:]...)
	}
	return nil, bs
}
