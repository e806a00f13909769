package bidi

// sequence is an isolating run sequence (BD13) without the characters that X9
// removes. The weak and neutral rules work on its types in place.
type sequence struct {
	index    []int   // place of each character in the paragraph
	types    []class // what the rules have made of it so far
	seen     set     // classes among types before the weak rules
	level    Level
	sos, eos class // direction before the first and after the last (X10)
}

// gather makes r.seq the sequence that begins with the given run (X10).
func (r *resolver) gather(first int) {
	s := &r.seq
	s.index, s.types, s.seen = s.index[:0], s.types[:0], 0
	s.level = r.runs[first].level

	last := first
	for run := first; run >= 0; run = r.runs[run].next {
		last = run
		for i := r.runs[run].start; i < r.runs[run].end; i++ {
			c := r.classes[i]
			if c.in(removed) {
				continue
			}
			s.index = append(s.index, i)
			s.types = append(s.types, c)
			s.seen |= 1 << c
		}
	}

	before, after := r.base, r.base
	if first > 0 {
		before = r.runs[first-1].level
	}
	// A sequence whose last character is an isolate initiator has no match for
	// it. One that an override made strong is its own context: eos is not used.
	if last+1 < len(r.runs) && !s.types[len(s.types)-1].in(initiators) {
		after = r.runs[last+1].level
	}
	s.sos = max(s.level, before).direction()
	s.eos = max(s.level, after).direction()
}

// implicit writes the levels of the sequence back (I1, I2).
func (r *resolver) implicit() {
	for i, t := range r.seq.types {
		level := r.seq.level
		switch {
		case level&1 == 1 && t != classR: // I2
			level++
		case level&1 == 0 && t == classR: // I1
			level++
		case level&1 == 0 && t.in(numbers): // I1
			level += 2
		}
		r.levels[r.seq.index[i]] = level
	}
}
