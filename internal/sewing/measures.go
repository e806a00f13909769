package sewing

import "fmt"

// Measures are what a carrier is drafted from: measures taken on the two people, and
// allowances. The baby's are taken with the nappy on.
type Measures struct {
	Chest Length // adult: round the chest, under the arms
	Drop  Length // adult: from the nape of the neck down to the upper corner of the carrier
	Back  Length // baby: from the seat up the back to just under the ear
	Hips  Length // baby: round the hips
	Thigh Length // baby: round the thigh
	Head  Length // baby: round the head, above the ears

	Hem  Length // turned in on the raw edges of the body and the cap
	Seam Length // beside the seams of the cap
	// Shrinkage of cloth that is cut before it is washed, in tenths of a percent,
	// along the grain and across it. Cloth that was washed twice has none.
	ShrinkAlong, ShrinkAcross int
}

// Default returns the measures that give the pieces in common use: a body of 60 by
// 30 cm, belts of 80 by 6 cm and a cap of 30 by 15 cm.
func Default() Measures {
	return Measures{
		Chest: 92 * CM, Drop: 36 * CM,
		Back: 24 * CM, Hips: 28 * CM, Thigh: 12 * CM, Head: 27 * CM,
		Hem: 1 * CM, Seam: 1 * CM,
	}
}

// A Range is a measure with its name and the values that can be drafted.
type Range struct {
	Name      string
	Low, High Length
	value     func(*Measures) *Length
}

// Ranges lists every length of Measures in the order of the sheet. The ranges hold
// small babies and grown people; a value outside is most likely a slip or a wrong unit.
var Ranges = []Range{
	{"chest", 70 * CM, 150 * CM, func(m *Measures) *Length { return &m.Chest }},
	{"drop", 25 * CM, 55 * CM, func(m *Measures) *Length { return &m.Drop }},
	{"back", 16 * CM, 34 * CM, func(m *Measures) *Length { return &m.Back }},
	{"hips", 20 * CM, 42 * CM, func(m *Measures) *Length { return &m.Hips }},
	{"thigh", 8 * CM, 20 * CM, func(m *Measures) *Length { return &m.Thigh }},
	{"head", 22 * CM, 38 * CM, func(m *Measures) *Length { return &m.Head }},
	{"hem", 7 * MM, 20 * MM, func(m *Measures) *Length { return &m.Hem }},
	{"seam", 6 * MM, 15 * MM, func(m *Measures) *Length { return &m.Seam }},
}

// Of returns the place of the measure in m, to read or to set.
func (r Range) Of(m *Measures) *Length { return r.value(m) }

// MostShrink is the most shrinkage that is drafted for, in tenths of a percent.
const MostShrink = 150

// leastSeat is the least width of cloth left between the two leg curves.
const leastSeat = 8 * CM

// Check refuses measures that give no carrier; the error says what, why and how to mend it.
func (m Measures) Check() error {
	for _, r := range Ranges {
		if v := *r.Of(&m); v < r.Low || v > r.High {
			return fmt.Errorf("%s is %s cm: a carrier is drafted for %s to %s cm, and outside that it would not hold; measure again, in centimetres",
				r.Name, v.Centimetres(), r.Low.Centimetres(), r.High.Centimetres())
		}
	}
	for _, s := range []struct {
		name  string
		value int
	}{{"shrink-along", m.ShrinkAlong}, {"shrink-across", m.ShrinkAcross}} {
		if s.value < 0 || s.value > MostShrink {
			return fmt.Errorf("%s is %g %%: cloth that shrinks more than %g %% loses its shape; wash it twice before cutting and give 0",
				s.name, float64(s.value)/10, float64(MostShrink)/10)
		}
	}
	d := m.draft()
	if seat := d.bodyWidth - 2*d.leg; seat < leastSeat {
		return fmt.Errorf("thigh %s cm with hips %s cm leaves a seat of %s cm between the leg curves: under %s cm it does not carry; measure thigh and hips again",
			m.Thigh.Centimetres(), m.Hips.Centimetres(), seat.Centimetres(), leastSeat.Centimetres())
	}
	return nil
}
