package site

import (
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"wardleaf/internal/locale"
	"wardleaf/internal/sewing"
)

// TestCuttingInBrowser asks the page of the cutting plan for plans in Chromium, at the
// width of a phone and of a desk, and compares lengths, waste, cost and the number of
// pieces drawn with this program's.
func TestCuttingInBrowser(t *testing.T) {
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("chromium is missing")
		}
		t.Skip("chromium is not installed")
	}
	files := build(t, "../../content")
	pattern, err := sewing.Draft(sewing.Default())
	if err != nil {
		t.Fatal(err)
	}
	for _, run := range []struct {
		lang   string
		count  int
		width  int64 // cm
		oneWay bool
		room   int // pixels
	}{
		{"en", 2, 90, false, 360},
		{"hi", 7, 110, true, 1280},
		{"ar", 20, 140, false, 360},
	} {
		cloth := "plain"
		if run.oneWay {
			cloth = "one-way"
		}
		fill := fmt.Sprintf(`document.getElementById("cutting-count").value = "%d";
document.getElementById("cutting-width").value = "%d";
document.getElementById("cutting-cloth").value = "%s";
document.getElementById("cutting-price").value = "2,50";
document.getElementById("cutting-count").dispatchEvent(new Event("input"));
document.body.dataset.overflow = document.documentElement.scrollWidth - document.documentElement.clientWidth;`, run.count, run.width, cloth)
		doc := worked(t, chromium, files[run.lang+"/sheet-cutting-plan.html"], fill, run.room)
		said := map[string]string{}
		pieces := 0
		each(doc, func(n *html.Node) {
			if id, _ := attr(n, "id"); strings.HasPrefix(id, "cutting-") && n.Data == "td" {
				said[id] = european(words(n))
			}
			if class, _ := attr(n, "class"); class == "piece" {
				pieces++
			}
			if over, found := attr(n, "data-overflow"); found && over != "0" {
				t.Errorf("%s at %d pixels: the page is %s pixels too wide", run.lang, run.room, over)
			}
		})
		plan, err := sewing.MakePlan(pattern, sewing.Order{Count: run.count, Width: sewing.Length(run.width) * sewing.CM, OneWay: run.oneWay})
		if err != nil {
			t.Fatal(err)
		}
		need, err := pattern.NeedFor(plan, "2.50")
		if err != nil {
			t.Fatal(err)
		}
		loc := editionOf(t, run.lang).Locale
		cm := func(l sewing.Length) string {
			return european(loc.Label("centimetres", locale.With("Amount", loc.Decimal(l.Centimetres()))))
		}
		for id, want := range map[string]string{
			"cutting-length": cm(plan.Length),
			"cutting-bound":  cm(plan.Bound),
			"cutting-gap":    tenths(plan.Gap()) + "\u00a0%",
			"cutting-waste":  tenths(plan.Waste()) + "\u00a0%",
			"cutting-cost":   need.Cost,
		} {
			if said[id] != want {
				t.Errorf("%s: %s is %q in the browser, want %q", run.lang, id, said[id], want)
			}
		}
		drawn := 0
		for _, s := range plan.Sections {
			drawn += len(s.Placed)
		}
		if pieces < drawn { // a piece that goes on in the next stretch is drawn in both
			t.Errorf("%s: %d pieces drawn, want %d", run.lang, pieces, drawn)
		}
	}
}

func tenths(n int) string { return strconv.FormatFloat(float64(n)/10, 'f', -1, 64) }

// TestEveryPlanInBrowser chooses each plan there is in Chromium and compares its numbers
// and the place of every piece with this program's.
func TestEveryPlanInBrowser(t *testing.T) {
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("chromium is not installed") // TestCuttingInBrowser fails where it must be there
	}
	const script = `var kept = [];
function put(id, v) { document.getElementById("cutting-" + id).value = v; }
[70, 90, 110, 140].forEach(function (w) {
  ["plain", "one-way"].forEach(function (c) {
    for (var n = 1; n <= 20; n++) {
      put("width", w); put("cloth", c); put("count", n);
      document.getElementById("cutting-count").dispatchEvent(new Event("input"));
      kept.push(["length", "bound", "gap", "waste"].map(function (id) { return document.getElementById("cutting-" + id).textContent; })
        .concat([].map.call(document.querySelectorAll("#cutting-places td"), function (d) { return d.textContent; })).join("|"));
    }
  });
});
var out = document.createElement("pre");
out.id = "kept";
out.textContent = kept.join("\n");
document.body.appendChild(out);`
	files := build(t, "../../content")
	pattern, err := sewing.Draft(sewing.Default())
	if err != nil {
		t.Fatal(err)
	}
	for _, lang := range []string{"en", "hi", "ar"} {
		loc := editionOf(t, lang).Locale
		var kept []string
		each(worked(t, chromium, files[lang+"/sheet-cutting-plan.html"], script, 800), func(n *html.Node) {
			if id, _ := attr(n, "id"); id == "kept" {
				kept = strings.Split(words(n), "\n")
			}
		})
		cm := func(l sewing.Length) string {
			return loc.Label("centimetres", locale.With("Amount", loc.Decimal(l.Centimetres())))
		}
		var want []string
		for _, width := range sewing.SoldWidths {
			for _, oneWay := range []bool{false, true} {
				for n := 1; n <= cuttingMost; n++ {
					plan, err := sewing.MakePlan(pattern, sewing.Order{Count: n, Width: width, OneWay: oneWay})
					if err != nil {
						t.Fatal(err)
					}
					row := []string{cm(plan.Length), cm(plan.Bound), loc.Decimal(tenths(plan.Gap())) + "\u00a0%", loc.Decimal(tenths(plan.Waste())) + "\u00a0%"}
					for _, s := range plan.Sections {
						for _, q := range s.Placed {
							row = append(row, loc.Label("piece-"+q.Kind.Name()), cm(q.Y), cm(q.X), cm(q.Length), cm(q.Width))
						}
					}
					want = append(want, strings.Join(row, "|"))
				}
			}
		}
		if len(kept) != len(want) {
			t.Fatalf("%s: %d plans, want %d", lang, len(kept), len(want))
		}
		for i := range want {
			if european(kept[i]) != european(want[i]) {
				t.Fatalf("%s: plan %d in the browser is\n%s\nwant\n%s", lang, i, kept[i], want[i])
			}
		}
	}
}
