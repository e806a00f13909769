package quiz

import (
	"reflect"
	"slices"
	"testing"
)

// A version holds every question and option once, whatever the seed.
func TestVersionHoldsEverythingOnce(t *testing.T) {
	options := []int{4, 3, 4, 2, 5, 1}
	for seed := range 500 {
		v := Version(seed, options)
		var questions []int
		for _, p := range v {
			questions = append(questions, p.Question)
			o := slices.Clone(p.Options)
			slices.Sort(o)
			for i := range o {
				if o[i] != i {
					t.Fatalf("seed %d: question %d has options %v", seed, p.Question, p.Options)
				}
			}
			if len(o) != options[p.Question] {
				t.Fatalf("seed %d: question %d has %d options", seed, p.Question, len(o))
			}
		}
		slices.Sort(questions)
		if !slices.Equal(questions, []int{0, 1, 2, 3, 4, 5}) {
			t.Fatalf("seed %d: questions %v", seed, questions)
		}
	}
}

// Papers printed long ago must still match their key: the order of a seed never changes.
func TestVersionStaysTheSame(t *testing.T) {
	got := Version(1234, []int{3, 4, 3})
	if again := Version(1234, []int{3, 4, 3}); !reflect.DeepEqual(got, again) {
		t.Fatal("the same seed gave two orders")
	}
	want := []Placed{{0, []int{2, 0, 1}}, {2, []int{1, 0, 2}}, {1, []int{0, 1, 2, 3}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("seed 1234: %v, want %v", got, want)
	}
}

func TestSeedsDiffer(t *testing.T) {
	if Seed("wrapping", "a") == Seed("wrapping", "b") || Seed("wrapping", "a") == Seed("feeding", "a") {
		t.Error("two papers share a seed")
	}
	if s := Seed("wrapping", "a"); s < 1000 || s > 9999 {
		t.Errorf("seed %d", s)
	}
}

func TestEmptyQuiz(t *testing.T) {
	if got := Version(1, nil); len(got) != 0 {
		t.Errorf("got %v", got)
	}
}
