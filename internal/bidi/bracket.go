package bidi

// maxOpenBrackets is how many brackets may wait for their partner (BD16).
const maxOpenBrackets = 63

// bracketPair is two places in a sequence; close is -1 until it is found.
type bracketPair struct{ open, close int }

// brackets runs N0 on the current sequence.
func (r *resolver) brackets() {
	s := &r.seq
	if !classON.in(s.seen) {
		return
	}
	embedding := s.level.direction()
	context, at := s.sos, 0 // strong direction before place at
	for _, pair := range r.bracketPairs() {
		if pair.close < 0 {
			continue
		}
		// Pairs come in the order of their openers and change nothing before
		// their own, so the context is carried on from the last pair.
		for ; at < pair.open; at++ {
			if d := strongDirection(s.types[at]); d != classON {
				context = d
			}
		}
		inside := classON
		for _, t := range s.types[pair.open+1 : pair.close] {
			d := strongDirection(t)
			if d == classON {
				continue
			}
			inside = d
			if d == embedding {
				break
			}
		}
		switch {
		case inside == classON: // N0 d: left to N1 and N2
		case inside == embedding: // N0 b
			r.setPair(pair, embedding)
		case context == inside: // N0 c 1
			r.setPair(pair, inside)
		default: // N0 c 2
			r.setPair(pair, embedding)
		}
	}
}

// strongDirection is the direction that N0 to N2 see in a type: numbers count
// as right to left, and classON means none.
func strongDirection(t class) class {
	switch t {
	case classL:
		return classL
	case classR, classEN, classAN:
		return classR
	}
	return classON
}

// bracketPairs finds the pairs of BD16, ordered by opener. Openers without a
// partner are in the list too. When the stack is full the search ends and
// the pairs found so far stand.
func (r *resolver) bracketPairs() []bracketPair {
	s := &r.seq
	type waiting struct {
		opener rune // canonical
		pair   int  // index in pairs
	}
	var (
		pairs []bracketPair
		stack [maxOpenBrackets]waiting
		depth int
	)
	for i, t := range s.types {
		if t != classON {
			continue
		}
		opener, opens, ok := bracketOf(r.text[s.index[i]])
		switch {
		case !ok:
		case opens:
			if depth == len(stack) {
				return pairs
			}
			stack[depth] = waiting{opener, len(pairs)}
			depth++
			pairs = append(pairs, bracketPair{i, -1})
		default:
			for d := depth - 1; d >= 0; d-- {
				if stack[d].opener == opener {
					pairs[stack[d].pair].close = i
					depth = d
					break
				}
			}
		}
	}
	return pairs
}

// setPair gives both brackets a direction, and the marks that follow either.
func (r *resolver) setPair(pair bracketPair, d class) {
	s := &r.seq
	for _, i := range [2]int{pair.open, pair.close} {
		s.types[i] = d
		for i++; i < len(s.types) && r.classes[s.index[i]] == classNSM; i++ {
			s.types[i] = d
		}
	}
}
