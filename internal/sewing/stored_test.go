package sewing

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "search again and write stored.txt")

// TestStored searches again and compares with what is stored: the first numbers of
// carriers always, all of them under CI=true and with -update.
func TestStored(t *testing.T) {
	sizes := defaultRects()
	most := 6
	if *update || os.Getenv("CI") == "true" {
		most = together
	}
	var b strings.Builder
	for _, width := range SoldWidths {
		for _, oneWay := range []bool{false, true} {
			cloth := map[bool]string{false: "plain", true: "one-way"}[oneWay]
			best := make([]Length, together+1)
			for n := 1; n <= most; n++ {
				for m := 1; m < n; m++ {
					if l := best[m] + best[n-m]; best[n] == 0 || l < best[n] {
						best[n] = l
					}
				}
				o := Order{n, width, oneWay}
				s, code, length := section(sizes, o, best[n]), "none", Length(0)
				if s != nil {
					code, length, best[n] = s.Code(), s.Length/CM, s.Length
				}
				line := fmt.Sprintf("%d %s %d %d %s\n", width/CM, cloth, n, length, code)
				b.WriteString(line)
				if !*update && !strings.Contains(storedText, line) {
					t.Errorf("%+v: the search finds %d cm; what is stored differs: run with -update", o, length)
				}
			}
		}
	}
	if *update {
		if err := os.WriteFile("stored.txt", []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// TestEveryStoredPlan checks all plans that pages show, and prints them with -v.
func TestEveryStoredPlan(t *testing.T) {
	p, _ := Draft(Default())
	for _, width := range SoldWidths {
		for _, oneWay := range []bool{false, true} {
			var row []string
			for n := 1; n <= together; n++ {
				pl := plan(t, p, Order{n, width, oneWay})
				row = append(row, pl.Length.Centimetres()+"/"+pl.Bound.Centimetres())
			}
			t.Logf("%s cm, one-way %v: %s", width.Centimetres(), oneWay, strings.Join(row, " "))
		}
	}
}
