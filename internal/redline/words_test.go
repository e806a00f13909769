package redline

import (
	"strings"
	"testing"
)

// marked writes runs with what was struck in round brackets and what was added in square ones.
func marked(runs []Run) string {
	var b strings.Builder
	for _, r := range runs {
		switch r.Op {
		case Struck:
			b.WriteString("(" + r.Text + ")")
		case Added:
			b.WriteString("[" + r.Text + "]")
		default:
			b.WriteString(r.Text)
		}
	}
	return b.String()
}

// Whole words are struck and added, in every script; a word is never cut within.
func TestCompareWords(t *testing.T) {
	for _, k := range []struct{ name, old, now, want string }{
		{"nothing", "Hold the baby.", "Hold the baby.", "Hold the baby."},
		{"one word", "Hold the baby close.", "Hold the baby near.", "Hold the baby (close)[near]."},
		{"several words in a row", "Lay the baby down flat now", "Hold a child upright now", "(Lay the baby down flat)[Hold a child upright] now"},
		{"a number with a point", "Keep 36.5 to 37.5", "Keep 36.0 to 37.5", "Keep (36.5)[36.0] to 37.5"},
		{"Devanagari digits", "३६.५ से ३७.५", "३६.० से ३७.५", "(३६.५)[३६.०] से ३७.५"},
		{"Devanagari negation", "मुँह को कभी न ढके।", "मुँह को ढके।", "मुँह को (कभी न )ढके।"},
		{"Devanagari vowel sign", "दूध दें।", "दूध दो।", "दूध (दें)[दो]।"},
		{"Arabic", "أبقوا يداً على الطفل", "أبقوا يدين على الطفل", "أبقوا (يداً)[يدين] على الطفل"},
		{"Arabic digits", "من ٣ إلى ٥ أمتار", "من ٤ إلى ٥ أمتار", "من (٣)[٤] إلى ٥ أمتار"},
		{"Ethiopic", "ፊቱን አይሸፍኑ።", "ፊቱን ይሸፍኑ።", "ፊቱን (አይሸፍኑ)[ይሸፍኑ]።"},
		{"Bengali", "নাক ঢাকবেন না।", "নাক ঢাকবেন।", "নাক ঢাকবেন( না)।"},
		{"Thai, without spaces", "อย่าปิดหน้า", "ปิดหน้า", "(อย่า)ปิดหน้า"},
	} {
		if got := marked(compareWords(k.old, k.now)); got != k.want {
			t.Errorf("%s: %q, want %q", k.name, got, k.want)
		}
	}
}

// A number is touched by its digits, by the word before it and by the one after it.
func TestTouchesNumber(t *testing.T) {
	for _, k := range []struct {
		old, now string
		want     bool
	}{
		{"Feed every 3 hours.", "Feed every 2 hours.", true},
		{"Weigh 25 g.", "Weigh 25 kg.", true},
		{"Keep at least 8 hours.", "Keep at most 8 hours.", true},
		{"Under 36.5 °C", "Under 36.5 °F", true},
		{"Feed 3 hours, by day.", "Feed 3 hours, by night.", false},
		{"Hold the baby.", "Hold your baby.", false},
		{"Under 36.5 (WHO, 2003): call now.", "Under 36.5 (WHO, 2003): phone now.", false},
		{"2–3 hours", "2–3 days", true},
		{"36.5 °C", "36.5 C", true},
		{"٣ أمتار", "٤ أمتار", true},
		{"৪ বার", "৮ বার", true},
		{"፬ ጊዜ", "፭ ጊዜ", true}, // numerals of Ethiopic are no decimal digits
		{"Up to 12 %", "Up to 12", true},
	} {
		runs := compareWords(k.old, k.now)
		if got := touchesNumber(runs, Struck) || touchesNumber(runs, Added); got != k.want {
			t.Errorf("%q to %q: %v, want %v", k.old, k.now, got, k.want)
		}
	}
}

func TestExcerpt(t *testing.T) {
	long := strings.Repeat("so many words ", 10)
	runs := Excerpt(compareWords(long+"three "+long, long+"four "+long))
	if got, want := marked(runs), "… so many words (three)[four] so many words …"; strings.Join(strings.Fields(got), " ") != want {
		t.Errorf("%q, want %q", got, want)
	}
}
