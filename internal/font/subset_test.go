package font

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// glyph returns the nominal glyph of a character.
func glyph(t *testing.T, f *Face, r rune) int {
	t.Helper()
	g, ok := f.shaping.NominalGlyph(r)
	if !ok {
		t.Fatalf("no glyph for %c", r)
	}
	return int(g)
}

func code(t *testing.T, s *Subset, text string, parts []Part, advance int) int {
	t.Helper()
	c, err := s.Code(text, parts, advance)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestCodes(t *testing.T) {
	f := loadFace(t, "NotoSans-Regular")
	a, acute := glyph(t, f, 'a'), glyph(t, f, '\u0301')
	s := NewSubset(f)
	for _, test := range []struct {
		name  string
		text  string
		parts []Part
		want  int
	}{
		{"one nominal glyph", "a", []Part{{a, 0, 0}}, 'a'},
		{"a space", " ", []Part{{glyph(t, f, ' '), 0, 0}}, ' '},
		{"a moved glyph", "a", []Part{{a, 0, 10}}, 0xE000},
		{"two glyphs", "a\u0301", []Part{{a, 0, 0}, {acute, 5, 0}}, 0xE001},
		{"the same, elsewhere", "a\u0301", []Part{{a, 0, 0}, {acute, 6, 0}}, 0xE002},
		{"the first two again", "a\u0301", []Part{{a, 0, 0}, {acute, 5, 0}}, 0xE001},
		{"another glyph than the nominal", "b", []Part{{a, 0, 0}}, 0xE003},
		{"a character above U+FFFF", "\U0001F600", []Part{{0, 0, 0}}, 0xE004},
		{"a missing character", "क", []Part{{0, 0, 0}}, 0xE005},
		{"two characters in one glyph", "ffi", []Part{{a, 0, 0}}, 0xE006},
		{"no text", "", []Part{{a, 0, 0}}, 0xE007},
		{"a control character", "\t", []Part{{a, 0, 0}}, 0xE008},
	} {
		advance := f.Advance(test.parts[0].Glyph)
		if len(test.parts) > 1 {
			advance = 700
		}
		if got := code(t, s, test.text, test.parts, advance); got != test.want {
			t.Errorf("%s: code %04X, want %04X", test.name, got, test.want)
		}
		if got := s.Text(test.want); got != test.text {
			t.Errorf("%s: code %04X stands for %q, want %q", test.name, test.want, got, test.text)
		}
	}
	if got := s.Advance('a'); got != f.Advance(a) {
		t.Errorf("a single glyph has the advance %d, want its own %d", got, f.Advance(a))
	}
	if got := s.Advance(0xE001); got != 700 {
		t.Errorf("a composed glyph has the advance %d, want the cluster's 700", got)
	}
}

// TestWideClusters gives a cluster another code when it is so much wider than before
// that readers would take the white after it for a space.
func TestWideClusters(t *testing.T) {
	f := loadFace(t, "NotoSans-Regular")
	a, acute := glyph(t, f, 'a'), glyph(t, f, '\u0301')
	single, double := []Part{{a, 0, 0}}, []Part{{a, 0, 0}, {acute, 5, 0}}
	own := f.Advance(a)
	s := NewSubset(f)
	for _, test := range []struct {
		text          string
		parts         []Part
		advance, code int
		stated        int
	}{
		{"a", single, own + 80, 'a', own},
		{"a", single, own + 200, 0xE000, own + 200},
		{"a", single, own - 300, 'a', own},
		{"a", single, own + 200, 0xE000, own + 200},
		{"á", double, 500, 0xE001, 500},
		{"á", double, 580, 0xE001, 500},
		{"á", double, 700, 0xE002, 700},
		{"á", double, 700, 0xE002, 700},
	} {
		got := code(t, s, test.text, test.parts, test.advance)
		if got != test.code || s.Advance(got) != test.stated {
			t.Errorf("%q with advance %d: code %04X with advance %d, want %04X with %d", test.text, test.advance, got, s.Advance(got), test.code, test.stated)
		}
	}
	data, glyphs, err := s.Build()
	if err != nil {
		t.Fatal(err)
	}
	b, err := Parse("subset", data)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range s.Codes() {
		if b.Advance(glyphs[c]) != s.Advance(c) {
			t.Errorf("code %04X: advance %d in the font, %d stated", c, b.Advance(glyphs[c]), s.Advance(c))
		}
	}
}

func TestCodeRefuses(t *testing.T) {
	f := loadFace(t, "NotoSans-Regular")
	for _, test := range []struct {
		parts []Part
		want  string
	}{
		{nil, "has no glyph"},
		{[]Part{{f.Glyphs(), 0, 0}}, "there is no glyph"},
		{[]Part{{-1, 0, 0}}, "there is no glyph"},
		{[]Part{{5, 0, 40000}}, "too far away"},
	} {
		_, err := NewSubset(f).Code("x", test.parts, 0)
		if err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%v: error %v, want one that says %q", test.parts, err, test.want)
		}
	}
}

// TestCodesRunOut asks for more clusters than 16 bits can number.
func TestCodesRunOut(t *testing.T) {
	s := NewSubset(loadFace(t, "NotoSans-Regular"))
	seen := map[int]bool{}
	for i := 0; ; i++ {
		c, err := s.Code("x", []Part{{5, i % 500, i / 500}}, 0)
		if err != nil {
			if !strings.Contains(err.Error(), "split the document") || len(seen) < 60000 {
				t.Errorf("after %d codes: %v", len(seen), err)
			}
			break
		}
		if seen[c] || c < 0x20 || c > 0xFFFD || c >= 0xD800 && c <= 0xDFFF {
			t.Fatalf("cluster %d got the code %04X", i, c)
		}
		seen[c] = true
	}
	if _, _, err := s.Build(); err != nil {
		t.Error(err)
	}
}

func TestBuild(t *testing.T) {
	f := loadFace(t, "NotoSans-Regular")
	a, acute := glyph(t, f, 'a'), glyph(t, f, '\u0301')
	s := NewSubset(f)
	far := code(t, s, "aa", []Part{{a, 0, 0}, {a, 5000, 3000}, {acute, -4000, -2000}}, 9000)
	blank := code(t, s, "  ", []Part{{glyph(t, f, ' '), 0, 0}, {glyph(t, f, ' '), 260, 0}}, 520)
	code(t, s, "é", []Part{{glyph(t, f, 'é'), 0, 0}}, 0)
	missing := code(t, s, "क", []Part{{0, 0, 0}}, 600)
	data, glyphs, err := s.Build()
	if err != nil {
		t.Fatal(err)
	}
	again, _, _ := s.Build()
	if !bytes.Equal(data, again) {
		t.Error("two builds differ")
	}
	b, err := Parse("subset", data)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range s.Codes() {
		g, ok := b.shaping.NominalGlyph(rune(c))
		if c != missing && (!ok || int(g) != glyphs[c]) {
			t.Errorf("cmap leads from %04X to glyph %d, want %d", c, g, glyphs[c])
		}
		if b.Advance(glyphs[c]) != s.Advance(c) {
			t.Errorf("code %04X: advance %d in the font, %d stated", c, b.Advance(glyphs[c]), s.Advance(c))
		}
	}
	if glyphs[missing] != 0 {
		t.Errorf("a missing character is shown by glyph %d, want .notdef", glyphs[missing])
	}
	if _, _, _, _, ok := b.Bounds(glyphs[blank]); ok {
		t.Error("two spaces have an outline")
	}
	x0, y0, x1, y1, _ := b.Bounds(glyphs[far])
	ax0, ay0, ax1, ay1, _ := f.Bounds(a)
	mx0, my0, _, _, _ := f.Bounds(acute)
	if x0 != min(ax0, mx0-4000) || y0 != min(ay0, my0-2000) || x1 != ax1+5000 || y1 != ay1+3000 {
		t.Errorf("bounds %d %d %d %d", x0, y0, x1, y1)
	}
	head := b.tables["head"]
	if bes16(head[36:]) > x0 || bes16(head[38:]) > y0 || bes16(head[40:]) < x1 || bes16(head[42:]) < y1 {
		t.Error("the font's box does not hold the composed glyph")
	}
	if w := be16(b.tables["hhea"][10:]); w < 9000 {
		t.Errorf("advanceWidthMax %d, want at least 9000", w)
	}
	if be16(b.tables["maxp"][28:]) < 3 || be16(b.tables["maxp"][30:]) < 1 {
		t.Error("maxp does not count the components")
	}
}

// TestSubsetLoads has fontTools read every table and glyph of a subset.
func TestSubsetLoads(t *testing.T) {
	python := pythonWith(t, "fontTools")
	for _, name := range []string{"NotoSans-Bold", "NotoSansDevanagari-Regular", "NotoNaskhArabic-Regular"} {
		f := loadFace(t, name)
		s := NewSubset(f)
		for g := 0; g < f.Glyphs(); g += 3 {
			code(t, s, "x", []Part{{g, 0, 0}}, 0)
			code(t, s, "xy", []Part{{g, 0, 0}, {g/2 + 1, 400, -30}}, 900)
		}
		data, _, err := s.Build()
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), name+".ttf")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		const script = `
import sys
from fontTools.ttLib import TTFont
font = TTFont(sys.argv[1], checkChecksums=2)
font.ensureDecompiled()
glyphs = font["glyf"]
before = {g: (glyphs[g].xMin, glyphs[g].yMin, glyphs[g].xMax, glyphs[g].yMax) for g in glyphs.keys() if glyphs[g].numberOfContours}
for g in before:
    glyphs[g].expand(glyphs)
    glyphs[g].recalcBounds(glyphs)
    after = (glyphs[g].xMin, glyphs[g].yMin, glyphs[g].xMax, glyphs[g].yMax)
    assert max(abs(a - b) for a, b in zip(before[g], after)) <= 1, (g, before[g], after)
stated = {k: getattr(font["maxp"], k) for k in ("maxComponentElements", "maxComponentDepth", "maxCompositePoints", "maxCompositeContours")}
font["maxp"].recalc(font)
for k, v in stated.items():
    assert v >= getattr(font["maxp"], k), (k, v)
`
		if out, err := exec.Command(python, "-c", script, path).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
}

// pythonWith returns a Python that has a module.
func pythonWith(t *testing.T, module string) string {
	t.Helper()
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(python, "-c", "import "+module).Run() == nil {
			return python
		}
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("no Python with %s here", module)
	}
	t.Skipf("no Python with %s here", module)
	return ""
}
