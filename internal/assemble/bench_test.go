package assemble

import (
	"os"
	"testing"
	"time"

	"wardleaf/internal/measure"
)

// BenchmarkStarterPack assembles the starter pack: every language, every piece.
func BenchmarkStarterPack(b *testing.B) {
	o := Options{
		Pack: os.DirFS("../../content"), Name: "content", Jobs: 2, Paper: measure.A4,
		Today:  time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC),
		Assets: Assets{Locales: os.DirFS("../../locales"), Templates: os.DirFS("../../templates"), Fonts: os.DirFS("../../templates/fonts")},
	}
	for b.Loop() {
		o.Out = b.TempDir() + "/out"
		r, err := Run(o)
		if err != nil {
			b.Fatal(err)
		}
		if !r.Published {
			b.Fatal("nothing was published")
		}
	}
}
