package bidi

import "golang.org/x/text/unicode/bidi"

// class is a Bidi_Class value (UAX #9 table 4).
type class uint8

const (
	classL   = class(bidi.L)
	classR   = class(bidi.R)
	classAL  = class(bidi.AL)
	classEN  = class(bidi.EN)
	classES  = class(bidi.ES)
	classET  = class(bidi.ET)
	classAN  = class(bidi.AN)
	classCS  = class(bidi.CS)
	classNSM = class(bidi.NSM)
	classBN  = class(bidi.BN)
	classB   = class(bidi.B)
	classS   = class(bidi.S)
	classWS  = class(bidi.WS)
	classON  = class(bidi.ON)
	classLRE = class(bidi.LRE)
	classLRO = class(bidi.LRO)
	classRLE = class(bidi.RLE)
	classRLO = class(bidi.RLO)
	classPDF = class(bidi.PDF)
	classLRI = class(bidi.LRI)
	classRLI = class(bidi.RLI)
	classFSI = class(bidi.FSI)
	classPDI = class(bidi.PDI)
)

// set is a set of classes, one bit each.
type set uint32

func (c class) in(s set) bool { return s>>c&1 == 1 }

const (
	// initiators open an isolate (BD8).
	initiators set = 1<<classLRI | 1<<classRLI | 1<<classFSI
	isolates   set = initiators | 1<<classPDI
	embeddings set = 1<<classLRE | 1<<classRLE | 1<<classLRO | 1<<classRLO | 1<<classPDF

	// removed is what X9 takes out.
	removed set = embeddings | 1<<classBN

	// neutrals is what N1 and N2 call NI.
	neutrals set = isolates | 1<<classB | 1<<classS | 1<<classWS | 1<<classON

	// separators is what W4 to W6 change.
	separators set = 1<<classES | 1<<classET | 1<<classCS

	numbers set = 1<<classEN | 1<<classAN

	// turning is what can lift a level above 0 when the base level is 0.
	turning set = embeddings | isolates | 1<<classR | 1<<classAL | 1<<classAN
)

// firstTurning is U+0590, where the Hebrew block begins: every character
// below it stays at level 0 in a paragraph without any above it.
const firstTurning = 0x0590

// turns reports whether text holds anything that could lift a level above 0
// when the base level is 0.
func turns(text []rune) bool {
	for _, r := range text {
		if r >= firstTurning && classOf(r).in(turning) {
			return true
		}
	}
	return false
}

// classOf is total: a value that is not a character gets the class of U+FFFD.
//
// The table agrees with Unicode 15.0 on every assigned character. It gives R
// in place of AL to 140 code points not assigned in that version (in U+0860 to
// U+08FF, U+10D00 to U+10F6F and U+1EC70 to U+1ED4F); no text has them.
func classOf(r rune) class {
	p, _ := bidi.LookupRune(r)
	return class(p.Class())
}
