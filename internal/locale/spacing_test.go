package locale

import "testing"

func TestFrenchSpacing(t *testing.T) {
	fr := &Locale{Tag: "fr"}
	for in, want := range map[string]string{
		"Respire-t-il ?":              "Respire-t-il\u202f?",
		"Respire-t-il?":               "Respire-t-il\u202f?",
		"Attention : danger ; agir !": "Attention\u00a0: danger\u202f; agir\u202f!",
		"« peau à peau »":             "«\u00a0peau à peau\u00a0»",
		"«peau à peau»":               "«\u00a0peau à peau\u00a0»",
		"Quoi ?!":                     "Quoi\u202f?!",
		"à 10:30":                     "à 10:30",
		"?":                           "?",
		"":                            "",
	} {
		if got := fr.Spacing(in); got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
		if again := fr.Spacing(want); again != want {
			t.Errorf("%q is not left as it is: %q", want, again)
		}
	}
	en := &Locale{Tag: "en"}
	if got := en.Spacing("Is the baby breathing?"); got != "Is the baby breathing?" {
		t.Errorf("English became %q", got)
	}
}
