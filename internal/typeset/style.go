// Package typeset lays out lessons: blocks of text become lines, lines become
// strips on one baseline grid, strips become pages.
//
// Start at Setter, then block.go (what a block looks like), part.go (what each part
// of a module looks like) and paginate.go (where pages end). Layout is worked out
// from the start edge; strip.go mirrors it for right-to-left languages. The package
// knows nothing of PDF.
package typeset

import (
	"sync"

	"wardleaf/internal/bidi"
	"wardleaf/internal/drawing"
	"wardleaf/internal/font"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	"wardleaf/internal/shape"
	"wardleaf/internal/source"
)

// Length is short for measure.Length throughout the package.
type Length = measure.Length

// The three inks, and paper. Each ink has a contrast of 7:1 or more on white.
var (
	Ink   = page.Colour{R: 0x1f, G: 0x1d, B: 0x1a}
	Leaf  = page.Colour{R: 0x1f, G: 0x5c, B: 0x3d}
	Clay  = page.Colour{R: 0x8a, G: 0x3b, B: 0x22}
	Paper = page.Colour{R: 0xff, G: 0xff, B: 0xff}
)

// A Style is how a stretch of text looks.
type Style struct {
	Size   Length // nominal, for Latin; other scripts are set larger by their family's scale
	Bold   bool
	Colour page.Colour
	Rule   Rule
}

// A Rule is a line that goes with words from end to end.
type Rule int

// Rules.
const (
	NoRule Rule = iota
	Through
	Under
)

// Sizes are the four levels of text of a piece, and the grid its lines stand on.
type Sizes struct {
	Title, Part, Text, Small Length
	Foot                     Length // running heads, the foot of the page and the band
	Leading                  Length // of Latin text; the grid unit is this times the script's leading
}

// mm and pt are lengths of the booklet's page, scaled as this piece's text is, so
// that a wall checklist keeps the proportions of a booklet.
func (s *Setter) mm(v float64) Length { return measure.MM(v).Scale(s.unit) }
func (s *Setter) pt(v float64) Length { return measure.Pt(v).Scale(s.unit) }

func (s *Setter) listIndent() Length { return s.mm(5) }

// figureWidth is the width of a picture beside the words of a step.
func (s *Setter) figureWidth() Length {
	if s.FigureWidth > 0 {
		return s.FigureWidth
	}
	return s.mm(42)
}

// BookletSizes suit an A5 page held in the hand.
var BookletSizes = Sizes{
	Title: measure.Pt(19), Part: measure.Pt(12.5), Text: measure.Pt(10), Small: measure.Pt(7.4),
	Foot: measure.Pt(7.4), Leading: measure.Pt(13.6),
}

// Sized returns the booklet's sizes for another size of text, foot left as it is and
// nothing under 6.2 points.
func Sized(text Length) Sizes {
	z := BookletSizes
	f := float64(text) / float64(z.Text)
	z.Title, z.Part, z.Text, z.Small, z.Leading = z.Title.Scale(f), z.Part.Scale(f), text, max(z.Small.Scale(f), measure.Pt(6.2)), z.Leading.Scale(f)
	return z
}

// A Setter sets text of one language for one piece. It is for one goroutine.
type Setter struct {
	Locale *locale.Locale
	Sizes  Sizes
	Grid   Length // distance of baselines; every strip is a whole number of them high
	// Critical reports whether a step must never be missed: the part among the
	// module's steps parts and the step in it, both from 1.
	Critical func(part, step int) bool
	// FigureWidth is how wide pictures beside steps are; 0 leaves it to the size of the text.
	FigureWidth Length
	// Drawing finds the picture of a Figure block; nil when there is none.
	Drawing func(path string) *drawing.Drawing
	// Sheet returns what stands where a lesson places a computed sheet; nil leaves it out.
	Sheet func(name string) []lesson.Block

	unit    float64 // size of the text against the booklet's
	shaper  *shape.Shaper
	base    bidi.Direction
	ascent  Length // of a line of text, from the top of its grid unit to its baseline
	missing map[rune]Gap
}

// A Gap is a code point that no font can show, and the first place it was met.
type Gap struct {
	Rune rune
	Span source.Span
}

// Fonts is the library of faces together with every word that has been shaped with
// it. All setters of a program share one; it is safe for use by several goroutines.
type Fonts struct {
	*font.Library
	mu     sync.Mutex
	shaped map[string]*shape.Cache // by language and script
}

// NewFonts returns the faces of a library with no word shaped yet.
func NewFonts(l *font.Library) *Fonts {
	return &Fonts{Library: l, shaped: map[string]*shape.Cache{}}
}

func (f *Fonts) cache(lang, script string) *shape.Cache {
	f.mu.Lock()
	defer f.mu.Unlock()
	k := lang + " " + script
	if f.shaped[k] == nil {
		f.shaped[k] = shape.NewCache()
	}
	return f.shaped[k]
}

// NewSetter returns a setter for a language.
func NewSetter(fonts *Fonts, loc *locale.Locale, sizes Sizes) (*Setter, error) {
	chain, leading, err := fonts.Chain(loc.Script)
	if err != nil {
		return nil, err
	}
	s := &Setter{
		Locale: loc, Sizes: sizes,
		Grid:    sizes.Leading.Scale(leading),
		shaper:  shape.New(chain, loc.Tag, fonts.cache(loc.Tag, loc.Script)),
		missing: map[rune]Gap{},
	}
	if loc.RTL {
		s.base = bidi.RightToLeft
	}
	s.ascent = s.Grid.Scale(0.72)
	s.unit = float64(sizes.Text) / float64(BookletSizes.Text)
	return s, nil
}

// Missing returns the code points that could not be shown so far, by code point.
func (s *Setter) Missing() map[rune]Gap { return s.missing }

// Rows rounds a height up to whole grid units.
func (s *Setter) Rows(h Length) Length {
	return (h + s.Grid - 1) / s.Grid * s.Grid
}

func (s *Setter) title() Style { return Style{Size: s.Sizes.Title, Bold: true, Colour: Leaf} }
func (s *Setter) part() Style  { return Style{Size: s.Sizes.Part, Bold: true, Colour: Leaf} }
func (s *Setter) text() Style  { return Style{Size: s.Sizes.Text, Colour: Ink} }
func (s *Setter) small() Style { return Style{Size: s.Sizes.Small, Colour: Ink} }
func (s *Setter) foot() Style  { return Style{Size: s.Sizes.Foot, Colour: Ink} }

func (st Style) bold() Style             { st.Bold = true; return st }
func (st Style) ruled(r Rule) Style      { st.Rule = r; return st }
func (st Style) in(c page.Colour) Style  { st.Colour = c; return st }
func (st Style) scaled(f float64) Style  { st.Size = st.Size.Scale(f); return st }
func plainText(s string) []lesson.Inline { return []lesson.Inline{{Kind: lesson.Text, Text: s}} }
