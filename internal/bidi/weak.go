package bidi

// weak runs W1 to W7. Afterwards types holds only L, R, EN, AN and neutrals.
func (s *sequence) weak() {
	t := s.types

	before := s.sos // type of the previous character once W1 has seen it
	strong := s.sos // last L, R, AL or sos
	for i, c := range t {
		if c == classNSM { // W1
			c = before
			if before.in(isolates) {
				c = classON
			}
			t[i] = c
		}
		before = c
		switch c {
		case classL, classR:
			strong = c
		case classAL:
			strong = c
			t[i] = classR // W3
		case classEN:
			if strong == classAL {
				t[i] = classAN // W2
			}
		}
	}

	if s.seen&separators != 0 {
		s.separators()
	}

	if !classEN.in(s.seen) {
		return
	}
	strong = s.sos
	for i, c := range t { // W7
		switch c {
		case classL, classR:
			strong = c
		case classEN:
			if strong == classL {
				t[i] = classL
			}
		}
	}
}

// separators runs W4 to W6.
func (s *sequence) separators() {
	t := s.types
	for i := 1; i+1 < len(t); i++ { // W4
		switch {
		case t[i] == classES && t[i-1] == classEN && t[i+1] == classEN:
			t[i] = classEN
		case t[i] == classCS && t[i-1] == t[i+1] && t[i-1].in(numbers):
			t[i] = t[i-1]
		}
	}
	for i := 0; i < len(t); i++ {
		switch t[i] {
		case classET:
			end := i + 1
			for end < len(t) && t[end] == classET {
				end++
			}
			become := classON                                                    // W6
			if i > 0 && t[i-1] == classEN || end < len(t) && t[end] == classEN { // W5
				become = classEN
			}
			for ; i < end; i++ {
				t[i] = become
			}
			i-- // the loop steps past the last of them
		case classES, classCS:
			t[i] = classON // W6
		}
	}
}
