package redline

import (
	"slices"
	"strings"
)

// A pairing says which old block of a lesson became which new one.
type pairing struct {
	lang     string
	old, now []block
	of       []int // for each new block the old one it was, or -1
	to       []int // for each old block the new one it became, or -1
	moved    []bool
	changes  []found
}

// found is a change with the blocks it is of, nil where there is none.
type found struct {
	Change
	was, is *block
}

func (p *pairing) list() []Change {
	var out []Change
	for i := range p.changes {
		out = append(out, p.changes[i].Change)
	}
	return out
}

// most bounds how many pairs of blocks are looked at for likeness at one time.
const most = 100_000

// pair pairs the blocks: first those that say the same and stand in the same order,
// then those that say the same elsewhere, then those in the same gap that are alike,
// then those elsewhere that are much alike.
func (p *pairing) pair() {
	p.of, p.to, p.moved = unpaired(len(p.now)), unpaired(len(p.old)), make([]bool, len(p.now))
	keys := func(bs []block) []string {
		var out []string
		for i := range bs {
			out = append(out, bs[i].key())
		}
		return out
	}
	i, k := 0, 0
	for _, op := range script(keys(p.old), keys(p.now)) {
		switch op {
		case Same:
			p.join(i, k)
			i, k = i+1, k+1
		case Struck:
			i++
		case Added:
			k++
		}
	}
	p.elsewhere(func(a, b *block) bool {
		return a.text == b.text && (a.part == b.part || len(strings.Fields(a.text)) > 3)
	})
	p.gaps()
	p.elsewhere(func(a, b *block) bool { return likeness(a, b) > 0.6 })
}

func unpaired(n int) []int { return slices.Repeat([]int{-1}, n) }

func (p *pairing) join(i, k int) { p.to[i], p.of[k] = k, i }

// free lists the blocks that are not paired yet.
func free(pairs []int) []int {
	var out []int
	for i, k := range pairs {
		if k < 0 {
			out = append(out, i)
		}
	}
	return out
}

// elsewhere pairs what is left and is the same by some measure, wherever it stands.
func (p *pairing) elsewhere(same func(a, b *block) bool) {
	left := free(p.to)
	if len(left)*len(free(p.of)) > most {
		return
	}
	for _, k := range free(p.of) {
		for n, i := range left {
			a, b := &p.old[i], &p.now[k]
			if a.kind == b.kind && a.group == b.group && a.text != "" && same(a, b) {
				p.join(i, k)
				p.moved[k] = true
				left = slices.Delete(left, n, n+1)
				break
			}
		}
	}
}

// gaps pairs what is alike between two blocks that stayed.
func (p *pairing) gaps() {
	for i, k := 0, 0; i < len(p.old) || k < len(p.now); {
		var a, b []int
		for ; i < len(p.old) && (p.to[i] < 0 || p.moved[p.to[i]]); i++ {
			if p.to[i] < 0 {
				a = append(a, i)
			}
		}
		for ; k < len(p.now) && (p.of[k] < 0 || p.moved[k]); k++ {
			if p.of[k] < 0 {
				b = append(b, k)
			}
		}
		p.gap(a, b)
		i, k = i+1, k+1 // a block that stayed
	}
}

// gap pairs old blocks with new ones so that their order stays and they are as alike,
// taken together, as can be.
func (p *pairing) gap(a, b []int) {
	if len(a)*len(b) > most {
		return
	}
	width := len(b) + 1
	like := make([]float64, len(a)*len(b))
	best := make([]float64, (len(a)+1)*width)
	for i := len(a) - 1; i >= 0; i-- {
		for k := len(b) - 1; k >= 0; k-- {
			l := likeness(&p.old[a[i]], &p.now[b[k]])
			like[i*len(b)+k] = l
			best[i*width+k] = max(best[(i+1)*width+k], best[i*width+k+1])
			if l >= 0.4 {
				best[i*width+k] = max(best[i*width+k], l+best[(i+1)*width+k+1])
			}
		}
	}
	for i, k := 0, 0; i < len(a) && k < len(b); {
		switch l := like[i*len(b)+k]; {
		case l >= 0.4 && best[i*width+k] == l+best[(i+1)*width+k+1]:
			p.join(a[i], b[k])
			i, k = i+1, k+1
		case best[i*width+k] == best[(i+1)*width+k]:
			i++
		default:
			k++
		}
	}
}

// likeness is from 0 to 1.4: the share of words that two blocks have in common (the
// measure of L. R. Dice, Ecology 26, 1945), and more when they stand in the same place.
// It is 0 for blocks that cannot be the same thing.
func likeness(a, b *block) float64 {
	if a.kind != b.kind {
		return 0
	}
	a.tally()
	b.tally()
	common := 0
	for w, n := range b.bag {
		common += min(n, a.bag[w])
	}
	like := 0.0
	if n := a.length + b.length; n > 0 {
		like = 2 * float64(common) / float64(n)
	}
	switch {
	case a.kind == "title", a.kind == "part" && a.part == b.part, a.group == "option" && a.path == b.path, a.kind == "figure" && a.source == b.source:
		like += 0.4
	case a.path == b.path:
		like += 0.2
	}
	return like
}

// tally counts the words of a block, once.
func (b *block) tally() {
	if b.bag != nil {
		return
	}
	b.bag = map[string]int{}
	for _, w := range words(b.text) {
		if !blank(w) {
			b.bag[w]++
			b.length++
		}
	}
}
