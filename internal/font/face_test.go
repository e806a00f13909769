package font

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const fontFolder = "../../templates/fonts"

func fontData(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(fontFolder, name+".ttf"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func loadFace(t testing.TB, name string) *Face {
	t.Helper()
	face, err := Parse(name, fontData(t, name))
	if err != nil {
		t.Fatal(err)
	}
	return face
}

// tableIn returns a table of a font file, to be changed in place.
func tableIn(data []byte, tag string) []byte {
	at := strings.Index(string(data[:12+16*be16(data[4:])]), tag)
	offset, size := be32(data[at+8:]), be32(data[at+12:])
	return data[offset : offset+size]
}

func be32(b []byte) int { return be16(b)<<16 | be16(b[2:]) }

func TestParseRefuses(t *testing.T) {
	tests := []struct {
		name   string
		damage func(data []byte) []byte
		want   string
	}{
		{"nothing", func(d []byte) []byte { return nil }, "too short"},
		{"a cut file", func(d []byte) []byte { return d[:len(d)/2] }, "outside the file"},
		{"a flipped bit", func(d []byte) []byte { tableIn(d, "glyf")[99] ^= 1; return d }, "checksum"},
		{"no outlines", func(d []byte) []byte {
			d = []byte(strings.Replace(string(d), "glyf", "CFF ", 1))
			mendChecksums(d)
			return d
		}, "table glyf is missing"},
		{"glyphs past the end", func(d []byte) []byte {
			put16(tableIn(d, "maxp"), 4, 0xFFFF)
			mendChecksums(d)
			return d
		}, "loca is cut short"},
		{"a senseless table", func(d []byte) []byte { // the shaping library panics at it
			gdef := tableIn(d, "GDEF")
			put16(gdef, 2, 2)
			put16(gdef, 12, 0xFFFF)
			mendChecksums(d)
			return d
		}, "malformed"},
		{"a forbidding licence", func(d []byte) []byte {
			put16(tableIn(d, "OS/2"), 8, 2)
			mendChecksums(d)
			return d
		}, "licence forbids"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := Parse("x", test.damage(fontData(t, "NotoNaskhArabic-Regular")))
			if err == nil || !strings.Contains(err.Error(), test.want) {
				t.Errorf("error %v, want one that says %q", err, test.want)
			}
		})
	}
}

func TestMetrics(t *testing.T) {
	face := loadFace(t, "NotoSans-Regular")
	if face.UnitsPerEm != 1000 || face.Ascent != 1069 || face.Descent != -293 {
		t.Errorf("em %d, ascent %d, descent %d", face.UnitsPerEm, face.Ascent, face.Descent)
	}
	if h := face.Height('x'); h != 536 {
		t.Errorf("the x is %d high, want 536", h)
	}
	for _, g := range []int{-1, face.Glyphs()} {
		if face.Advance(g) != 0 {
			t.Errorf("glyph %d has an advance", g)
		}
		if _, _, _, _, ok := face.Bounds(g); ok {
			t.Errorf("glyph %d has an outline", g)
		}
	}
}
