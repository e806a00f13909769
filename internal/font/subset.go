package font

import (
	"encoding/binary"
	"fmt"
	"math"
	"slices"
	"unicode/utf8"
)

// A Part is one glyph of a cluster. Its place is in font units from the cluster's
// origin on the baseline, y upwards.
type Part struct{ Glyph, X, Y int }

// A Subset is the small font one document needs of a face. Every distinct cluster
// of shaped text gets one 16-bit code and one glyph, so that a reader of the
// document can turn each code back into the cluster's text.
//
// Codes are given in the order they are asked for. A Subset is not safe for use by
// several goroutines.
type Subset struct {
	face   *Face
	codes  map[string]int
	coded  map[int]*coded
	needed map[int]extent // glyphs of the face that go into the subset
	spare  int            // index into spareCodes
	next   int            // next spare code to try
	key    []byte
}

type coded struct {
	text    string
	parts   []Part
	advance int
	own     bool // one glyph of the face shows it, with the advance it has there
}

// extent is what the table maxp counts of one glyph.
type extent struct{ points, contours, depth int }

// spareCodes are used where a cluster has no code point of its own: first the
// Private Use Area, then whatever is free. Surrogates are not code points, and
// U+FFFE and U+FFFF are not characters.
var spareCodes = [][2]int{{0xE000, 0xF8FF}, {0x3400, 0xD7FF}, {0xF900, 0xFFFD}, {0x0020, 0x33FF}}

// maxDepth is how deep composite glyphs may be nested; no sound font comes near.
const maxDepth = 8

// NewSubset returns an empty subset of a face.
func NewSubset(face *Face) *Subset {
	return &Subset{
		face:   face,
		codes:  map[string]int{},
		coded:  map[int]*coded{},
		needed: map[int]extent{},
		next:   spareCodes[0][0],
	}
}

// Face returns the face the subset is of.
func (s *Subset) Face() *Face { return s.face }

// Code returns the code of a cluster and gives it one when it is new. The code is
// the text's own code point where the cluster is one character shown by its nominal
// glyph. advance is in font units; the same cluster asked for again keeps the
// advance it had at first, unless it has become wider by so much that readers would
// see a space in it.
func (s *Subset) Code(text string, parts []Part, advance int) (int, error) {
	s.key = append(append(s.key[:0], text...), 0)
	for _, p := range parts {
		s.key = binary.AppendVarint(s.key, int64(p.Glyph))
		s.key = binary.AppendVarint(s.key, int64(p.X))
		s.key = binary.AppendVarint(s.key, int64(p.Y))
	}
	if code, ok := s.codes[string(s.key)]; ok {
		if advance-s.coded[code].advance < s.gap() {
			return code, nil
		}
		s.key = binary.AppendVarint(s.key, int64(advance))
		if code, ok := s.codes[string(s.key)]; ok {
			return code, nil
		}
	}
	if len(parts) == 0 {
		return 0, fmt.Errorf("font %s: the cluster %q has no glyph", s.face.Name, text)
	}
	for _, p := range parts {
		if _, err := s.need(p.Glyph, 0); err != nil {
			return 0, err
		}
		x0, y0, x1, y1, _ := s.face.Bounds(p.Glyph)
		for _, v := range []int{x0 + p.X, y0 + p.Y, x1 + p.X, y1 + p.Y, p.X, p.Y} {
			if v < math.MinInt16 || v > math.MaxInt16 {
				return 0, fmt.Errorf("font %s: a glyph of the cluster %q is placed too far away for a TrueType font", s.face.Name, text)
			}
		}
	}
	own := len(parts) == 1 && parts[0].X == 0 && parts[0].Y == 0 && advance-s.face.Advance(parts[0].Glyph) < s.gap()
	code, err := s.free(text, parts, own)
	if err != nil {
		return 0, err
	}
	if own {
		advance = s.face.Advance(parts[0].Glyph)
	}
	s.codes[string(s.key)] = code
	s.coded[code] = &coded{text, slices.Clone(parts), min(max(advance, 0), math.MaxInt16), own}
	return code, nil
}

// gap is how much white after a glyph readers may take for a space.
func (s *Subset) gap() int { return s.face.UnitsPerEm / 12 }

// free chooses a code that is not taken. own says that a glyph of
// the face itself shows the cluster.
func (s *Subset) free(text string, parts []Part, own bool) (int, error) {
	r, size := utf8.DecodeRuneInString(text)
	private := r >= 0xE000 && r <= 0xF8FF
	if own && size == len(text) && r >= 0x20 && r < 0xFFFD && !private {
		g, ok := s.face.shaping.NominalGlyph(r)
		if ok && int(g) == parts[0].Glyph && s.coded[int(r)] == nil {
			return int(r), nil
		}
	}
	for {
		if s.next > spareCodes[s.spare][1] {
			if s.spare+1 == len(spareCodes) {
				return 0, fmt.Errorf("font %s: the document needs more than %d different clusters, which one font cannot hold; split the document", s.face.Name, len(s.coded))
			}
			s.spare++
			s.next = spareCodes[s.spare][0]
		}
		code := s.next
		s.next++
		if s.coded[code] == nil {
			return code, nil
		}
	}
}

// need notes that a glyph, and every glyph it is composed of, goes into the subset.
func (s *Subset) need(glyph, depth int) (extent, error) {
	if e, ok := s.needed[glyph]; ok {
		return e, nil
	}
	if glyph < 0 || glyph >= s.face.Glyphs() {
		return extent{}, fmt.Errorf("font %s: there is no glyph %d; the text was not shaped with this face", s.face.Name, glyph)
	}
	if depth > maxDepth {
		return extent{}, fmt.Errorf("font %s: glyph %d is composed of itself", s.face.Name, glyph)
	}
	var e extent
	outline := s.face.outline(glyph)
	switch {
	case len(outline) == 0: // a space
	case len(outline) < 10:
		return extent{}, s.damaged(glyph)
	case bes16(outline) < 0:
		err := components(outline, func(at int) error {
			part, err := s.need(be16(outline[at:]), depth+1)
			e.points += part.points
			e.contours += part.contours
			e.depth = max(e.depth, part.depth+1)
			return err
		})
		if err == errComponents {
			err = s.damaged(glyph)
		}
		if err != nil {
			return extent{}, err
		}
	case bes16(outline) > 0:
		e.contours = bes16(outline)
		if len(outline) < 10+2*e.contours {
			return extent{}, s.damaged(glyph)
		}
		e.points = be16(outline[8+2*e.contours:]) + 1
	}
	s.needed[glyph] = e
	return e, nil
}

func (s *Subset) damaged(glyph int) error {
	return fmt.Errorf("font %s: the outline of glyph %d is damaged; use a sound copy of the font", s.face.Name, glyph)
}

// Codes returns the codes given so far, in ascending order.
func (s *Subset) Codes() []int {
	codes := make([]int, 0, len(s.coded))
	for c := range s.coded {
		codes = append(codes, c)
	}
	slices.Sort(codes)
	return codes
}

// Text returns the text a code stands for.
func (s *Subset) Text(code int) string {
	if c := s.coded[code]; c != nil {
		return c.text
	}
	return ""
}

// Advance returns the advance width that the subset states for a code, in font units.
func (s *Subset) Advance(code int) int {
	if c := s.coded[code]; c != nil {
		return c.advance
	}
	return 0
}
