package drawing

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"wardleaf/internal/source"
)

// Read gives a drawing or problems, with places in the file and numbers within
// bounds, and reads what SVG wrote as the same drawing.
func FuzzRead(f *testing.F) {
	hostile, err := filepath.Glob("testdata/hostile/*.svg")
	if err != nil {
		f.Fatal(err)
	}
	for _, path := range append(hostile, pictures(f)...) {
		b, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(b)
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		d, problems := Read(source.New("f.svg", b))
		if (d == nil) != (len(problems) > 0) {
			t.Fatalf("drawing %v with %d problems", d, len(problems))
		}
		for _, p := range problems {
			if p.Span.Start < 0 || p.Span.End < p.Span.Start || p.Span.End > len(b) || p.What == "" || p.Mend == "" {
				t.Fatalf("bad problem %+v", p)
			}
		}
		if d == nil {
			return
		}
		for _, s := range d.Shapes {
			for i, seg := range s.Path {
				for _, p := range seg.P {
					if !(math.Abs(p.X) <= maxNumber && math.Abs(p.Y) <= maxNumber) {
						t.Fatalf("out of bounds: %v", p)
					}
				}
				if start := i == 0 || s.Path[i-1].Op == Close; start && seg.Op != MoveTo {
					t.Fatalf("a part starts without a move: %v", s.Path)
				}
			}
		}
		svg := plain(d.SVG(Labels{}))
		if len(svg) > maxBytes { // long numbers from short ones
			return
		}
		again, problems := Read(source.New("again.svg", svg))
		if len(problems) > 0 || !reflect.DeepEqual(d, again) {
			t.Fatalf("reads back otherwise: %+v\n%+v\n%+v\n%s", problems, d, again, svg)
		}
	})
}
