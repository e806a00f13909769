package translate

import (
	"os"
	"strings"
	"testing"

	"wardleaf/internal/bidi"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// A telephone number keeps the order of its groups in right-to-left text: set by
// UAX #9, the line shows them from left to right as they are dialled.
func TestContactKeepsItsOrder(t *testing.T) {
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	ar, err := catalog.Locale("ar", "arab")
	if err != nil {
		t.Fatal(err)
	}
	for value, want := range map[string]string{
		"01234 567":       "٠١٢٣٤ ٥٦٧",
		"+20 (1) 234-567": "+٢٠ (١) ٢٣٤-٥٦٧",
	} {
		text := []rune("اتصلوا على " + ContactValue(&pack.Contact{Value: value}, ar) + " الآن")
		var shown strings.Builder
		for _, i := range bidi.Reorder(bidi.Resolve(text, bidi.RightToLeft).Line(0, len(text))) {
			if r := text[i]; r < 0x202A || r > 0x2069 {
				shown.WriteRune(r)
			}
		}
		if got := strings.ReplaceAll(shown.String(), "\u00a0", " "); !strings.Contains(got, want) {
			t.Errorf("%s is shown as %s", value, got)
		}
	}
}

func TestContactNotFilledIn(t *testing.T) {
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	en, err := catalog.Locale("en", "")
	if err != nil {
		t.Fatal(err)
	}
	if got := ContactValue(&pack.Contact{}, en); got != Blank {
		t.Errorf("got %q", got)
	}
	if got := ContactValue(nil, en); got != Blank {
		t.Errorf("got %q", got)
	}
}
