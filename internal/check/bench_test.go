package check

import (
	"os"
	"testing"

	"wardleaf/internal/load"
)

// BenchmarkRun checks the starter pack in all its languages, without its pages.
func BenchmarkRun(b *testing.B) {
	p, _, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil {
		b.Fatal(err)
	}
	c, err := catalog()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Run(p, today, c)
	}
}
