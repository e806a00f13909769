package impose

import (
	"os"
	"os/exec"
	"reflect"
	"regexp"
	"strconv"
	"testing"
)

// Worked cases of the saddle-stitch formula for 10 and 16 pages, and 8 pages bound on the right.
func TestOrderWorkedCases(t *testing.T) {
	for _, c := range []struct {
		n    int
		rtl  bool
		want []Side
	}{
		{16, false, []Side{{16, 1}, {2, 15}, {14, 3}, {4, 13}, {12, 5}, {6, 11}, {10, 7}, {8, 9}}},
		{10, false, []Side{{0, 1}, {2, 0}, {10, 3}, {4, 9}, {8, 5}, {6, 7}}},
		{8, true, []Side{{1, 8}, {7, 2}, {3, 6}, {5, 4}}},
		{0, false, nil},
	} {
		if got := Order(c.n, c.rtl); !reflect.DeepEqual(got, c.want) {
			t.Errorf("Order(%d, %v) = %v, want %v", c.n, c.rtl, got, c.want)
		}
	}
}

// Laws of any saddle-stitched booklet: every page once, the two pages of a side add
// up to N+1, and odd pages lie away from the binding edge's start.
func TestOrderLaws(t *testing.T) {
	for n := 1; n <= 200; n++ {
		for _, rtl := range []bool{false, true} {
			full := (n + 3) / 4 * 4
			seen := map[int]int{}
			for _, s := range Order(n, rtl) {
				for _, p := range []int{s.Left, s.Right} {
					if p > 0 {
						seen[p]++
					}
				}
				if s.Left > 0 && s.Right > 0 && s.Left+s.Right != full+1 {
					t.Fatalf("n=%d: side %v does not add up to %d", n, s, full+1)
				}
				recto := s.Right
				if rtl {
					recto = s.Left
				}
				if recto > 0 && recto%2 == 0 {
					t.Fatalf("n=%d rtl=%v: side %v has an even page where a recto lies", n, rtl, s)
				}
			}
			for p := 1; p <= n; p++ {
				if seen[p] != 1 {
					t.Fatalf("n=%d: page %d appears %d times", n, p, seen[p])
				}
			}
		}
	}
}

// TestOrderPsbook compares with psbook of psutils, where it is installed.
func TestOrderPsbook(t *testing.T) {
	psbook, err := exec.LookPath("psbook")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("psbook is missing; install psutils")
		}
		t.Skip("psbook is not installed")
	}
	for n := 1; n <= 200; n++ {
		ps := "%!PS-Adobe-3.0\n%%Pages: " + strconv.Itoa(n) + "\n%%EndComments\n%%EndProlog\n"
		for p := 1; p <= n; p++ {
			ps += "%%Page: " + strconv.Itoa(p) + " " + strconv.Itoa(p) + "\n(mark" + strconv.Itoa(p) + ") pop showpage\n"
		}
		ps += "%%Trailer\n%%EOF\n"
		in := t.TempDir() + "/in.ps"
		if err := os.WriteFile(in, []byte(ps), 0o644); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command(psbook, "-q", in).Output()
		if err != nil {
			t.Fatalf("psbook: %v", err)
		}
		var got []int
		for _, m := range regexp.MustCompile(`(?m)^%%Page: (\S+) \d+$`).FindAllStringSubmatch(string(out), -1) {
			page, err := strconv.Atoi(m[1])
			if err != nil {
				page = 0 // psbook writes "*" for a blank
			}
			got = append(got, page)
		}
		var want []int
		for _, s := range Order(n, false) {
			want = append(want, s.Left, s.Right)
		}
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("n=%d: psbook %v, Order %v", n, got, want)
		}
	}
}

// Signatures: one up to 20 sheets; above that none of more than 8, nearly equal, all
// but the last a multiple of four, no page lost.
func TestSignatures(t *testing.T) {
	for n := 0; n <= 400; n++ {
		sum, least, most := 0, 1<<30, 0
		parts := Signatures(n)
		for i, p := range parts {
			sum += p
			sheets := (p + 3) / 4
			least, most = min(least, sheets), max(most, sheets)
			if i+1 < len(parts) && p%4 != 0 {
				t.Fatalf("%d pages: signature %d has %d pages", n, i, p)
			}
		}
		switch {
		case sum != n:
			t.Fatalf("%d pages: signatures hold %d", n, sum)
		case n > 0 && n <= 4*Most && len(parts) != 1:
			t.Fatalf("%d pages were split into %v", n, parts)
		case n > 4*Most && (most > signature || most-least > 1):
			t.Fatalf("%d pages were split into %v", n, parts)
		}
	}
}

// Creep with 0.1 mm paper: the innermost of 10 sheets (40 pages) moves 0.9 mm, of 20 sheets 1.9 mm.
func TestCreep(t *testing.T) {
	for sheets, want := range map[int]float64{5: 0.4, 10: 0.9, 15: 1.4, 20: 1.9} {
		if got := Creep(sheets - 1).Millimetres(); got < want-0.01 || got > want+0.01 {
			t.Errorf("%d sheets: %.3f mm, want %.1f", sheets, got, want)
		}
	}
}
