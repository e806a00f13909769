package sewing

// Eases and allowances of the draft. All are common practice, with no source.
const (
	sideWrap   = 5 * CM  // how far the body reaches round each side of the baby
	hipEase    = 4 * CM  // room for the nappy and for bent hips
	legEase    = 3 * CM  // room for the leg to move without rubbing
	sideSeam   = 5 * CM  // length of the pouch's side seams, above the leg curves
	turnDown   = 20 * CM // room to grow: turned down outside until the edge lies under the ear
	waistEase  = 10 * CM // the baby between the adult and the belts
	tail       = 40 * CM // end of each belt, to tie
	lap        = 2 * CM  // end of a belt that lies on the body and is sewn to it
	loopEase   = 4 * CM  // neck loop: what the fitting takes up
	beltTurn   = 15 * MM // turned in on each long side of a belt
	headEase   = 1 * CM
	capTurnUp  = 4 * CM // lower edge of the cap, turned up above the eyes
	cornerFree = 12700  // half an inch left unsewn at each corner of the cap
)

// draft holds the sizes of all pieces in washed cloth.
type draft struct {
	bodyLength, bodyWidth Length
	pouch, leg            Length
	legOpen               Length // radius of the leg opening once it is hemmed
	beltLength, beltWidth Length
	capLength, capWidth   Length // round the head, and up
}

func (m Measures) draft() draft {
	var d draft
	// The body goes half round the baby and on round both sides, with ease for the
	// hips; a hem on either side.
	d.bodyWidth = m.Hips/2 + 2*sideWrap + hipEase + 2*m.Hem
	// A leg goes through an opening with the leg's half girth and ease for its radius.
	// Turning the hem in makes the cut curve wider by one hem, so it is cut smaller.
	d.legOpen = m.Thigh/2 + legEase
	d.leg = d.legOpen - m.Hem
	// The pouch is as deep as the leg opening and the seam above it; a hem at its edge.
	d.pouch = d.legOpen + sideSeam + m.Hem
	// Above the fold the back of the baby up to the ear, room to grow, and a hem.
	d.bodyLength = d.pouch + m.Back + turnDown + m.Hem
	// The two side belts and the body between them go round the adult and the baby, with
	// a tail on each to tie; one end laps on the body, the other is hemmed.
	side := (m.Chest+waistEase-(d.bodyWidth-2*m.Hem))/2 + tail + lap + m.Hem
	// The neck loop goes up from one corner, round the nape and down to the other.
	loop := 2*m.Drop + loopEase + 2*lap
	// All three strips are cut alike, so that none is taken for another.
	d.beltLength = max(side, loop)
	// Both long sides meet in the middle: the strip is four turns wide, the belt two.
	d.beltWidth = 4 * beltTurn
	// The cap goes once round the head, with one seam; up, it covers a third of the
	// head's girth, with a turned-up edge, one seam and one hem.
	d.capLength = m.Head + headEase + 2*m.Seam
	d.capWidth = m.Head/3 + capTurnUp + m.Seam + m.Hem
	return d
}
