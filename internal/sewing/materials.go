package sewing

import (
	"fmt"
	"math/big"
	"strings"
)

// Materials is what a group must have for an order.
type Materials struct {
	Cloth  Length // to buy: the plan, rounded up to whole 10 cm
	Thread Length
	Labels int
	Cost   string // of the cloth, two decimals; empty when no price was given
	Each   string // of it for one carrier
}

// threadPerSeam is how much thread a row of machine stitches takes, top and bottom
// together, for its length. Common practice, no source.
const threadPerSeam = 3

// SeamLength is the length of all rows of stitches in one carrier: two rows on every
// hem, side seam and belt end, one on each edge of the belts and the cap's seams.
func (p *Pattern) SeamLength() Length {
	var rows Length
	body := &p.Pieces[Body]
	for _, m := range body.Marks {
		switch m.Style {
		case Turn:
			rows += 2 * m.length()
		case Place:
			rows += 2 * m.length()
		}
	}
	rows += 2 * 2 * sideSeam // both sides; front and back are one seam
	rows += 3 * 2 * p.Pieces[Belt].Length
	for _, m := range p.Pieces[Cap].Marks {
		if m.Style == Turn {
			rows += m.length()
		}
	}
	return rows + p.Pieces[Cap].Width/2 + p.Pieces[Cap].Length
}

// NeedFor returns what the plan needs. price is of one metre of cloth, in any money, or
// empty.
func (p *Pattern) NeedFor(pl *Plan, price string) (*Materials, error) {
	const whole = 10 * CM
	n := pl.Order.Count
	m := &Materials{
		Cloth:  (pl.Length + whole - 1) / whole * whole,
		Thread: p.SeamLength() * threadPerSeam * Length(n),
		Labels: n,
	}
	if price == "" {
		return m, nil
	}
	r, ok := new(big.Rat).SetString(price)
	if !ok || strings.ContainsAny(price, "/eEpPxX_") || r.Sign() < 0 || r.Cmp(big.NewRat(1_000_000, 1)) > 0 {
		return nil, fmt.Errorf("price is %q: it is what one metre of cloth costs, 0 to 1000000, and the group's cost comes from it; give a number such as 4.50", price)
	}
	cost := r.Mul(r, big.NewRat(int64(m.Cloth), int64(M)))
	m.Cost = cost.FloatString(2)
	m.Each = new(big.Rat).Quo(cost, big.NewRat(int64(n), 1)).FloatString(2)
	return m, nil
}

// length returns how long the path is.
func (p Path) length() Length {
	var l float64
	c := p.Chords()
	for i := 1; i < len(c); i++ {
		l += distance(c[i-1], c[i])
	}
	return Length(l + 0.5)
}
