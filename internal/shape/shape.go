// Package shape turns styled text into shaped words in the order they were written.
//
// A paragraph is cut where a line may end, where the style, the script, the
// direction or the face changes, and around spaces. Each piece is shaped by
// HarfBuzz's rules once and kept, so a line is made of whole words and never needs
// shaping again. Ordering words for the eye is left to the caller (UAX #9, L2).
package shape

import (
	"unicode"

	gotext "github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"

	"wardleaf/internal/bidi"
	"wardleaf/internal/font"
	"wardleaf/internal/linebreak"
	"wardleaf/internal/page"
)

// A Word is text shaped as one: one face, direction, script and style. A space is a word of its own.
type Word struct {
	Start, End int // runes of the paragraph
	Style      int // index given with the text
	Level      bidi.Level
	Face       *font.Face
	Scale      float64        // of the face's family
	Clusters   []page.Cluster // visual order; shared, never change them
	Advance    int            // font units
	Space      bool
	// BreakAfter: a line may end after this word. MustBreak: it has to.
	BreakAfter, MustBreak bool
}

// A Missing is a code point that no face of the chain can show.
type Missing struct {
	Rune rune
	At   int // rune of the paragraph
}

// A Shaper shapes text of one language. It is for one goroutine.
type Shaper struct {
	chain []*font.Family
	lang  language.Language
	fonts map[*font.Face]*harfbuzz.Font
	buf   *harfbuzz.Buffer
	cache map[key]shaped
}

type key struct {
	face   *font.Face
	script language.Script
	rtl    bool
	text   string
}

type shaped struct {
	clusters []page.Cluster
	advance  int
}

// New returns a shaper for a BCP 47 tag that tries the families in order.
func New(chain []*font.Family, lang string) *Shaper {
	return &Shaper{
		chain: chain, lang: language.NewLanguage(lang),
		fonts: map[*font.Face]*harfbuzz.Font{}, buf: harfbuzz.NewBuffer(), cache: map[key]shaped{},
	}
}

// A Run is a stretch of a paragraph in one style.
type Run struct {
	Text  string
	Style int
	Bold  bool
}

// A Text is a paragraph, shaped.
type Text struct {
	Runes   []rune
	Words   []Word // in logical order; together they cover Runes
	Missing []Missing
	levels  bidi.Paragraph
}

// Order returns the words of a line in visual order; spaces at its end stay at its end (UAX #9, L1).
func (t *Text) Order(words []Word) []int {
	if len(words) == 0 {
		return nil
	}
	line := t.levels.Line(words[0].Start, words[len(words)-1].End)
	levels := make([]bidi.Level, len(words))
	for i, w := range words {
		levels[i] = line[w.Start-words[0].Start]
	}
	return bidi.Reorder(levels)
}

// Shape shapes a paragraph made of runs.
func (s *Shaper) Shape(runs []Run, base bidi.Direction) *Text {
	t := &Text{}
	var style []int32 // index into runs, by rune
	for i, r := range runs {
		for _, c := range r.Text {
			t.Runes = append(t.Runes, c)
			style = append(style, int32(i))
		}
	}
	t.levels = bidi.Resolve(t.Runes, base)
	levels := t.levels.Line(0, len(t.Runes))
	breaks := linebreak.Opportunities(t.Runes)
	next := 0
	for start := 0; start < len(t.Runes); {
		for next < len(breaks) && breaks[next].At <= start {
			next++
		}
		limit := len(t.Runes)
		if next < len(breaks) {
			limit = min(limit, breaks[next].At)
		}
		w := s.word(t, start, limit, style, levels, runs)
		if next < len(breaks) && w.End == breaks[next].At {
			w.BreakAfter, w.MustBreak = true, breaks[next].Must && w.End < len(t.Runes)
		}
		t.Words = append(t.Words, w)
		start = w.End
	}
	return t
}

// word shapes the longest word that starts at start and ends by limit.
func (s *Shaper) word(t *Text, start, limit int, style []int32, levels []bidi.Level, runs []Run) Word {
	first := t.Runes[start]
	run := runs[style[start]]
	w := Word{Start: start, Style: run.Style, Level: levels[start], Space: isSpace(first)}
	script := language.Common
	fam := s.family(first, run.Bold, nil)
	end := start
	for end < limit && style[end] == style[start] && levels[end] == levels[start] && isSpace(t.Runes[end]) == w.Space {
		r := t.Runes[end]
		f := s.family(r, run.Bold, fam)
		if f != fam {
			break
		}
		if sc := language.LookupScript(r); sc != language.Common && sc != language.Inherited {
			if script != language.Common && sc != script {
				break
			}
			script = sc
		}
		if fam != nil && !fam.Face(run.Bold).Has(r) && !ignorable(r) {
			t.Missing = append(t.Missing, Missing{Rune: r, At: end})
		}
		end++
	}
	w.End = end
	w.Face, w.Scale = fam.Face(run.Bold), fam.Scale
	got := s.shape(key{w.Face, script, levels[start]%2 == 1, string(t.Runes[start:end])})
	w.Clusters, w.Advance = got.clusters, got.advance
	return w
}

// family returns the first family of the chain that can show r. Marks, joiners and
// characters that are never drawn stay with the family before them when it can
// show them, so that a cluster is not torn apart.
func (s *Shaper) family(r rune, bold bool, before *font.Family) *font.Family {
	if before != nil && (ignorable(r) || unicode.Is(unicode.M, r) && before.Face(bold).Has(r)) {
		return before
	}
	for _, f := range s.chain {
		if f.Face(bold).Has(r) {
			return f
		}
	}
	if before != nil {
		return before
	}
	return s.chain[0]
}

// ignorable reports characters that steer layout and are never drawn: joiners,
// bidi controls, zero-width space and line ends.
func ignorable(r rune) bool {
	switch {
	case r >= 0x200B && r <= 0x200F, r >= 0x202A && r <= 0x202E, r >= 0x2060 && r <= 0x2069, r == 0xFEFF, r == '\n', r == 0x00AD:
		return true
	}
	return false
}

// isSpace reports spaces that separate words; a no-break space belongs to its word.
func isSpace(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }

func (s *Shaper) shape(k key) shaped {
	if got, ok := s.cache[k]; ok {
		return got
	}
	f := s.fonts[k.face]
	if f == nil {
		f = harfbuzz.NewFont(gotext.NewFace(k.face.Shaping()))
		s.fonts[k.face] = f
	}
	runes := []rune(k.text)
	b := s.buf
	b.Clear()
	b.AddRunes(runes, 0, len(runes))
	b.Props.Language = s.lang
	b.Props.Script = k.script
	b.Props.Direction = harfbuzz.LeftToRight
	if k.rtl {
		b.Props.Direction = harfbuzz.RightToLeft
	}
	b.Shape(f, nil)
	got := shaped{clusters: clusters(b, runes)}
	for _, c := range got.clusters {
		got.advance += c.Advance
	}
	s.cache[k] = got
	return got
}
