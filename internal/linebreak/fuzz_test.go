package linebreak

import "testing"

// FuzzBreaks checks laws that hold for any text.
func FuzzBreaks(f *testing.F) {
	for _, s := range []string{
		"", "hold the baby", "at -5\n-5", "2.5\u00A0kg (36\u201337) \r\n", "👶🏽👶🏽🏽\u200D\u0301-5", "शिशु को। ٥٪", "\xff\u200B\u2028",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		text := []rune(s)
		at := 0
		must := map[int]bool{}
		for _, b := range Opportunities(text) {
			if b.At <= at || b.At > len(text) {
				t.Fatalf("%q: break at %d after one at %d, length %d", s, b.At, at, len(text))
			}
			at = b.At
			must[at] = b.Must
		}
		if at != len(text) {
			t.Fatalf("%q: last break at %d, length %d", s, at, len(text))
		}
		// A line must end after a separator and at the end of the text (LB3
		// to LB5), and nowhere else.
		for i := 1; i <= len(text); i++ {
			want := i == len(text) || separator(text[i-1]) && !(text[i-1] == '\r' && text[i] == '\n')
			if must[i] != want {
				t.Fatalf("%q: must break at %d is %t, want %t", s, i, must[i], want)
			}
		}
		at = 0
		for _, end := range Clusters(text) {
			if end <= at {
				t.Fatalf("%q: cluster ends at %d after one at %d", s, end, at)
			}
			at = end
		}
		if at != len(text) {
			t.Fatalf("%q: last cluster ends at %d, length %d", s, at, len(text))
		}
	})
}

// separator lists classes BK, CR, LF and NL.
func separator(r rune) bool {
	switch r {
	case '\n', '\v', '\f', '\r', 0x85, 0x2028, 0x2029:
		return true
	}
	return false
}
