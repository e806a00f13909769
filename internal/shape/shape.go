// Package shape turns styled text into shaped words in the order they were written.
//
// A paragraph is cut where a line may end, where the style, the script, the
// direction or the face changes, and around spaces. Each piece is shaped by
// HarfBuzz's rules once and kept, so a line is made of whole words and never needs
// shaping again. Ordering words for the eye is left to the caller (UAX #9, L2).
package shape

import (
	"strconv"
	"sync"

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
	Cut                   bool // it is a piece of a word that no line could hold
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
	latin *font.Family // of the chain
	fonts map[*font.Face]*harfbuzz.Font
	buf   *harfbuzz.Buffer
	cache *Cache
}

// A Cache keeps the words and paragraphs of one language that have been shaped with
// one chain of families: pieces say the same words many times, at many sizes. It is
// safe for use by several shapers at once.
type Cache struct {
	mu    sync.RWMutex
	words map[key]shaped
	texts map[string]*Text
}

// NewCache returns an empty cache.
func NewCache() *Cache { return &Cache{words: map[key]shaped{}, texts: map[string]*Text{}} }

// text returns the paragraph kept under a name, or makes it and keeps it.
func (c *Cache) text(name string, make func() *Text) *Text {
	c.mu.RLock()
	t := c.texts[name]
	c.mu.RUnlock()
	if t != nil {
		return t
	}
	t = make()
	c.mu.Lock()
	defer c.mu.Unlock()
	c.texts[name] = t
	return t
}

func (c *Cache) get(k key) (shaped, bool) {
	c.mu.RLock()
	defer c.mu.RUnlock()
	got, ok := c.words[k]
	return got, ok
}

func (c *Cache) put(k key, s shaped) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.words[k] = s
}

type key struct {
	family *font.Family
	bold   bool
	script language.Script
	rtl    bool
	text   string
}

type shaped struct {
	clusters []page.Cluster
	advance  int
}

// New returns a shaper for a BCP 47 tag that tries the families in order. The cache
// must be of the same language and chain.
func New(chain []*font.Family, lang string, cache *Cache) *Shaper {
	s := &Shaper{
		chain: chain, lang: language.NewLanguage(lang),
		fonts: map[*font.Face]*harfbuzz.Font{}, buf: harfbuzz.NewBuffer(), cache: cache,
	}
	for _, f := range chain {
		if f.Script == "Latn" {
			s.latin = f
		}
	}
	return s
}

// A Run is a stretch of a paragraph in one style.
type Run struct {
	Text  string
	Style int
	Bold  bool
}

// A Text is a paragraph, shaped. It is shared: never change it.
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
	name := strconv.AppendInt(nil, int64(base), 10)
	for _, r := range runs {
		name = strconv.AppendInt(append(name, 0), int64(r.Style), 10)
		name = append(strconv.AppendBool(append(name, 0), r.Bold), r.Text...)
	}
	return s.cache.text(string(name), func() *Text { return s.paragraph(runs, base) })
}

func (s *Shaper) paragraph(runs []Run, base bidi.Direction) *Text {
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
	p := &paragraph{Text: t, runs: runs, style: style, levels: levels, latin: latinStretches(t.Runes)}
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
		w := s.word(p, start, limit)
		if next < len(breaks) && w.End == breaks[next].At {
			w.BreakAfter, w.MustBreak = true, breaks[next].Must && w.End < len(t.Runes)
		}
		t.Words = append(t.Words, w)
		start = w.End
	}
	return t
}

// A paragraph is a text on its way to be shaped, with what is known of each rune.
type paragraph struct {
	*Text
	runs   []Run
	style  []int32 // index into runs
	levels []bidi.Level
	latin  []bool // set in the Latin family
}

// word shapes the longest word that starts at start and ends by limit.
func (s *Shaper) word(p *paragraph, start, limit int) Word {
	run := p.runs[p.style[start]]
	w := Word{Start: start, Style: run.Style, Level: p.levels[start], Space: isSpace(p.Runes[start])}
	script := language.Common
	fam := s.family(p, start, run.Bold, nil)
	end := start
	for end < limit && p.style[end] == p.style[start] && p.levels[end] == p.levels[start] && isSpace(p.Runes[end]) == w.Space {
		r := p.Runes[end]
		if s.family(p, end, run.Bold, fam) != fam {
			break
		}
		if sc := language.LookupScript(r); sc != language.Common && sc != language.Inherited {
			if script != language.Common && sc != script {
				break
			}
			script = sc
		}
		if !fam.Has(r, run.Bold) && !ignorable(r) {
			p.Missing = append(p.Missing, Missing{Rune: r, At: end})
		}
		end++
	}
	w.End = end
	w.Face, w.Scale = fam.Face(run.Bold), fam.Scale
	got := s.shape(key{fam, run.Bold, script, w.Level%2 == 1, string(p.Runes[start:end])})
	w.Clusters, w.Advance = got.clusters, got.advance
	return w
}

func (s *Shaper) shape(k key) shaped {
	if got, ok := s.cache.get(k); ok {
		return got
	}
	face := k.family.Face(k.bold)
	f := s.fonts[face]
	if f == nil {
		f = harfbuzz.NewFont(gotext.NewFace(face.Shaping()))
		s.fonts[face] = f
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
	if k.family.WholeWords && len(got.clusters) > 0 && !isSpace(runes[0]) {
		got.clusters = []page.Cluster{merge(got.clusters, k.rtl)}
	}
	for i := range got.clusters {
		c := &got.clusters[i]
		if c.Text == " " {
			c.Advance = max(c.Advance, k.family.Space*face.UnitsPerEm/1000)
		}
		got.advance += c.Advance
	}
	s.cache.put(k, got)
	return got
}
