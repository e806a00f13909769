package font

import (
	"fmt"
	"io/fs"
)

// A Family is a face in two weights, and how it sits beside the others.
type Family struct {
	Regular, Bold *Face
	// Scale is how much larger than the nominal size the family is set, so that its
	// base letters look as tall as Latin ones at the same level.
	Scale float64
}

// Face returns the face of a weight.
func (f *Family) Face(bold bool) *Face {
	if bold {
		return f.Bold
	}
	return f.Regular
}

// script says how a script is set: its family, the family's scale and the leading
// it needs, as a multiple of Latin's.
type script struct {
	family  string
	scale   float64
	leading float64
}

// scripts lists the scripts that the embedded fonts can set, by ISO 15924 code.
// Scales bring the base letter (x and H, क, ب with د) to the height of Latin's
// x-height and cap height taken together; TestScales measures them on the outlines.
var scripts = map[string]script{
	"Latn": {"NotoSans", 1, 1},
	"Deva": {"NotoSansDevanagari", 1.04, 1.16},
	"Arab": {"NotoNaskhArabic", 1.2, 1.24},
}

// fallback is the order in which families are tried for what the script's own family lacks.
var fallback = []string{"Latn", "Deva", "Arab"}

// A Library is every family there is.
type Library struct{ families map[string]*Family }

// Load reads the faces of every family from a folder.
func Load(fsys fs.FS) (*Library, error) {
	l := &Library{families: map[string]*Family{}}
	for code, s := range scripts {
		fam := &Family{Scale: s.scale}
		for _, w := range []struct {
			suffix string
			face   **Face
		}{{"-Regular", &fam.Regular}, {"-Bold", &fam.Bold}} {
			b, err := fs.ReadFile(fsys, s.family+w.suffix+".ttf")
			if err != nil {
				return nil, err
			}
			if *w.face, err = Parse(s.family+w.suffix, b); err != nil {
				return nil, err
			}
		}
		l.families[code] = fam
	}
	return l, nil
}

// Chain returns the families to try for text in a script, best first, and the
// leading of the script as a multiple of Latin's.
func (l *Library) Chain(code string) (families []*Family, leading float64, err error) {
	s, ok := scripts[code]
	if !ok {
		return nil, 0, fmt.Errorf("no font for script %s", code)
	}
	families = []*Family{l.families[code]}
	for _, c := range fallback {
		if c != code {
			families = append(families, l.families[c])
		}
	}
	return families, s.leading, nil
}
