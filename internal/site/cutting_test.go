package site

import (
	"fmt"
	"os"
	"os/exec"
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
		loc := editionOf(t, run.lang).Locale
		cm := func(l sewing.Length) string {
			return european(loc.Label("centimetres", locale.With("Amount", loc.Decimal(l.Centimetres()))))
		}
		for id, want := range map[string]string{
			"cutting-length": cm(plan.Length),
			"cutting-bound":  cm(plan.Bound),
			"cutting-waste":  fmt.Sprintf("%.1f\u00a0%%", float64(plan.Waste())/10),
			"cutting-cost":   fmt.Sprintf("%.2f", float64(plan.Length)/float64(100*sewing.CM)*2.5),
		} {
			if said[id] != want {
				t.Errorf("%s: %s is %q in the browser, want %q", run.lang, id, said[id], want)
			}
		}
		drawn := 0
		for _, s := range plan.Sections {
			drawn += len(s.Placed)
		}
		if pieces != drawn {
			t.Errorf("%s: %d pieces drawn, want %d", run.lang, pieces, drawn)
		}
	}
}
