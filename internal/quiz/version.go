// Package quiz puts the questions of a quiz and their options into the order of a
// printed version. The order follows from a seed that is printed on the paper, and
// from nothing in the text, so it is the same in every language.
package quiz

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
)

// Placed is one question of a version: its index in the lesson, and for each place
// on the paper the index of the option that stands there.
type Placed struct {
	Question int
	Options  []int
}

// Seed returns the seed of a version of a module's quiz, from 1000 to 9999 so that
// it is easy to read out and to write down.
func Seed(module, version string) int {
	h := fnv.New32a()
	fmt.Fprintf(h, "%s/%s", module, version)
	return 1000 + int(h.Sum32()%9000)
}

// Version returns the order of a quiz in which question i has options[i] options.
func Version(seed int, options []int) []Placed {
	r := rand.New(rand.NewPCG(uint64(seed), 0))
	out := make([]Placed, len(options))
	for place, q := range r.Perm(len(options)) {
		out[place] = Placed{Question: q, Options: r.Perm(options[q])}
	}
	return out
}
