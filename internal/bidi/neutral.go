package bidi

// neutral runs N1 and N2: what lies between two like directions takes them,
// the rest takes the embedding direction.
func (s *sequence) neutral() {
	t := s.types
	before := s.sos
	for i := 0; i < len(t); {
		if !t[i].in(neutrals) {
			before = strongDirection(t[i])
			i++
			continue
		}
		end := i + 1
		for end < len(t) && t[end].in(neutrals) {
			end++
		}
		after := s.eos
		if end < len(t) {
			after = strongDirection(t[end])
		}
		become := s.level.direction() // N2
		if before == after {
			become = before // N1
		}
		for ; i < end; i++ {
			t[i] = become
		}
	}
}
