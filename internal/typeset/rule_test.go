package typeset

import (
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// Words that were struck have a rule through them from end to end and words that were
// added one under them, on every line they run over, and nothing else has.
func TestRule(t *testing.T) {
	for _, k := range []struct{ lang, digits, plain, words string }{
		{"en", "latn", "Hold the baby ", "upright on your bare chest, with the head to one side, and cover both"},
		{"hi", "deva", "शिशु को ", "अपनी छाती पर सीधा थामें, सिर एक ओर, और दोनों को ३७ तक ढकें"},
		{"ar", "arab", "احملوا ", "الطفل منتصباً على صدركم، ورأسه إلى جانب، وغطوا ٣٧ كليكما"},
	} {
		for kind, place := range map[lesson.InlineKind]string{lesson.Struck: "through", lesson.Added: "under"} {
			s := setter(t, k.lang, k.digits)
			width := measure.MM(40)
			ins := append(plainText(k.plain), lesson.Inline{Kind: kind, Children: plainText(k.words)})
			lines := s.Lines(append(ins, plainText(" .")...), s.text(), width, nil)
			if len(lines) < 3 {
				t.Fatalf("%s: %d lines, too few to see anything", k.lang, len(lines))
			}
			for i, l := range lines {
				var ruled, words Length
				for _, it := range l.Items {
					switch it := it.(type) {
					case *page.Box:
						ruled += it.Width
						if it.X < -1 || it.X+it.Width > width+1 {
							t.Errorf("%s %s, line %d: the rule from %v to %v leaves the line", k.lang, place, i, it.X, it.X+it.Width)
						}
						if through := it.Y < 0; through != (kind == lesson.Struck) || it.Y < -s.Sizes.Text || it.Y > s.Sizes.Text/2 {
							t.Errorf("%s %s: the rule lies %v from the baseline", k.lang, place, it.Y)
						}
					case *page.GlyphRun:
						words += it.Width()
					}
				}
				if i > 0 && i+1 < len(lines) { // all of the line is ruled, but for a space that hangs over its end
					if diff := l.Width - ruled; diff < -10 || diff > 10 {
						t.Errorf("%s %s, line %d: %v of %v is ruled", k.lang, place, i, ruled, l.Width)
					}
				}
				if i == 0 && ruled >= words {
					t.Errorf("%s %s: words that stayed are ruled, too", k.lang, place)
				}
			}
		}
	}
}

// A cell set by a language that runs the other way begins at the cell's other end.
func TestCellTurned(t *testing.T) {
	en, ar := setter(t, "en", ""), setter(t, "ar", "arab")
	table := RuledTable{Columns: []float64{0.5, 0.5}, Head: []Cell{Head("a"), Head("b")}}
	width := measure.MM(100)
	for _, k := range []struct {
		name     string
		by       *Setter
		from, to Length
	}{{"own", en, width / 2, width * 3 / 4}, {"turned", ar, width * 3 / 4, width}} {
		rows := en.Table(table, [][]Cell{{Plain("x"), {Text: plainText("الطفل"), By: k.by}}}, width, &page.Tag{})
		found := false
		for _, it := range rows[1].place(0, 0, width, false) {
			if r, ok := it.(*page.GlyphRun); ok && r.Text() == "الطفل" {
				found = true
				if r.X < k.from || r.X+r.Width() > k.to {
					t.Errorf("%s: the word lies from %v to %v, want it within %v to %v", k.name, r.X, r.X+r.Width(), k.from, k.to)
				}
			}
		}
		if !found {
			t.Errorf("%s: the word is missing", k.name)
		}
	}
}
