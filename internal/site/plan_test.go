package site

import (
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"wardleaf/internal/sewing"
)

// TestPlansInBrowser chooses every plan in Chromium and compares its numbers, and the
// place of every piece, with this program's.
func TestPlansInBrowser(t *testing.T) {
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("chromium is missing")
		}
		t.Skip("chromium is not installed")
	}
	// Each plan's tables go to one row of text: the numbers, then the places.
	const script = `var kept = [], pick = function (id, v) {
  var e = document.getElementById(id);
  e.value = v;
  e.dispatchEvent(new Event("change"));
};
[70, 90, 110, 140].forEach(function (w) {
  ["plain", "one-way"].forEach(function (c) {
    for (var n = 1; n <= 20; n++) {
      pick("plan-width", w); pick("plan-cloth", c); pick("plan-count", n);
      kept.push([].map.call(document.querySelectorAll("#plan-result td"), function (d) { return d.textContent; }).join("|"));
    }
  });
});
pick("plan-width", 90); pick("plan-cloth", "plain"); pick("plan-count", 2);
var out = document.createElement("pre");
out.id = "kept";
out.textContent = kept.join("\n");
document.body.appendChild(out);
document.body.dataset.overflow = document.documentElement.scrollWidth - document.documentElement.clientWidth;`
	files := build(t, "../../content")
	p, _ := sewing.Draft(sewing.Default())
	for _, run := range []struct {
		lang  string
		width int
	}{{"en", 360}, {"hi", 1280}, {"ar", 360}} {
		loc := editionOf(t, run.lang).Locale
		doc := worked(t, chromium, files[run.lang+"/sheet-cutting-plan.html"], script, run.width)
		var kept []string
		shapes := 0
		each(doc, func(n *html.Node) {
			id, _ := attr(n, "id")
			if over, ok := attr(n, "data-overflow"); ok && over != "0" {
				t.Errorf("%s at %d pixels: the page is %s pixels too wide", run.lang, run.width, over)
			}
			if id == "kept" {
				kept = strings.Split(words(n), "\n")
			}
			if _, moved := attr(n, "transform"); n.Data == "path" && moved && n.Parent != nil {
				if by, _ := attr(n.Parent, "aria-labelledby"); by == "plan-figure-1" {
					shapes++
				}
			}
		})
		if shapes != 2 {
			t.Errorf("%s: %d bodies drawn for two carriers", run.lang, shapes)
		}
		var want []string
		for _, width := range sewing.SoldWidths {
			for _, oneWay := range []bool{false, true} {
				for n := 1; n <= mostWorked; n++ {
					pl, err := sewing.MakePlan(p, sewing.Order{Count: n, Width: width, OneWay: oneWay})
					if err != nil {
						t.Fatal(err)
					}
					row := []string{pl.Length.Centimetres(), pl.Bound.Centimetres(), number(pl.Gap()), number(pl.Waste())}
					for _, s := range pl.Sections {
						for _, q := range s.Placed {
							row = append(row, loc.Label("piece-"+q.Kind.Name()), q.Y.Centimetres(), q.X.Centimetres(), q.Length.Centimetres(), q.Width.Centimetres())
						}
					}
					want = append(want, strings.Join(row, "|"))
				}
			}
		}
		if len(kept) != len(want) {
			t.Fatalf("%s: %d plans, want %d", run.lang, len(kept), len(want))
		}
		unit := strings.NewReplacer("\u00a0%", "", " cm", "", " सेमी", "", " سم", "")
		for i := range want {
			if got := unit.Replace(european(kept[i])); got != want[i] {
				t.Fatalf("%s: plan %d in the browser is\n%s\nwant\n%s", run.lang, i, got, want[i])
			}
		}
	}
}

func number(tenths int) string {
	if tenths%10 == 0 {
		return strconv.Itoa(tenths / 10)
	}
	return fmt.Sprintf("%d.%d", tenths/10, tenths%10)
}
