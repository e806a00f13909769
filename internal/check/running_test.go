package check

import (
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/source"
)

// TestUnitAfter reads units in the forms that grammar gives them.
func TestUnitAfter(t *testing.T) {
	all := newLexicon(nil)
	for _, lang := range []string{"en", "hi", "ar"} {
		all.units = append(all.units, newLexicon(languages(t).Words(lang)).units...)
	}
	for text, want := range map[string]string{
		"\u00a0°C or more": "°c",
		"-day-old":         "day",
		" घंटे":            "घंटे",
		" हफ़्ते":          "हफ्ते",
		" هفته":            "",
		" ثوانٍ":           "ثوان",
		" يوماً":           "يوما",
		" في المئة":        "في المئة",
		" grapes":          "",
		"%":                "%",
		" , g":             "",
		"":                 "",
	} {
		if got, _ := unitAfter(text, all.units); got.form != want {
			t.Errorf("%q: got %q, want %q", text, got.form, want)
		}
	}
}

// TestUnitBefore reads units that Swahili says before their numeral.
func TestUnitBefore(t *testing.T) {
	for _, k := range []struct{ lang, text, form, gap string }{
		{"sw", "kwa sekunde\u00a010, kisha", "sekunde", "\u00a0"},
		{"sw", "kila masaa 2 hadi 3", "masaa", " "},
		{"sw", "chini ya 2.5\u00a0kg", "kg", "\u00a0"},
		{"sw", "(Dakika10)", "dakika", ""},
		{"sw", "hakuna 10", "", ""},
		{"sw", "msekunde 10", "", ""},
		{"en", "seconds 10", "", ""},
	} {
		use, _ := newLexicon(languages(t).Words(k.lang)).unitOf(k.text, numerals(k.text)[0])
		if use.form != k.form || use.gap != k.gap {
			t.Errorf("%s %q: got %q after %q, want %q after %q", k.lang, k.text, use.form, use.gap, k.form, k.gap)
		}
	}
}

func TestDecimals(t *testing.T) {
	for text, want := range map[string][2]bool{ // naked, trailing zero
		".5": {true, false}, "٫5": {true, false}, "0.5": {}, "1.0": {false, true}, "2.50": {false, true},
		"10": {}, "1,500": {}, "1.050": {}, "0.500": {false, true}, "12.0000": {false, true}, "1.2.0": {},
	} {
		if got := [2]bool{nakedDecimal.MatchString(text), trailingZero.MatchString(text)}; got != want {
			t.Errorf("%s: got %v, want %v", text, got, want)
		}
	}
}

func TestNegationCount(t *testing.T) {
	for _, k := range []struct {
		lang, text    string
		turn, without int
	}{
		{"en", "Don’t pour. Never rush, and do NOT stand.", 3, 0},
		{"en", "Knot the nose cloth without a note.", 0, 1},
		{"hi", "दूध न उड़ेलें, बिना पूछे नहीं। ठीक है या नहीं?", 2, 1},
		{"hi", "नाक और नली", 0, 0},
		{"ar", "لا تصبّوا، ولا تُسرعوا دون سؤال", 2, 1},
		{"ar", "الأطفال لأمهم", 0, 0},
	} {
		turn, without := newLexicon(languages(t).Words(k.lang)).negations(k.text)
		if turn != k.turn || without != k.without {
			t.Errorf("%q: got %d and %d, want %d and %d", k.text, turn, without, k.turn, k.without)
		}
	}
}

// TestWhere finds the place of a native digit, and the start of a text with an escape.
func TestWhere(t *testing.T) {
	text := "\\* ५ दिन\n\n५ * ७"
	ins := []lesson.Inline{
		{Kind: lesson.Text, Text: "* ५ दिन", Span: source.Span{Start: 0, End: 18}},
		{Kind: lesson.Text, Text: "५ * ७", Span: source.Span{Start: len(text) - 9, End: len(text)}},
	}
	l := &lesson.Lesson{File: source.New("wrapping/hi.md", []byte(text))}
	r := running{lesson: l, text: "* 5 दिन5 * 7", stretches: []stretch{{start: 0, inline: &ins[0]}, {start: len("* 5 दिन"), inline: &ins[1]}}}
	if got := r.where(2).Span.Start; got != 0 {
		t.Errorf("in a text with an escape: byte %d", got)
	}
	if got := r.where(len(r.text) - 1).Span.Start; got != len(text)-3 {
		t.Errorf("in a text as written: byte %d, want %d", got, len(text)-3)
	}
}

// TestWhereAroundBreaks asks for places that no stretch holds.
func TestWhereAroundBreaks(t *testing.T) {
	text := "ab"
	in := lesson.Inline{Kind: lesson.Text, Text: text, Span: source.Span{Start: 0, End: 2}}
	r := running{lesson: &lesson.Lesson{File: source.New("a.md", []byte(text))}, text: " ab ", stretches: []stretch{{start: 1, inline: &in}}}
	for i, want := range []int{0, 0, 1, 2, 2} {
		if got := r.where(i).Span.Start; got != want {
			t.Errorf("byte %d is at %d, want %d", i, got, want)
		}
	}
}
