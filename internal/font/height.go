package font

import "unicode/utf8"

// BaseHeight returns how tall the base letters of a script stand when text is set at
// a nominal size of one: their outlines as measured in the font, times the scale the
// family is set at. It is what legibility at a distance is worked out from, since
// points say little about how tall letters look.
//
// The letter measured is the last of those named in scripts: in Latin H, in Arabic
// alif; where all base letters are of one height, any of them. A family that keeps
// its letters under other glyphs (Nastaliq) is taken to be as tall as its scale makes
// it: half way between x and H.
func (l *Library) BaseHeight(code string) (float64, error) {
	if _, _, err := l.Chain(code); err != nil {
		return 0, err
	}
	letter, _ := utf8.DecodeLastRuneInString(scripts[code].base)
	f := l.families[code]
	if h := f.Face(false).Height(letter); h > 0 {
		return f.Scale * float64(h) / 1000, nil
	}
	latn := l.families[latin].Face(false)
	return float64(latn.Height('x')+latn.Height('H')) / 2000, nil
}
