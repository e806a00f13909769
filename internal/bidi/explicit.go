package bidi

// maxDepth is the highest level that embeddings and isolates may reach (BD2).
const maxDepth = 125

// status is an entry of the directional status stack (X1).
type status struct {
	level    Level
	override class // classON when the status is neutral
	isolate  bool
	run      int // for an isolate: the run whose last character is its initiator
}

// levelRun is text[start:end] at one level once the characters removed by X9
// are left out (BD7). Removed characters may stand within it.
type levelRun struct {
	start, end int
	level      Level
	next       int  // the run that goes on after an isolate, or -1 (BD13)
	continues  bool // some run has this one as next
}

// baseLevel applies P2 and P3 unless the direction is given.
func baseLevel(classes []class, base Direction) Level {
	switch base {
	case RightToLeft:
		return 1
	case Auto:
		return firstStrong(classes, false)
	}
	return 0
}

// firstStrong is the level that the first L, R or AL calls for, isolates left
// out (P2, P3). For rule X5c it looks no further than the PDI that matches.
func firstStrong(classes []class, untilPDI bool) Level {
	depth := 0 // isolates open (BD9)
	for _, c := range classes {
		switch {
		case c.in(initiators):
			depth++
		case c == classPDI && depth > 0:
			depth--
		case c == classPDI && untilPDI:
			return 0
		case depth > 0:
		case c == classL:
			return 0
		case c == classR || c == classAL:
			return 1
		}
	}
	return 0
}

// deeper is the least level above l with the direction wanted (X2 to X5b).
func (l Level) deeper(rightToLeft bool) Level {
	if rightToLeft {
		return (l + 1) | 1
	}
	return (l + 2) &^ 1
}

// explicit runs X1 to X8: it sets the explicit levels, writes overrides into
// the classes, and collects the level runs. It ends with the paragraph.
//
// An FSI looks ahead for its direction only while it can still be opened, so
// no character is looked at by more than maxDepth of them.
func (r *resolver) explicit() {
	var (
		stack              [maxDepth + 2]status
		top                = &stack[0]
		depth              = 0 // index of top
		overflowIsolates   = 0
		overflowEmbeddings = 0
		validIsolates      = 0
	)
	*top = status{level: r.base, override: classON} // X1
	push := func(s status) {
		depth++
		top = &stack[depth]
		*top = s
	}
	pop := func() {
		depth--
		top = &stack[depth]
	}
	r.runs = r.runs[:0]

	for i, c := range r.classes {
		switch c {
		case classRLE, classLRE, classRLO, classLRO: // X2 to X5
			level := top.level.deeper(c == classRLE || c == classRLO)
			if level <= maxDepth && overflowIsolates == 0 && overflowEmbeddings == 0 {
				override := classON
				if c == classRLO || c == classLRO {
					override = level.direction()
				}
				push(status{level: level, override: override})
			} else if overflowIsolates == 0 {
				overflowEmbeddings++
			}

		case classRLI, classLRI, classFSI: // X5a to X5c
			r.place(i, top)
			if overflowIsolates > 0 || overflowEmbeddings > 0 {
				overflowIsolates++
				continue
			}
			rightToLeft := c == classRLI
			if c == classFSI && top.level < maxDepth {
				rightToLeft = firstStrong(r.classes[i+1:], true) == 1 // X5c
			}
			level := top.level.deeper(rightToLeft)
			if level > maxDepth {
				overflowIsolates++
				continue
			}
			validIsolates++
			push(status{level: level, override: classON, isolate: true, run: len(r.runs) - 1})

		case classPDI: // X6a
			if overflowIsolates > 0 {
				overflowIsolates--
				r.place(i, top)
				continue
			}
			if validIsolates == 0 {
				r.place(i, top)
				continue
			}
			overflowEmbeddings = 0
			for !top.isolate {
				pop()
			}
			from := top.run
			pop()
			validIsolates--
			r.place(i, top)
			// BD13: the sequence goes on here, unless nothing stood between
			// and the run never ended.
			if to := len(r.runs) - 1; to != from {
				r.runs[from].next = to
				r.runs[to].continues = true
			}

		case classPDF: // X7
			switch {
			case overflowIsolates > 0:
			case overflowEmbeddings > 0:
				overflowEmbeddings--
			case !top.isolate && depth > 0:
				pop()
			}

		case classBN: // X6 and X9 leave it out

		case classB: // X8
			r.place(i, &stack[0])

		default: // X6
			r.place(i, top)
		}
	}
}

// place gives character i the level and override of s and adds it to the
// level runs.
func (r *resolver) place(i int, s *status) {
	if s.override != classON {
		r.classes[i] = s.override
	}
	if last := len(r.runs) - 1; last >= 0 && r.runs[last].level == s.level {
		r.runs[last].end = i + 1
		return
	}
	r.runs = append(r.runs, levelRun{start: i, end: i + 1, level: s.level, next: -1})
}
