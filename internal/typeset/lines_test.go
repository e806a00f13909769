package typeset

import (
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"

	"wardleaf/internal/font"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

func setter(t testing.TB, lang, digits string) *Setter {
	t.Helper()
	fonts, err := font.Load(os.DirFS("../../templates/fonts"))
	if err != nil {
		t.Fatal(err)
	}
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	loc, err := catalog.Locale(lang, digits)
	if err != nil {
		t.Fatal(err)
	}
	s, err := NewSetter(NewFonts(fonts), loc, BookletSizes)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// drawn returns the runes that lines draw, sorted, white space left out.
func drawn(lines []Line) string {
	var b strings.Builder
	for _, l := range lines {
		for _, it := range l.Items {
			if r, ok := it.(*page.GlyphRun); ok {
				for _, c := range r.Clusters {
					b.WriteString(c.Text)
				}
			}
		}
	}
	return sortedRunes(b.String())
}

func sortedRunes(s string) string {
	rs := slices.DeleteFunc([]rune(s), func(r rune) bool {
		return unicode.IsSpace(r) || unicode.Is(unicode.Cf, r) || unicode.IsControl(r)
	})
	slices.Sort(rs)
	return string(rs)
}

// FuzzLines holds the law of setting text: whatever is written is drawn exactly once,
// and no line that could be broken is wider than its measure.
func FuzzLines(f *testing.F) {
	for _, s := range []string{
		"Hold your baby upright, chest to chest.", "",
		"शिशु को सीधा रखें, छाती से छाती लगाकर। ३६.५ °C", "احملوا الطفل منتصباً (٣٦٫٥ درجة) KMC 2 ثم",
		"a\u2066b\u2069c \u200d \u0301x", "one\ntwo  three \n", "עברית abc 123 (x)", "\u00a0\u00a0long\u00a0unbroken", "क\u094d\u200dष",
	} {
		f.Add(s, uint16(120))
	}
	setters := []*Setter{setter(f, "en", ""), setter(f, "hi", "deva"), setter(f, "ar", "arab")}
	f.Fuzz(func(t *testing.T, text string, points uint16) {
		text = strings.ToValidUTF8(text, "")
		width := measure.Pt(float64(points%600) + 20)
		for _, s := range setters {
			lines := s.Lines([]lesson.Inline{{Kind: lesson.Text, Text: text}}, s.text(), width, nil)
			if got, want := drawn(lines), sortedRunes(text); got != want {
				t.Fatalf("%s: drew %q of %q", s.Locale.Tag, got, want)
			}
			for _, l := range lines {
				set := ""
				for _, it := range l.Items {
					if r, ok := it.(*page.GlyphRun); ok {
						for _, c := range r.Clusters {
							set += c.Text
						}
					}
				}
				if l.Width > width && strings.Contains(strings.TrimSpace(set), " ") && breaksAtSpaces(text) {
					t.Fatalf("%s: %q is %v wide, the measure is %v", s.Locale.Tag, set, l.Width, width)
				}
			}
		}
	})
}

// breaksAtSpaces reports text in which UAX #14 lets a line end at every space: only
// letters and digits of ordinary words beside them.
func breaksAtSpaces(s string) bool {
	return !strings.ContainsFunc(s, func(r rune) bool { return r != ' ' && !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// A number and its unit joined by a no-break space are never torn apart, and a range
// in Arabic keeps its first amount first in reading order.
func TestNumberStaysWithUnit(t *testing.T) {
	s := setter(t, "en", "")
	for points := 60; points < 400; points += 7 {
		for _, l := range s.Lines([]lesson.Inline{{Kind: lesson.Text, Text: "Keep your baby at 36.5 to 37.5\u00a0°C all day and all night, every day."}}, s.text(), measure.Pt(float64(points)), nil) {
			text := ""
			for _, it := range l.Items {
				if r, ok := it.(*page.GlyphRun); ok {
					for _, c := range r.Clusters {
						text += c.Text
					}
				}
			}
			if strings.HasSuffix(strings.TrimSpace(text), "37.5") || strings.HasPrefix(text, "°C") {
				t.Fatalf("at %d pt the unit is torn off: %q", points, text)
			}
		}
	}
}

// Strips are kept together as asked, and every strip is placed once, in order, within the column.
func TestPaginateLaws(t *testing.T) {
	f := BookletFrame(false)
	room := f.Height()
	for seed := 1; seed < 200; seed++ {
		n := seed%37 + 1
		var strips []Strip
		x := uint32(seed)
		next := func(m uint32) uint32 { x = x*1664525 + 1013904223; return x >> 8 % m }
		for i := range n {
			st := Strip{Height: Length(next(uint32(room / 4))), Before: Length(next(20000)), Keep: next(3) == 0}
			if next(11) == 0 {
				st.Break = NewPage
			}
			st.Anchor = &Anchor{Name: string(rune('a' + i))}
			strips = append(strips, st)
		}
		pages, spots := Paginate(strips, f, 2)
		if len(spots) != n {
			t.Fatalf("seed %d: %d of %d strips placed", seed, len(spots), n)
		}
		for i, sp := range spots {
			if sp.Name != strips[i].Anchor.Name {
				t.Fatalf("seed %d: strip %d out of order", seed, i)
			}
			if sp.Top < f.Top || sp.Top+strips[i].Height > f.Top+room {
				t.Fatalf("seed %d: strip %d leaves the column", seed, i)
			}
			if i > 0 {
				before := spots[i-1]
				if sp.Page < before.Page || sp.Page == before.Page && sp.Top < before.Top+strips[i-1].Height {
					t.Fatalf("seed %d: strip %d lies on the one before it", seed, i)
				}
				if strips[i].Break == NewPage && sp.Page == before.Page {
					t.Fatalf("seed %d: strip %d did not start a page", seed, i)
				}
			}
		}
		if last := spots[n-1].Page; last != 2+len(pages)-1 {
			t.Fatalf("seed %d: %d pages, the last strip is on %d", seed, len(pages), last)
		}
	}
}

// A table that goes on to another page shows its head there again, as an artifact.
func TestTableHeadIsRepeated(t *testing.T) {
	s := setter(t, "en", "")
	b := lesson.Block{Kind: lesson.Table}
	for i := range 80 {
		words := "row"
		if i == 0 {
			words = "head"
		}
		b.Rows = append(b.Rows, lesson.Row{Cells: [][]lesson.Inline{plainText(words), plainText("x")}})
	}
	f := BookletFrame(false)
	pages, _ := Paginate(s.Blocks([]lesson.Block{b}, s.text(), 0, f.Width(), &page.Tag{Role: "Document"}), f, 0)
	if len(pages) < 2 {
		t.Fatalf("%d pages", len(pages))
	}
	for i, p := range pages {
		heads := 0
		for _, it := range p.Items {
			if r, ok := it.(*page.GlyphRun); ok && r.Text() == "head" {
				heads++
				if (r.Tag == nil) != (i > 0) {
					t.Errorf("page %d: the head has the tag %v", i+1, r.Tag)
				}
			}
		}
		if heads != 1 {
			t.Errorf("page %d shows the head %d times", i+1, heads)
		}
	}
}

// FuzzPart holds the laws of pages for any part of any lesson: every letter is drawn
// exactly once, whatever its length, and no text leaves its page.
func FuzzPart(f *testing.F) {
	f.Add("Hold your baby close.", uint8(3), uint8(5))
	f.Add("शिशु को सीधा रखें। https://an.address.without.any.place.to.break/in-it", uint8(40), uint8(200))
	f.Add("احملوا الطفل منتصباً", uint8(90), uint8(7))
	roles := append([]lesson.Role{lesson.Prose}, lesson.Roles...)
	setters := []*Setter{setter(f, "en", ""), setter(f, "hi", "deva"), setter(f, "ar", "arab")}
	f.Fuzz(func(t *testing.T, words string, times, shape uint8) {
		words = strings.ToValidUTF8(words, "")
		if len(words) > 400 {
			words = words[:400]
			words = strings.ToValidUTF8(words, "")
		}
		long := lesson.Block{Kind: lesson.Paragraph, Inlines: []lesson.Inline{
			{Kind: lesson.Strong, Children: plainText("Sign")}, {Kind: lesson.Text, Text: ": " + strings.Repeat(words+" ", int(times))},
		}}
		short := lesson.Block{Kind: lesson.Paragraph, Inlines: plainText(words)}
		item := lesson.Item{Blocks: []lesson.Block{short, long}}
		if shape%2 == 1 {
			item.Blocks = []lesson.Block{long, short}
		}
		p := lesson.Part{Role: roles[int(shape)%len(roles)], Heading: plainText("Heading"), Blocks: []lesson.Block{
			{Kind: lesson.List, Ordered: true, Start: 1, Items: []lesson.Item{item, {Blocks: []lesson.Block{short}}}}, long,
		}}
		for _, s := range setters {
			frame := BookletFrame(s.Locale.RTL)
			steps := 0
			pages, _ := Paginate(s.Part(&p, &steps, frame.Width(), &page.Tag{Role: "Document"}), frame, 0)
			var got strings.Builder
			for n, sheet := range pages {
				for _, it := range sheet.Items {
					r, ok := it.(*page.GlyphRun)
					if !ok {
						continue
					}
					got.WriteString(r.Text())
					if r.Y < frame.Top || r.Y > frame.Size.Height-frame.Foot || r.X < 0 || r.X+r.Width() > frame.Size.Width {
						t.Fatalf("%s page %d: %q at %v, %v leaves the page", s.Locale.Tag, n+1, r.Text(), r.X, r.Y)
					}
				}
			}
			if p.Role == lesson.Quiz || p.Role == lesson.TrainerNotes {
				continue // quizzes show questions alone
			}
			all := got.String()
			want := strings.Count(sortedRunes(strings.Repeat(words, 2*int(times)+2)), "") - 1
			if n := strings.Count(sortedRunes(all), "") - 1; n < want || n > want+150 { // headings, numerals and labels come on top
				t.Fatalf("%s %s: %d letters were drawn, the text has %d", s.Locale.Tag, p.Role, n, want)
			}
		}
	})
}
