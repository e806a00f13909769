// Package font holds faces, their coverage and outlines, the families each script
// is set in, and the subset of a face that one document needs.
//
// Faces are static TrueType fonts (glyf outlines). Shaping is not done here.
package font

import (
	"bytes"
	"encoding/binary"
	"fmt"

	gotext "github.com/go-text/typesetting/font"
)

// A Face is one TrueType font. It is safe for use by several goroutines.
type Face struct {
	Name            string // PostScript name, such as NotoSans-Bold
	UnitsPerEm      int
	Ascent, Descent int // font units; Descent is negative

	shaping *gotext.Font
	tables  map[string][]byte
	loca    []int // glyph offsets into glyf, one more than there are glyphs
	metrics int   // numberOfHMetrics
}

// Parse reads a TrueType font. It keeps data, which must not change afterwards.
func Parse(name string, data []byte) (*Face, error) {
	f := &Face{Name: name, tables: map[string][]byte{}}
	if len(data) < 12 {
		return nil, fmt.Errorf("font %s: too short to be a TrueType font", name)
	}
	n := int(binary.BigEndian.Uint16(data[4:]))
	for i := range n {
		if len(data) < 12+16*(i+1) {
			return nil, fmt.Errorf("font %s: table directory is cut short", name)
		}
		rec := data[12+16*i:]
		off, size := int(binary.BigEndian.Uint32(rec[8:])), int(binary.BigEndian.Uint32(rec[12:]))
		if off < 0 || size < 0 || off+size > len(data) {
			return nil, fmt.Errorf("font %s: table %q lies outside the file", name, rec[:4])
		}
		table := data[off : off+size]
		sum := checksum(table)
		if string(rec[:4]) == "head" && size >= 12 {
			sum -= binary.BigEndian.Uint32(table[8:]) // the sum over the file is not part of it
		}
		if sum != binary.BigEndian.Uint32(rec[4:]) {
			return nil, fmt.Errorf("font %s: table %q does not add up to its checksum: the file is damaged; take a fresh copy of it", name, rec[:4])
		}
		f.tables[string(rec[:4])] = table
	}
	for _, t := range []struct {
		tag   string
		least int
	}{{"head", 54}, {"hhea", 36}, {"maxp", 32}, {"hmtx", 4}, {"loca", 4}, {"glyf", 1}, {"post", 16}, {"OS/2", 78}} {
		if len(f.tables[t.tag]) < t.least {
			return nil, fmt.Errorf("font %s: table %s is missing or cut short (only static TrueType fonts with glyf outlines can be used)", name, t.tag)
		}
	}
	// fsType: 2 forbids embedding, 0x0100 subsetting, 0x0200 embedding outlines.
	if kind := be16(f.tables["OS/2"][8:]); kind&0xF == 2 || kind&0x0300 != 0 {
		return nil, fmt.Errorf("font %s: its licence forbids embedding a subset (fsType %#x); use a font under an open licence", name, kind)
	}
	f.UnitsPerEm = be16(f.tables["head"][18:])
	f.Ascent, f.Descent = bes16(f.tables["hhea"][4:]), bes16(f.tables["hhea"][6:])
	f.metrics = be16(f.tables["hhea"][34:])
	glyphs := be16(f.tables["maxp"][4:])
	long := be16(f.tables["head"][50:]) == 1
	loca := f.tables["loca"]
	for i := 0; i <= glyphs; i++ {
		var o int
		switch {
		case long && len(loca) >= 4*i+4:
			o = int(binary.BigEndian.Uint32(loca[4*i:]))
		case !long && len(loca) >= 2*i+2:
			o = 2 * be16(loca[2*i:])
		default:
			return nil, fmt.Errorf("font %s: table loca is cut short", name)
		}
		if o > len(f.tables["glyf"]) || i > 0 && o < f.loca[i-1] {
			return nil, fmt.Errorf("font %s: glyph %d lies outside table glyf", name, i)
		}
		f.loca = append(f.loca, o)
	}
	if f.UnitsPerEm == 0 || f.metrics == 0 || f.metrics > glyphs || len(f.tables["hmtx"]) < 4*f.metrics+2*(glyphs-f.metrics) {
		return nil, fmt.Errorf("font %s: tables head, hhea and hmtx disagree", name)
	}
	var err error
	if f.shaping, err = parseShaping(data); err != nil {
		return nil, fmt.Errorf("font %s: %w", name, err)
	}
	return f, nil
}

// parseShaping reads the font for the shaping library, which panics at some tables
// (GDEF, cmap) that are whole but senseless.
func parseShaping(data []byte) (f *gotext.Font, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("a table is malformed (%v); the font cannot be used", p)
		}
	}()
	face, err := gotext.ParseTTF(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	return face.Font, nil
}

// Shaping returns the font as the shaping library knows it. Each goroutine makes
// its own face from it.
func (f *Face) Shaping() *gotext.Font { return f.shaping }

// Has reports whether the face has a glyph for a code point.
func (f *Face) Has(r rune) bool {
	_, ok := f.shaping.NominalGlyph(r)
	return ok
}

// Glyphs returns how many glyphs the face has.
func (f *Face) Glyphs() int { return len(f.loca) - 1 }

// Advance returns the advance width of a glyph in font units, 0 when there is no such glyph.
func (f *Face) Advance(glyph int) int {
	if glyph < 0 || glyph >= f.Glyphs() {
		return 0
	}
	if glyph >= f.metrics {
		glyph = f.metrics - 1
	}
	return be16(f.tables["hmtx"][4*glyph:])
}

// bearing returns the left side bearing of a glyph in font units.
func (f *Face) bearing(glyph int) int {
	if glyph < f.metrics {
		return bes16(f.tables["hmtx"][4*glyph+2:])
	}
	return bes16(f.tables["hmtx"][4*f.metrics+2*(glyph-f.metrics):])
}

// Bounds returns the box of a glyph's outline in font units. ok is false when it has none.
func (f *Face) Bounds(glyph int) (x0, y0, x1, y1 int, ok bool) {
	d := f.outline(glyph)
	if len(d) < 10 {
		return 0, 0, 0, 0, false
	}
	return bes16(d[2:]), bes16(d[4:]), bes16(d[6:]), bes16(d[8:]), true
}

// Height returns how far the glyph of a code point rises above the baseline, in
// thousandths of an em. It is how base letters of different scripts are compared.
func (f *Face) Height(r rune) int {
	g, ok := f.shaping.NominalGlyph(r)
	if !ok {
		return 0
	}
	_, _, _, y1, _ := f.Bounds(int(g))
	return y1 * 1000 / f.UnitsPerEm
}

// outline returns the glyf entry of a glyph, empty when it has no outline.
func (f *Face) outline(glyph int) []byte {
	if glyph < 0 || glyph >= len(f.loca)-1 {
		return nil
	}
	return f.tables["glyf"][f.loca[glyph]:f.loca[glyph+1]]
}

func be16(b []byte) int  { return int(binary.BigEndian.Uint16(b)) }
func bes16(b []byte) int { return int(int16(binary.BigEndian.Uint16(b))) }
