package check

import (
	"slices"
	"testing"
	"unicode"
)

func TestAmounts(t *testing.T) {
	for text, want := range map[string][]string{
		"36.5 to 37.5\u00a0°C": {"36.5", "37.5"},
		"36,5 à 37,5 °C":       {"36.5", "37.5"},
		"३६.५ से ३७.५ °C":      {"36.5", "37.5"},
		"من ٣٦٫٥ إلى ٣٧٫٥":     {"36.5", "37.5"},
		"۳۶٫۵":                 {"36.5"},
		"৩৬.৫, ৩৭.৫":           {"36.5", "37.5"},
		"every 2 to 3 hours.":  {"2", "3"},
		"1,500":                {"1.500"}, // a mark for thousands is not an amount of thousands
		"２０ g":                 {"20"},
		"two hands":            nil,
		"":                     nil,
	} {
		if got := amounts(text); !slices.Equal(got, want) {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
	}
}

// TestDigit goes through every decimal digit of Unicode: they come in runs of ten,
// so each value is as frequent as any other, and each digit follows the one before.
func TestDigit(t *testing.T) {
	var count [10]int
	last := rune(-1)
	for r := rune(0); r <= unicode.MaxRune; r++ {
		if !unicode.Is(unicode.Nd, r) {
			last = -1
			continue
		}
		d := digit(r)
		if d < 0 || d > 9 || last >= 0 && d != (last+1)%10 || last < 0 && d != 0 {
			t.Fatalf("U+%04X has value %d after %d", r, d, last)
		}
		count[d]++
		last = d
	}
	for d, n := range count {
		if n != count[0] || n < 60 {
			t.Errorf("%d digits of value %d, %d of value 0", n, d, count[0])
		}
	}
}
