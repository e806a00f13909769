package font

import (
	"fmt"
	"io/fs"
	"sync"
)

// A Family is a face in two weights, and how it sits beside the others. Its faces
// are read when the first of them is asked for. It is safe for use by several
// goroutines.
type Family struct {
	Script string // ISO 15924
	// Scale is how much larger than the nominal size the family is set, so that its
	// base letters look as tall as Latin ones at the same level.
	Scale float64
	// WholeWords: letters of a word stand on baselines of their own, so that a
	// word cannot be taken apart into letters that stand side by side.
	WholeWords bool
	// Space is how wide a space is at least, in thousandths of an em: wide enough for
	// new readers to see where a word ends, which the space of Nastaliq is not.
	Space int

	faces func() (weights, error)
}

type weights struct{ regular, bold *Face }

// Face returns the face of a weight, nil when it cannot be read.
func (f *Family) Face(bold bool) *Face {
	w, err := f.faces()
	switch {
	case err != nil:
		return nil
	case bold:
		return w.bold
	}
	return w.regular
}

// Has reports whether the family has a glyph for a code point in a weight.
func (f *Family) Has(r rune, bold bool) bool {
	face := f.Face(bold)
	return face != nil && face.Has(r)
}

// A Library is every family there is.
type Library struct{ families map[string]*Family }

// Load finds the faces of every family in a folder. They are read later, family by
// family, as a language needs them.
func Load(fsys fs.FS) (*Library, error) {
	l := &Library{families: map[string]*Family{}}
	for code, s := range scripts {
		for _, name := range []string{s.family + regularSuffix, s.family + boldSuffix} {
			if _, err := fs.Stat(fsys, name+".ttf"); err != nil {
				return nil, err
			}
		}
		l.families[code] = &Family{
			Script: code, Scale: s.scale, WholeWords: s.wholeWords, Space: s.space,
			faces: sync.OnceValues(func() (weights, error) { return read(fsys, s.family) }),
		}
	}
	return l, nil
}

// The files of a family are named as its faces are.
const regularSuffix, boldSuffix = "-Regular", "-Bold"

func read(fsys fs.FS, family string) (w weights, err error) {
	if w.regular, err = readFace(fsys, family+regularSuffix); err != nil {
		return w, err
	}
	w.bold, err = readFace(fsys, family+boldSuffix)
	return w, err
}

func readFace(fsys fs.FS, name string) (*Face, error) {
	b, err := fs.ReadFile(fsys, name+".ttf")
	if err != nil {
		return nil, err
	}
	return Parse(name, b)
}

// Chain returns the families to try for text of a language that is written in a
// script, best first, and the leading of the script as a multiple of Latin's. The
// script is an ISO 15924 code; Urdu is "Aran" (Nastaliq), other languages in Arabic
// letters are "Arab" (Naskh).
//
// The families of the script and of Latin can be read when err is nil. Of the
// others, one that cannot be read shows nothing, as if it were not there.
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
	for _, needed := range []string{code, latin} {
		if _, err := l.families[needed].faces(); err != nil {
			return nil, 0, err
		}
	}
	return families, s.leading, nil
}
