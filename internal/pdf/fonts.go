package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"slices"
	"strings"

	"github.com/go-pdf/fpdf"

	"wardleaf/internal/font"
	"wardleaf/internal/page"
)

// A fontSet holds the subset of every face a document uses, in order of first use.
type fontSet struct {
	fonts  []*docFont
	byFace map[*font.Face]*docFont
	parts  []font.Part
}

type docFont struct {
	name   string // in the page's resources, and fpdf's family
	subset *font.Subset
	data   []byte
	glyphs map[int]int // by code
}

func newFontSet() *fontSet { return &fontSet{byFace: map[*font.Face]*docFont{}} }

func (s *fontSet) of(face *font.Face) *docFont {
	f := s.byFace[face]
	if f == nil {
		f = &docFont{name: fmt.Sprintf("f%d", len(s.fonts)+1), subset: font.NewSubset(face)}
		s.byFace[face] = f
		s.fonts = append(s.fonts, f)
	}
	return f
}

// code returns the code of a cluster. Readers turn text of a right-to-left run
// round, so its clusters are mapped to their text reversed.
func (s *fontSet) code(f *docFont, c *page.Cluster, rtl bool) (int, error) {
	s.parts = s.parts[:0]
	for _, g := range c.Glyphs {
		s.parts = append(s.parts, font.Part{Glyph: g.ID, X: g.X, Y: g.Y})
	}
	text := c.Text
	if rtl {
		r := []rune(text)
		slices.Reverse(r)
		text = string(r)
	}
	return f.subset.Code(text, s.parts, c.Advance)
}

// register gives the fonts to fpdf. It embeds only what Text has drawn, so all codes
// are drawn once into a template that no page uses.
func (s *fontSet) register(p *fpdf.Fpdf) error {
	for _, f := range s.fonts {
		var err error
		if f.data, f.glyphs, err = f.subset.Build(); err != nil {
			return err
		}
		p.AddUTF8FontFromBytes(f.name, "", f.data)
		var all strings.Builder
		for _, code := range f.subset.Codes() {
			all.WriteRune(rune(code))
		}
		p.CreateTemplate(func(t *fpdf.Tpl) {
			t.SetFont(f.name, "", 10)
			t.Text(0, 0, all.String())
			if t.Err() {
				p.SetError(fmt.Errorf("font %s: %w", f.subset.Face().Name, t.Error()))
			}
		})
	}
	return p.Error()
}

// finish gives each font its true name and the true text of its codes. fpdf cuts the
// font down once more and leaves its table cmap unsound, so the subset itself takes
// the place of that. The page resources, too, are rewritten: they hold nothing but fonts.
func (s *fontSet) finish(f *file) error {
	resources := "<</Font<<"
	for _, df := range s.fonts {
		n := f.find([]byte("<</Type /Font\n/Subtype /Type0\n/BaseFont " + df.standIn()))
		// fpdf writes a font as a row of objects.
		descendant, toUnicode, descriptor, glyphMap, program := n+1, n+2, n+4, n+5, n+6
		if n == 0 || program >= len(f.objects) || !bytes.Contains(f.objects[program], []byte("/Length1")) {
			return errForm
		}
		for _, k := range []int{n, descendant, descriptor} {
			f.objects[k] = bytes.Replace(f.objects[k], []byte(df.standIn()), []byte(df.baseFont()), 1)
		}
		f.streams[toUnicode] = toUnicodeMap(df.subset)
		f.streams[glyphMap] = df.glyphMap()
		f.streams[program] = df.data
		f.objects[program] = fmt.Appendf(nil, "<</Length1 %d>>", len(df.data))
		resources += fmt.Sprintf("/%s %d 0 R", df.name, n)
	}
	const resourcesObject = 2
	f.objects[resourcesObject] = []byte(resources + ">>>>")
	return nil
}

// standIn is the name fpdf gives the font.
func (f *docFont) standIn() string { return "/utf8" + f.name + "\n" }

// baseFont is the name of the subset: a tag of six letters, then the face's name
// (ISO 32000-1, 9.6.4).
func (f *docFont) baseFont() string {
	digest := sha256.Sum256(f.data)
	tag := digest[:6]
	for i := range tag {
		tag[i] = 'A' + tag[i]%26
	}
	return nameToken(string(tag)+"+"+f.subset.Face().Name) + "\n"
}

// glyphMap returns the glyph of every code: CIDToGIDMap in ISO 32000-1, 9.7.4.2.
func (f *docFont) glyphMap() []byte {
	m := make([]byte, 2<<16)
	for code, glyph := range f.glyphs {
		binary.BigEndian.PutUint16(m[2*code:], uint16(glyph))
	}
	return m
}

// toUnicodeMap returns the CMap from codes to text: ISO 32000-1, 9.10.3.
func toUnicodeMap(s *font.Subset) []byte {
	var b bytes.Buffer
	b.WriteString("/CIDInit/ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n" +
		"/CMapName/Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000><FFFF>\nendcodespacerange\n")
	for batch := range slices.Chunk(s.Codes(), 100) { // the most one section may hold
		fmt.Fprintf(&b, "%d beginbfchar\n", len(batch))
		for _, c := range batch {
			fmt.Fprintf(&b, "<%04X><%s>\n", c, utf16Hex(s.Text(c)))
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict/CMap defineresource pop\nend\nend\n")
	return b.Bytes()
}
