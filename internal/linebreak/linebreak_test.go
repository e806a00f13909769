package linebreak

import (
	"slices"
	"strings"
	"testing"
)

// marked is the text with | where a line may end and || where it must.
func marked(s string) string {
	text := []rune(s)
	var out strings.Builder
	at := 0
	for _, b := range Opportunities(text) {
		out.WriteString(string(text[at:b.At]))
		out.WriteByte('|')
		if b.Must {
			out.WriteByte('|')
		}
		at = b.At
	}
	return out.String()
}

func TestOpportunities(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", ""},
		{"words", "hold the baby", "hold |the |baby||"},
		{"spaces stay with the line they end", "skin   to", "skin   |to||"},
		{"no-break space holds a unit", "2.5\u00A0kg now", "2.5\u00A0kg |now||"},
		{"a space does not", "2.5 kg", "2.5 |kg||"},
		{"number and percent", "5% of 1,500.5 g", "5% |of |1,500.5 |g||"},
		{"rate", "mL/kg", "mL/|kg||"},
		{"hyphen", "skin-to-skin", "skin-|to-|skin||"},
		{"soft hyphen", "kan\u00ADga", "kan\u00AD|ga||"},
		{"zero width space", "คน\u200Bดี", "คน\u200B|ดี||"},
		{"word joiner", "a\u2060b", "a\u2060b||"},
		{"brackets", "see (page 4) now", "see |(page |4) |now||"},
		{"line feed", "a\nb\n", "a\n||b\n||"},
		{"carriage return and line feed", "a\r\n\r\nb", "a\r\n||\r\n||b||"},
		{"line separator", "a\u2028b", "a\u2028||b||"},
		{"danda does not begin a line", "ठीक। अब", "ठीक। |अब||"},
		{"Arabic comma", "نعم، الآن", "نعم، |الآن||"},
		{"Ethiopic wordspace", "ልጅ፡ነው", "ልጅ፡|ነው||"},

		// LB18 and LB4 before a negative number, against LB25.
		{"negative number after a space", "at -5 to -1.5", "at |-5 |to |-1.5||"},
		{"negative number after a line feed", "a\n-5", "a\n||-5||"},
		{"negative number after a zero width space", "a\u200B-5", "a\u200B|-5||"},
		{"negative Arabic number", "a -\u0665", "a |-\u0665||"},
		{"negative number in brackets", "a (-5) ( -5)", "a |(-5) |( -5)||"},
		{"hyphen in a range", "36-37 a -b", "36-37 |a |-|b||"},
		{"minus sign", "at \u22125", "at |\u22125||"},

		// LB30b: a modifier joins its emoji and forces nothing.
		{"skin tone", "👶🏽 in", "👶🏽 |in||"},
		{"skin tone and a word", "👶🏽in", "👶🏽|in||"},
		{"skin tone and a full stop", "👶🏽. a", "👶🏽. |a||"},
		{"skin tones in a row", "👶🏽👶🏾\n👶🏿", "👶🏽|👶🏾\n||👶🏿||"},
		{"skin tone joined", "👩🏽\u200D🍼 a", "👩🏽\u200D🍼 |a||"},
		{"modifiers in a row", "👶🏽🏽a", "👶🏽|🏽|a||"},
	} {
		if got := marked(c.text); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestClusters(t *testing.T) {
	for _, c := range []struct {
		text string
		want []int
	}{
		{"", nil},
		{"kmc", []int{1, 2, 3}},
		{"e\u0301a", []int{2, 3}},
		{"शिशु", []int{2, 4}},
		{"a\r\nb", []int{1, 3, 4}},
		{"👶🏽👩🏽\u200D🍼", []int{2, 6}},
	} {
		if got := Clusters([]rune(c.text)); !slices.Equal(got, c.want) {
			t.Errorf("%q: %v, want %v", c.text, got, c.want)
		}
	}
}

// The text belongs to the caller.
func TestTextIsLeftAlone(t *testing.T) {
	text := []rune("at -5")
	Opportunities(text)
	if string(text) != "at -5" {
		t.Errorf("text became %q", string(text))
	}
}

func BenchmarkOpportunities(b *testing.B) {
	text := []rune(strings.Repeat("Weigh the baby each day at the same hour, between 36.5 and 37.5 °C. ", 12))
	b.ReportAllocs()
	for b.Loop() {
		Opportunities(text)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(text)), "ns/char")
}
