package finding

import "testing"

func TestNearest(t *testing.T) {
	names := []string{"caution", "checklist", "key-points", "quiz", "steps", "warning-signs"}
	for word, want := range map[string]string{
		"cuation": "caution", "caution": "caution", "Caution": "caution", "key-point": "key-points",
		"warning-sings": "warning-signs", "quizz": "quiz", "step": "steps",
		"": "", "materials": "", "zzzz": "", "सावधानी": "",
	} {
		if got := Nearest(word, names); got != want {
			t.Errorf("%q: got %q, want %q", word, got, want)
		}
	}
}
