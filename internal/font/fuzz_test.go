package font

import (
	"encoding/binary"
	"testing"
)

// FuzzParse changes a sound font at a few places. Parsing must not panic, and a face
// that was accepted must stand every question, subsetting included.
func FuzzParse(f *testing.F) {
	sound := fontData(f, "NotoNaskhArabic-Regular")
	f.Add(true, []byte{})
	f.Add(false, []byte{0, 0, 0, 5, 0xFF})                              // number of tables
	f.Add(false, []byte{0, 1, 0, 0, 0xFF})                              // damage that the checksum shows
	f.Add(true, []byte{0, 0, 0, 30, 0, 0, 1, 0, 200, 7, 0, 2, 0, 9, 0}) // several places
	f.Add(true, []byte{0, 0, 16, 0})                                    // cut short
	f.Fuzz(func(t *testing.T, mended bool, damage []byte) {
		data := append([]byte(nil), sound...)
		for ; len(damage) >= 5; damage = damage[5:] { // an offset, then a byte to put there
			data[int(binary.BigEndian.Uint32(damage))%len(data)] = damage[4]
		}
		if len(damage) == 4 {
			data = data[:int(binary.BigEndian.Uint32(damage))%len(data)]
		}
		if mended {
			mendChecksums(data)
		}
		face, err := Parse("damaged", data)
		if err != nil {
			return
		}
		for _, r := range "سلام، 12" {
			face.Has(r)
			face.Height(r)
		}
		s := NewSubset(face)
		for g := -1; g <= face.Glyphs(); g++ {
			face.Advance(g)
			face.Bounds(g)
			s.Code("x", []Part{{g, 0, 0}}, 0)
			s.Code("y", []Part{{g, 0, 0}, {g, 300, -300}}, 0)
		}
		s.Build()
	})
}

// mendChecksums makes the table checksums right, where the directory can be read.
func mendChecksums(data []byte) {
	for at := 12; at+16 <= len(data) && at < 12+16*be16(data[4:]); at += 16 {
		offset, size := int(binary.BigEndian.Uint32(data[at+8:])), int(binary.BigEndian.Uint32(data[at+12:]))
		if offset+size > len(data) {
			continue
		}
		sum := checksum(data[offset : offset+size])
		if string(data[at:at+4]) == "head" && size >= 12 {
			sum -= binary.BigEndian.Uint32(data[offset+8:])
		}
		binary.BigEndian.PutUint32(data[at+4:], sum)
	}
}
