package check

import (
	"math"
	"os"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
)

// TestReadingEase puts counts into the formulas. The English vector (137 words, 14
// sentences, 210 syllables: grade 6.31) is one that several implementations agree on;
// the others are the papers' constants worked out by hand for round counts.
func TestReadingEase(t *testing.T) {
	for _, k := range []struct {
		lang    string
		s, w, y float64
		want    float64
	}{
		{"en", 14, 137, 210, 6.31},
		{"es", 10, 100, 200, 72.235}, // 206.835 - 124.6 - 10
		{"fr", 10, 100, 150, 86.45},  // 207 - 10.15 - 110.4
		{"pt", 10, 100, 200, 69.485}, // 248.835 - 10.15 - 169.2
	} {
		if got := measuresOfEase[k.lang].score(k.s, k.w, k.y); math.Abs(got-k.want) > 0.005 {
			t.Errorf("%s: got %.3f, want %.3f", k.lang, got, k.want)
		}
	}
}

// TestSyllables counts words as dictionaries divide them.
func TestSyllables(t *testing.T) {
	for lang, words := range map[string]map[string]int{
		"en": {"baby": 2, "hold": 1, "little": 2, "temperature": 4, "face": 1, "wanted": 2, "wrapped": 1, "feed": 1, "knee": 1, "breathing": 2},
		"es": {"bebé": 2, "pecho": 2, "leche": 2, "cuidado": 3, "día": 2, "oeste": 3, "agua": 2},
		"fr": {"bébé": 2, "peau": 1, "mère": 1, "lait": 1, "température": 4, "main": 1},
		"pt": {"bebê": 2, "leite": 2, "mãe": 2, "peito": 2, "temperatura": 5, "coelho": 3},
	} {
		for word, want := range words {
			if got := measuresOfEase[lang].syllables(word); got != want {
				t.Errorf("%s %s: got %d, want %d", lang, word, got, want)
			}
		}
	}
}

// TestStarterReads: the starter pack keeps to what it asks of others.
func TestStarterReads(t *testing.T) {
	p, _, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range p.Modules {
		l := m.Lessons["en"]
		ease := measuresOfEase["en"]
		s, w, y := 0, 0, 0
		pass := &Pass{Pack: p}
		pass.eachRunning(func(r running) {
			if r.lesson == l && r.role != lesson.TrainerNotes {
				a, b, c := ease.counts(r.text)
				s, w, y = s+a, w+b, y+c
			}
		})
		// Health services ask for the sixth grade at most (American Medical Association).
		if grade := ease.score(float64(s), float64(w), float64(y)); grade > 6 {
			t.Errorf("%s: grade %.1f", m.ID, grade)
		}
	}
}
