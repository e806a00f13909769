package font

import (
	"os"
	"slices"
	"testing"

	gotext "github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
)

func loadLibrary(t testing.TB) *Library {
	t.Helper()
	l, err := Load(os.DirFS(fontFolder))
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// letterHeight returns how far a letter standing alone rises above the baseline, in
// thousandths of an em. It is shaped, for in Nastaliq a character's nominal glyph is empty.
func letterHeight(f *Face, letter rune) int {
	b := harfbuzz.NewBuffer()
	b.AddRunes([]rune{letter}, 0, 1)
	b.GuessSegmentProperties()
	b.Shape(harfbuzz.NewFont(gotext.NewFace(f.Shaping())), nil)
	top := 0
	for i, g := range b.Info {
		if _, _, _, y1, ok := f.Bounds(int(g.Glyph)); ok {
			top = max(top, y1+int(b.Pos[i].YOffset))
		}
	}
	return top * 1000 / f.UnitsPerEm
}

// TestScales measures the base letters of every script on the outlines: at one nominal
// size they are as tall as Latin's to a twentieth. Bold letters are as
// tall beside regular ones as they were drawn, in Arabic letters a little taller.
func TestScales(t *testing.T) {
	l := loadLibrary(t)
	mean := func(code string) float64 {
		sum, n := 0, 0
		for _, letter := range scripts[code].base {
			sum += letterHeight(l.families[code].Face(false), letter)
			n++
		}
		return l.families[code].Scale * float64(sum) / float64(n)
	}
	for _, code := range fallback {
		ratio := mean(code) / mean(latin)
		t.Logf("%s: %.3f of Latin", code, ratio)
		if ratio < 0.95 || ratio > 1.05 {
			t.Errorf("%s: base letters are %.3f as tall as Latin's, want 0.95 to 1.05", code, ratio)
		}
	}
}

// TestChain has the script's own family come first, and every other after it.
func TestChain(t *testing.T) {
	l := loadLibrary(t)
	for code := range scripts {
		chain, leading, err := l.Chain(code)
		if err != nil {
			t.Fatal(err)
		}
		var order []string
		for _, f := range chain {
			order = append(order, f.Script)
		}
		if order[0] != code || code != latin && order[1] != latin || len(order) != len(scripts) || leading < 1 {
			t.Errorf("%s: families %v, leading %v", code, order, leading)
		}
		slices.Sort(order)
		if len(slices.Compact(order)) != len(scripts) {
			t.Errorf("%s: a family comes twice", code)
		}
	}
	if _, _, err := l.Chain("Hans"); err == nil {
		t.Error("a script without a font was accepted")
	}
}

// TestFacesAreRead parses every face of the folder, and finds the letters it is there for.
func TestFacesAreRead(t *testing.T) {
	l := loadLibrary(t)
	for code, s := range scripts {
		f := l.families[code]
		if _, err := f.faces(); err != nil {
			t.Error(err)
			continue
		}
		for _, letter := range s.base {
			if !f.Has(letter, false) || !f.Has(letter, true) {
				t.Errorf("%s has no %c", s.family, letter)
			}
		}
		if _, err := os.Stat(fontFolder + "/" + s.family + "-OFL.txt"); err != nil {
			t.Errorf("the licence of %s is missing: %v", s.family, err)
		}
	}
}
