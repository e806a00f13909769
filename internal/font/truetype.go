package font

import (
	"encoding/binary"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
)

// Flags of a component, OpenType 1.9, table glyf.
const (
	argsAreWords = 0x0001
	argsAreXY    = 0x0002
	haveScale    = 0x0008
	moreFollow   = 0x0020
	haveXYScale  = 0x0040
	have2x2      = 0x0080
)

var errComponents = errors.New("components are cut short")

// components calls f with the offset of each glyph index in a composite outline.
func components(outline []byte, f func(at int) error) error {
	for at := 10; ; {
		if at+4 > len(outline) {
			return errComponents
		}
		flags := be16(outline[at:])
		size := 6
		if flags&argsAreWords != 0 {
			size = 8
		}
		switch {
		case flags&haveScale != 0:
			size += 2
		case flags&haveXYScale != 0:
			size += 4
		case flags&have2x2 != 0:
			size += 8
		}
		if at+size > len(outline) {
			return errComponents
		}
		if err := f(at + 2); err != nil {
			return err
		}
		at += size
		if flags&moreFollow == 0 {
			return nil
		}
	}
}

// Build returns the subset as a TrueType font, and the glyph of each code in it. It
// holds the glyphs that are needed and a composite glyph for each cluster that no
// single glyph shows. Glyph 0 stays the face's .notdef.
func (s *Subset) Build() (data []byte, glyphs map[int]int, err error) {
	if _, err := s.need(0, 0); err != nil {
		return nil, nil, err
	}
	kept := slices.Sorted(maps.Keys(s.needed))
	index := make(map[int]int, len(kept))
	for i, g := range kept {
		index[g] = i
	}
	b := newBuilder(s.face)
	for _, g := range kept {
		b.copyGlyph(s.face, g, index)
	}
	glyphs = map[int]int{}
	for _, code := range s.Codes() {
		c := s.coded[code]
		if c.own {
			glyphs[code] = index[c.parts[0].Glyph]
			continue
		}
		glyphs[code] = b.glyphs()
		b.compose(s, c, index)
	}
	if b.glyphs() > math.MaxUint16 {
		return nil, nil, fmt.Errorf("font %s: the document needs %d glyphs, more than one font can hold; split the document", s.face.Name, b.glyphs())
	}
	cmap, err := cmapTable(glyphs)
	if err != nil {
		return nil, nil, fmt.Errorf("font %s: %w", s.face.Name, err)
	}
	return assemble(b.tables(s.face, cmap)), glyphs, nil
}

// A builder gathers glyphs and what the font's headers say of all of them.
type builder struct {
	glyf, loca, hmtx []byte
	head, hhea, maxp []byte
}

func newBuilder(f *Face) *builder {
	return &builder{
		head: slices.Clone(f.tables["head"]),
		hhea: slices.Clone(f.tables["hhea"]),
		maxp: slices.Clone(f.tables["maxp"]),
	}
}

func (b *builder) glyphs() int { return len(b.loca) / 4 }

// add appends a glyph with its metrics.
func (b *builder) add(outline []byte, advance, bearing int) {
	b.loca = binary.BigEndian.AppendUint32(b.loca, uint32(len(b.glyf)))
	b.glyf = append(b.glyf, outline...)
	for len(b.glyf)%4 != 0 {
		b.glyf = append(b.glyf, 0)
	}
	b.hmtx = append16(b.hmtx, advance, bearing)
}

// copyGlyph adds a glyph of the face, with its components renumbered.
func (b *builder) copyGlyph(f *Face, glyph int, index map[int]int) {
	outline := f.outline(glyph)
	if len(outline) > 0 && bes16(outline) < 0 {
		outline = slices.Clone(outline)
		components(outline, func(at int) error { // need has read it without error
			binary.BigEndian.PutUint16(outline[at:], uint16(index[be16(outline[at:])]))
			return nil
		})
	}
	b.add(outline, f.Advance(glyph), f.bearing(glyph))
}

// compose adds one composite glyph that shows a whole cluster.
func (b *builder) compose(s *Subset, c *coded, index map[int]int) {
	var visible []Part // a space inside a cluster leaves no mark
	for _, p := range c.parts {
		if len(s.face.outline(p.Glyph)) > 0 {
			visible = append(visible, p)
		}
	}
	if len(visible) == 0 {
		b.add(nil, c.advance, 0)
		return
	}
	x0, y0, x1, y1 := math.MaxInt, math.MaxInt, math.MinInt, math.MinInt
	var sum extent
	var body []byte
	for i, p := range visible {
		flags := argsAreXY | argsAreWords
		if i+1 < len(visible) {
			flags |= moreFollow
		}
		body = append16(body, flags, index[p.Glyph], p.X, p.Y)
		left, bottom, right, top, _ := s.face.Bounds(p.Glyph)
		x0, y0, x1, y1 = min(x0, left+p.X), min(y0, bottom+p.Y), max(x1, right+p.X), max(y1, top+p.Y)
		e := s.needed[p.Glyph]
		sum = extent{sum.points + e.points, sum.contours + e.contours, max(sum.depth, e.depth+1)}
	}
	b.add(append(append16(nil, -1, x0, y0, x1, y1), body...), c.advance, x0)

	// Some renderers clip to the font's box, so it must hold the composites, too.
	put16(b.head, 36, min(bes16(b.head[36:]), x0))
	put16(b.head, 38, min(bes16(b.head[38:]), y0))
	put16(b.head, 40, max(bes16(b.head[40:]), x1))
	put16(b.head, 42, max(bes16(b.head[42:]), y1))
	raise16(b.hhea, 10, c.advance)
	raise16(b.maxp, 10, sum.points)
	raise16(b.maxp, 12, sum.contours)
	raise16(b.maxp, 28, len(visible))
	raise16(b.maxp, 30, sum.depth)
}

// tables returns the finished tables. name is empty: the document names the font.
func (b *builder) tables(f *Face, cmap []byte) map[string][]byte {
	n := b.glyphs()
	put16(b.head, 50, 1) // long offsets in loca
	put16(b.hhea, 34, n)
	put16(b.maxp, 4, n)
	clear(b.head[8:12]) // the sum over the whole file, set last
	post := append16(nil, 3, 0)
	post = append(post, f.tables["post"][4:16]...)
	t := map[string][]byte{
		"OS/2": f.tables["OS/2"],
		"cmap": cmap,
		"glyf": b.glyf,
		"head": b.head,
		"hhea": b.hhea,
		"hmtx": b.hmtx,
		"loca": binary.BigEndian.AppendUint32(b.loca, uint32(len(b.glyf))),
		"maxp": b.maxp,
		"name": append16(nil, 0, 0, 6),
		"post": append(post, make([]byte, 16)...),
	}
	for _, tag := range []string{"cvt ", "fpgm", "prep"} { // the glyphs' instructions need them
		if len(f.tables[tag]) > 0 {
			t[tag] = f.tables[tag]
		}
	}
	return t
}

// cmapTable returns a table cmap with one subtable of format 4 for platform 3, encoding 1.
func cmapTable(glyphs map[int]int) ([]byte, error) {
	var starts, ends, deltas []int
	for _, code := range slices.Sorted(maps.Keys(glyphs)) {
		delta := (glyphs[code] - code) & 0xFFFF
		if last := len(ends) - 1; last >= 0 && ends[last] == code-1 && deltas[last] == delta {
			ends[last] = code
			continue
		}
		starts, ends, deltas = append(starts, code), append(ends, code), append(deltas, delta)
	}
	starts, ends, deltas = append(starts, 0xFFFF), append(ends, 0xFFFF), append(deltas, 1)
	n := len(ends)
	length := 16 + 8*n
	if length > math.MaxUint16 {
		return nil, fmt.Errorf("the document's characters lie in %d separate ranges, too many for one font; split the document", n)
	}
	search, log := powerOfTwo(n)
	t := append16(nil, 0, 1, 3, 1, 0, 12)
	t = append16(t, 4, length, 0, 2*n, 2*search, log, 2*(n-search))
	t = append16(t, ends...)
	t = append16(t, 0)
	t = append16(t, starts...)
	t = append16(t, deltas...)
	return append16(t, make([]int, n)...), nil
}

// assemble writes tables as one font file.
func assemble(tables map[string][]byte) []byte {
	n := len(tables)
	search, log := powerOfTwo(n)
	file := append16([]byte{0, 1, 0, 0}, n, 16*search, log, 16*(n-search))
	at := 12 + 16*n
	var body []byte
	head := 0
	for _, tag := range slices.Sorted(maps.Keys(tables)) {
		data := tables[tag]
		if tag == "head" {
			head = at + len(body)
		}
		file = append(file, tag...)
		for _, v := range []int{int(checksum(data)), at + len(body), len(data)} {
			file = binary.BigEndian.AppendUint32(file, uint32(v))
		}
		body = append(body, data...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	file = append(file, body...)
	binary.BigEndian.PutUint32(file[head+8:], 0xB1B0AFBA-checksum(file))
	return file
}

// checksum adds a table up as the OpenType specification wants it.
func checksum(data []byte) (sum uint32) {
	for ; len(data) >= 4; data = data[4:] {
		sum += binary.BigEndian.Uint32(data)
	}
	var last [4]byte
	copy(last[:], data)
	return sum + binary.BigEndian.Uint32(last[:])
}

// powerOfTwo returns the largest power of two that is not above n, and its logarithm.
func powerOfTwo(n int) (power, log int) {
	for power = 1; power*2 <= n; power *= 2 {
		log++
	}
	return power, log
}

func append16(b []byte, values ...int) []byte {
	for _, v := range values {
		b = binary.BigEndian.AppendUint16(b, uint16(v))
	}
	return b
}

// raise16 makes an unsigned value at least v.
func raise16(b []byte, at, v int) { put16(b, at, max(be16(b[at:]), min(v, math.MaxUint16))) }

func put16(b []byte, at, v int) { binary.BigEndian.PutUint16(b[at:], uint16(v)) }
