package shape

import (
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/bidi"
	"wardleaf/internal/page"
)

// written returns the writing of a language.
func written(t *testing.T, lang string) writing {
	t.Helper()
	i := slices.IndexFunc(writings, func(w writing) bool { return w.lang == lang })
	if i < 0 {
		t.Fatalf("%s is not among the writings", lang)
	}
	return writings[i]
}

// TestZeroWidthSpace joins words as Thai, Khmer and Burmese are written, with U+200B
// where a line may end. It is never drawn, nor part of any text, and what stands
// between two of them is shaped as if it stood alone.
func TestZeroWidthSpace(t *testing.T) {
	lib := library(t)
	for _, lang := range []string{"th", "km", "my"} {
		w := written(t, lang)
		s, _ := w.shaper(t, lib)
		words := w.listed(t)[:200]
		text := s.Shape([]Run{{Text: strings.Join(words, "\u200B")}}, w.base)
		if len(text.Words) != len(words) || len(text.Missing) > 0 {
			t.Fatalf("%s: %d pieces, want %d; missing %v", lang, len(text.Words), len(words), text.Missing)
		}
		for i, piece := range text.Words {
			alone := s.Shape([]Run{{Text: words[i]}}, w.base).Words[0]
			if !piece.BreakAfter || piece.Advance != alone.Advance || said(piece) != words[i] || len(piece.Clusters) != len(alone.Clusters) {
				t.Errorf("%s: %q became %q, %d units wide instead of %d, line may end: %v",
					lang, words[i], said(piece), piece.Advance, alone.Advance, piece.BreakAfter)
			}
		}
		joined := s.Shape([]Run{{Text: strings.Join(words[:9], "")}}, w.base)
		if len(joined.Words) != 1 {
			t.Errorf("%s: %d pieces where nothing allows a line to end", lang, len(joined.Words))
		}
	}
}

// said returns the text of a word, in logical order.
func said(w Word) string {
	var parts []string
	for _, c := range w.Clusters {
		parts = append(parts, c.Text)
	}
	if w.Level%2 == 1 {
		slices.Reverse(parts)
	}
	return strings.Join(parts, "")
}

// TestWholeWords keeps each word of Nastaliq in one piece, its glyphs on several
// baselines, while the same word in Naskh comes letter by letter.
func TestWholeWords(t *testing.T) {
	lib := library(t)
	urdu, arabic := written(t, "ur"), written(t, "ar")
	nastaliq, _ := urdu.shaper(t, lib)
	naskh, _ := arabic.shaper(t, lib)
	sloping := 0
	for _, word := range urdu.listed(t) {
		text := nastaliq.Shape([]Run{{Text: word}}, bidi.RightToLeft)
		if len(text.Words) != 1 || len(text.Words[0].Clusters) != 1 {
			t.Fatalf("%q is in pieces", word)
		}
		c := text.Words[0].Clusters[0]
		if c.Text != word || c.Advance != text.Words[0].Advance {
			t.Errorf("%q became %q, %d units wide of %d", word, c.Text, c.Advance, text.Words[0].Advance)
		}
		if slices.ContainsFunc(c.Glyphs, func(g page.Glyph) bool { return g.Y > 100 }) {
			sloping++
		}
	}
	if all := len(urdu.listed(t)); sloping < all/2 {
		t.Errorf("only %d of %d words leave the baseline", sloping, all)
	}
	spaced := nastaliq.Shape([]Run{{Text: "بچہ  ماں"}}, bidi.RightToLeft)
	if w := spaced.Words[1]; len(spaced.Words) != 3 || !w.Space || len(w.Clusters) != 2 || w.Advance < 2*w.Face.UnitsPerEm/5 {
		t.Errorf("the space between words is %d clusters and %d units wide", len(w.Clusters), w.Advance)
	}
	if n := len(naskh.Shape([]Run{{Text: "نگیمبون"}}, bidi.RightToLeft).Words[0].Clusters); n != 7 {
		t.Errorf("Naskh has %d clusters, want 7", n)
	}
}

// TestLatinAmongOthers sets Latin letters and European digits in the Latin family
// everywhere, with what joins them; brackets, spaces and all else in the script's own.
func TestLatinAmongOthers(t *testing.T) {
	lib := library(t)
	for _, c := range []struct{ lang, text, latin string }{
		{"hi", "दूध 2.5 kg (WHO) दूध", "2.5 kg WHO"},
		{"hi", "COVID-19 दूध", "COVID-19"},
		{"hi", "२५० दूध", ""},
		{"ar", "وزن 2–3 kg، نعم", "2–3 kg"},
		{"ar", "نعم، 36.5°", "36.5°"},
		{"am", "ወተት 50% ነው።", "50%"},
		{"my", "နို့ d\u0301e 8x", "d\u0301e 8x"},
		{"en", "milk 2 (a)", "milk 2 (a)"},
	} {
		w := written(t, c.lang)
		s, _ := w.shaper(t, lib)
		text := s.Shape([]Run{{Text: c.text}}, w.base)
		var got []string
		for _, piece := range text.Words {
			if strings.HasPrefix(piece.Face.Name, "NotoSans-") {
				got = append(got, string(text.Runes[piece.Start:piece.End]))
			} else if !piece.Space && piece.Face.Name != w.font+"-Regular" {
				t.Errorf("%q: %q is set in %s", c.text, string(text.Runes[piece.Start:piece.End]), piece.Face.Name)
			}
		}
		want := strings.ReplaceAll(c.latin, " ", "")
		if g := strings.ReplaceAll(strings.Join(got, ""), " ", ""); g != want {
			t.Errorf("%q: set in Latin's family %q, want %q", c.text, g, want)
		}
		if len(text.Missing) > 0 {
			t.Errorf("%q: missing %v", c.text, text.Missing)
		}
	}
}
