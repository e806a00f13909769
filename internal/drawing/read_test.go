package drawing

import (
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"testing"

	"wardleaf/internal/source"
)

// read reads a drawing that must be sound.
func read(t *testing.T, path string, b []byte) *Drawing {
	t.Helper()
	f := source.New(path, b)
	d, problems := Read(f)
	for _, p := range problems {
		line, column := f.Position(p.Span.Start)
		t.Errorf("%s:%d:%d: %s; %s", path, line, column, p.What, p.Mend)
	}
	if (d == nil) != (len(problems) > 0) {
		t.Fatalf("%s: drawing %v with %d problems", path, d, len(problems))
	}
	if d == nil {
		t.FailNow()
	}
	return d
}

// inSVG wraps elements into a root of 100 by 100.
func inSVG(body string) []byte {
	return []byte(`<svg xmlns="` + namespace + `" viewBox="0 0 100 100">` + body + `</svg>`)
}

var spoken = regexp.MustCompile(` (role|aria-[a-z]+)="[^"]*"|<(title|desc) .*\n`)

// plain takes the words for screen readers out of what SVG wrote, which Read would refuse.
func plain(svg []byte) []byte { return spoken.ReplaceAll(svg, nil) }

// pictures are the drawings of this package's tests and of the pack.
func pictures(t testing.TB) []string {
	var all []string
	for _, pattern := range []string{"testdata/plain/*.svg", "../../content/*/figures/*.svg"} {
		paths, err := filepath.Glob(filepath.FromSlash(pattern))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, paths...)
	}
	return all
}

// What is written and read again is the same drawing.
func TestWriteAndReadAgain(t *testing.T) {
	for _, path := range pictures(t) {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		d := read(t, path, b)
		svg := d.SVG(Labels{ID: "f1", Title: `A "title" & <more>`, Description: "Two\nlines"})
		again := read(t, path+" written", plain(svg))
		if !reflect.DeepEqual(d, again) {
			t.Errorf("%s: reads back otherwise:\n%+v\n%+v", path, d, again)
		}
	}
}

func TestShapes(t *testing.T) {
	black := Paint{Set: true}
	red := Paint{R: 255, Set: true}
	square := []Segment{m(1, 2), l(4, 2), l(4, 6), l(1, 6), {Op: Close}}
	tests := []struct {
		name, body string
		want       []Shape
	}{
		{"black unless said otherwise", `<rect x="1" y="2" width="3" height="4"/>`,
			[]Shape{{Path: square, Fill: black}}},
		{"inherits", `<g fill="#f00" stroke="#000" stroke-width="2" stroke-linejoin="round"><g stroke-linecap="square"><rect x="1" y="2" width="3" height="4"/></g></g>`,
			[]Shape{{Path: square, Fill: red, Stroke: black, StrokeWidth: 2, Cap: SquareCap, Join: RoundJoin}}},
		{"transforms points, width and dashes", `<g transform="scale(2)" stroke="#000"><line x2="5" transform="translate(1 1)" stroke-dasharray="1 2 3"/></g>`,
			[]Shape{{Path: []Segment{m(2, 2), l(12, 2)}, Stroke: black, StrokeWidth: 2, Dash: []float64{2, 4, 6, 2, 4, 6}}}},
		{"a width grows by the root of the area", `<path d="M0 0h5" fill="none" stroke="#000" transform="scale(2 8)"/>`,
			[]Shape{{Path: []Segment{m(0, 0), l(10, 0)}, Stroke: black, StrokeWidth: 4}}},
		{"the last transform comes first", `<path d="M1 0h1" transform="translate(10) rotate(90)"/>`,
			[]Shape{{Path: []Segment{m(10, 1), l(10, 2)}, Fill: black}}},
		{"invisible shapes go", `<path d="M0 0h1" fill="none"/><path d="M1 1M2 2" stroke="#000"/><circle r="0"/><line x2="3" stroke="#000" stroke-width="0"/><polygon points=""/><rect x="1" y="2" width="3" height="4" stroke="#f00" stroke-width="0" stroke-linecap="round"/>`,
			[]Shape{{Path: square, Fill: black}}},
		{"a line has no inside", `<line x2="3" fill="#f00" fill-rule="evenodd" stroke="#F00"/>`,
			[]Shape{{Path: []Segment{m(0, 0), l(3, 0)}, Stroke: red, StrokeWidth: 1}}},
		{"dashes of 0 are a solid line", `<line x2="3" stroke="#f00" stroke-dasharray="0 0"/>`,
			[]Shape{{Path: []Segment{m(0, 0), l(3, 0)}, Stroke: red, StrokeWidth: 1}}},
		{"key", `<g transform="translate(10 20) scale(2)"><text x="5" y="5" font-size="4" text-anchor="middle" font-weight="700" fill="#f00"> <!-- here --> Q </text></g>`,
			[]Shape{{Key: &Key{Text: "Q", X: 20, Y: 30, Size: 8, Bold: true, Colour: red}}}},
		{"hundredths", `<path d="M.001-.004L1.006 2.994z"/>`,
			[]Shape{{Path: []Segment{m(0, 0), l(1.01, 2.99), {Op: Close}}, Fill: black}}},
		{"polygon", `<polygon points="1,2 4-2,1-6" fill-rule="evenodd"/>`,
			[]Shape{{Path: []Segment{m(1, 2), l(4, -2), l(1, -6), {Op: Close}}, Fill: black, EvenOdd: true}}},
	}
	for _, tt := range tests {
		d := read(t, tt.name, inSVG(tt.body))
		if !reflect.DeepEqual(d.Shapes, tt.want) {
			t.Errorf("%s:\ngot  %+v\nwant %+v", tt.name, d.Shapes, tt.want)
		}
	}
}

func m(x, y float64) Segment { return Segment{MoveTo, [3]Point{{x, y}}} }
func l(x, y float64) Segment { return Segment{LineTo, [3]Point{{x, y}}} }
func c(x1, y1, x2, y2, x, y float64) Segment {
	return Segment{CubicTo, [3]Point{{x1, y1}, {x2, y2}, {x, y}}}
}
