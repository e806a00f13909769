package linebreak

import (
	"bufio"
	"compress/gzip"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// conformance runs a break test of the Unicode Character Database: lines of
// code points with ÷ where there is a boundary and × where there is none.
// The boundary before the first character is left out (LB2, GB1).
func conformance(t *testing.T, name string, want int, boundaries func([]rune) []int) {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "conformance", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	passed, cases := 0, 0
	lines := bufio.NewScanner(z)
	for number := 1; lines.Scan(); number++ {
		line, _, _ := strings.Cut(lines.Text(), "#")
		var text []rune
		var expected []int
		for _, word := range strings.Fields(line) {
			switch word {
			case "×":
			case "÷":
				if len(text) > 0 {
					expected = append(expected, len(text))
				}
			default:
				r, err := strconv.ParseUint(word, 16, 32)
				if err != nil {
					t.Fatalf("line %d: %v", number, err)
				}
				text = append(text, rune(r))
			}
		}
		if text == nil {
			continue
		}
		cases++
		if got := boundaries(text); !slices.Equal(got, expected) {
			t.Errorf("line %d: %s: boundaries %v, want %v", number, line, got, expected)
			continue
		}
		passed++
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	t.Logf("%d of %d cases pass", passed, cases)
	if cases != want {
		t.Errorf("read %d cases, the suite has %d", cases, want)
	}
}

// Source: LineBreakTest.txt, Unicode 15.0.0.
func TestLineBreakTest(t *testing.T) {
	conformance(t, "LineBreakTest.txt.gz", 7654, func(text []rune) []int {
		var ends []int
		for _, b := range Opportunities(text) {
			ends = append(ends, b.At)
		}
		return ends
	})
}

// Source: GraphemeBreakTest.txt, Unicode 15.0.0.
func TestGraphemeBreakTest(t *testing.T) {
	conformance(t, "GraphemeBreakTest.txt.gz", 602, Clusters)
}
