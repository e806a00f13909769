package bidi

import (
	"bufio"
	"compress/gzip"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// conformanceLines calls each with the lines of a gzip file of the Unicode
// Character Database that are neither empty nor a comment.
func conformanceLines(t *testing.T, name string, each func(number int, line string)) {
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
	lines := bufio.NewScanner(z)
	lines.Buffer(nil, 1<<20)
	for number := 1; lines.Scan(); number++ {
		line, _, _ := strings.Cut(lines.Text(), "#")
		if line = strings.TrimSpace(line); line != "" {
			each(number, line)
		}
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
}

// judge compares levels and visual order with the expected ones, in the
// notation of the test files: x is a level that the standard leaves open, and
// such a character is not in the order.
func judge(text []rune, base Direction, wantLevels, wantOrder []string) (Paragraph, error) {
	p := Resolve(text, base)
	levels := p.Line(0, len(text))
	if len(levels) != len(wantLevels) {
		return p, fmt.Errorf("%d levels, want %d", len(levels), len(wantLevels))
	}
	for i, want := range wantLevels {
		if want != "x" && want != strconv.Itoa(int(levels[i])) {
			return p, fmt.Errorf("levels %v, want %v", levels, wantLevels)
		}
	}
	var order []string
	for _, i := range Reorder(levels) {
		if wantLevels[i] != "x" {
			order = append(order, strconv.Itoa(i))
		}
	}
	if !slices.Equal(order, wantOrder) {
		return p, fmt.Errorf("order %v, want %v", order, wantOrder)
	}
	return p, nil
}

// count fails the test when the suite is not whole, so that a cut file cannot
// pass unseen.
func count(t *testing.T, passed, cases, want int) {
	t.Helper()
	t.Logf("%d of %d cases pass", passed, cases)
	if cases != want {
		t.Errorf("read %d cases, the suite has %d", cases, want)
	}
}

// shownFailures is how many failing cases are printed.
const shownFailures = 20

// Source: BidiCharacterTest.txt, Unicode 15.0.0.
func TestBidiCharacterTest(t *testing.T) {
	passed, cases := 0, 0
	conformanceLines(t, "BidiCharacterTest.txt.gz", func(number int, line string) {
		cases++
		field := strings.Split(line, ";")
		var text []rune
		for _, hex := range strings.Fields(field[0]) {
			r, err := strconv.ParseUint(hex, 16, 32)
			if err != nil {
				t.Fatalf("line %d: %v", number, err)
			}
			text = append(text, rune(r))
		}
		base, err := strconv.Atoi(field[1]) // the numbers of Direction
		if err != nil {
			t.Fatalf("line %d: %v", number, err)
		}
		p, err := judge(text, Direction(base), strings.Fields(field[3]), strings.Fields(field[4]))
		if err == nil && strconv.Itoa(int(p.Base())) != field[2] {
			err = fmt.Errorf("base level %d, want %s", p.Base(), field[2])
		}
		if err == nil {
			passed++
			return
		}
		if t.Fail(); cases-passed <= shownFailures {
			t.Logf("line %d: %s: %v", number, line, err)
		}
	})
	count(t, passed, cases, 91707)
}

// sample has a character of each class for BidiTest.txt, which names classes only.
var sample = map[string]rune{
	"L": 'k', "R": 'ש', "AL": 'ك', "EN": '7', "ES": '+', "ET": '%', "AN": '٧', "CS": ',',
	"NSM": 0x0301, "BN": 0x00AD, "B": 0x2029, "S": '\t', "WS": ' ', "ON": '!',
	"LRE": 0x202A, "RLE": 0x202B, "PDF": 0x202C, "LRO": 0x202D, "RLO": 0x202E,
	"LRI": 0x2066, "RLI": 0x2067, "FSI": 0x2068, "PDI": 0x2069,
}

// Source: BidiTest.txt, Unicode 15.0.0. A data line counts once for each base
// direction it is to be tried with.
func TestBidiTest(t *testing.T) {
	passed, cases := 0, 0
	var wantLevels, wantOrder []string
	conformanceLines(t, "BidiTest.txt.gz", func(number int, line string) {
		if levels, ok := strings.CutPrefix(line, "@Levels:"); ok {
			wantLevels = strings.Fields(levels)
			return
		}
		if order, ok := strings.CutPrefix(line, "@Reorder:"); ok {
			wantOrder = strings.Fields(order)
			return
		}
		input, bits, _ := strings.Cut(line, ";")
		var text []rune
		for _, name := range strings.Fields(input) {
			r, ok := sample[name]
			if !ok {
				t.Fatalf("line %d: class %s has no sample character", number, name)
			}
			text = append(text, r)
		}
		tries, err := strconv.ParseUint(strings.TrimSpace(bits), 16, 8)
		if err != nil || tries == 0 || tries > 7 {
			t.Fatalf("line %d: directions %q", number, bits)
		}
		for bit, base := range []Direction{Auto, LeftToRight, RightToLeft} {
			if tries>>bit&1 == 0 {
				continue
			}
			cases++
			_, err := judge(text, base, wantLevels, wantOrder)
			if err == nil {
				passed++
				continue
			}
			if t.Fail(); cases-passed <= shownFailures {
				t.Logf("line %d, direction %d: %s: %v", number, base, line, err)
			}
		}
	})
	count(t, passed, cases, 770241)
}

// Source: BidiBrackets.txt, Unicode 15.0.0.
func TestBracketTableIsWhole(t *testing.T) {
	cases := 0
	partner := map[rune]rune{}
	for _, pair := range bracketPairs15 {
		partner[pair[0]], partner[pair[1]] = pair[1], pair[0]
	}
	conformanceLines(t, "BidiBrackets.txt.gz", func(number int, line string) {
		cases++
		var r, other rune
		var kind string
		if _, err := fmt.Sscanf(strings.ReplaceAll(line, ";", " "), "%x %x %s", &r, &other, &kind); err != nil {
			t.Fatalf("line %d: %v", number, err)
		}
		_, opens, ok := bracketOf(r)
		if !ok || opens != (kind == "o") || partner[r] != other {
			t.Errorf("%U: bracket %t, opens %t, partner %U; want partner %U, kind %s", r, ok, opens, partner[r], other, kind)
		}
	})
	if cases != len(bracketsByRune) {
		t.Errorf("%d brackets, want %d", len(bracketsByRune), cases)
	}
}
