package drawing

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wardleaf/internal/source"
)

// Every file of testdata/hostile is refused, at the places and with the words of
// testdata/hostile/expected.txt. The classes of attack and of slip come from the
// element and event lists of SVG 1.1 (appendix M), the known gaps of encoding/xml
// (document types, duplicate attributes, depth, trailing content), and the export
// habits of drawing programs.
func TestHostile(t *testing.T) {
	paths, err := filepath.Glob("testdata/hostile/*.svg")
	if err != nil || len(paths) == 0 {
		t.Fatal("no hostile files: ", err)
	}
	var got strings.Builder
	for _, path := range paths {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		f := source.New(filepath.Base(path), b)
		d, problems := Read(f)
		if d != nil || len(problems) == 0 {
			t.Errorf("%s: accepted", path)
		}
		for _, p := range problems {
			line, column := f.Position(p.Span.Start)
			fmt.Fprintf(&got, "%s:%d:%d: %q %s; %s\n", f.Path, line, column, b[p.Span.Start:p.Span.End], p.What, p.Mend)
		}
	}
	want, err := os.ReadFile("testdata/hostile/expected.txt")
	if err != nil {
		t.Fatal(err)
	}
	gotLines, wantLines := strings.Split(got.String(), "\n"), strings.Split(string(want), "\n")
	for i := range max(len(gotLines), len(wantLines)) {
		g, w := "", ""
		if i < len(gotLines) {
			g = gotLines[i]
		}
		if i < len(wantLines) {
			w = wantLines[i]
		}
		if g != w {
			t.Fatalf("expected.txt line %d:\ngot  %s\nwant %s", i+1, g, w)
		}
	}
}

// Files that are hostile by their size.
func TestLimits(t *testing.T) {
	deep := func(n int) string {
		return strings.Repeat("<g>", n) + `<path d="M0 0h9v9"/>` + strings.Repeat("</g>", n)
	}
	tests := []struct {
		name, body, what string
	}{
		{"depth 32", deep(30), ""},
		{"depth 33", deep(31), "the elements are nested deeper than 32"},
		{"depth 20000", deep(20000), "the elements are nested deeper than 32"},
		{"20,000 segments in two paths", `<path d="M0 0` + strings.Repeat("h1", 9999) + `"/><path d="M0 0` + strings.Repeat("h1", 9999) + `"/>`, ""},
		{"20,001 segments in two paths", `<path d="M0 0` + strings.Repeat("h1", 9999) + `"/><path d="M0 0` + strings.Repeat("h1", 10000) + `"/>`, "the picture has more than 20000 segments"},
		{"arcs of many segments", `<path d="M0 0` + strings.Repeat("a1 1 0 111 1", 9999) + `"/>`, "the picture has more than 20000 segments"},
		{"512 KiB", "<g/><line x2='9' stroke='#000'/>" + strings.Repeat(" ", maxBytes-len(inSVG(""))-32), ""},
		{"more than 512 KiB", strings.Repeat(" ", maxBytes), "the file is larger than 512 KiB"},
		{"a long name", "<" + strings.Repeat("é", 9999) + "/>", "the element <" + strings.Repeat("é", 40) + "…> is not one that figures are made of"},
		{"many attributes", "<path d='M0 0h1v1' " + strings.Repeat("q='' ", 20000) + "/>", "the element has more than 32 attributes"},
		{"many refused elements", strings.Repeat("<script/>", 20000), "<script> would run code on the reader's device"},
		{"a long comment", "<!--" + strings.Repeat("<g>", 9999) + "--><line x2='9' stroke='#000'/>", ""},
	}
	for _, tt := range tests {
		d, problems := Read(source.New("", inSVG(tt.body)))
		switch {
		case tt.what == "" && (d == nil || len(problems) > 0):
			t.Errorf("%s: refused: %+v", tt.name, problems)
		case tt.what != "" && (d != nil || len(problems) == 0 || problems[0].What != tt.what):
			t.Errorf("%s: %.300v, want %s", tt.name, problems, tt.what)
		case len(problems) > maxProblems:
			t.Errorf("%s: %d problems", tt.name, len(problems))
		}
	}
}
