package site

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// rowsOf returns the tables of a page as text: rows of cells, parted by bars. It fails
// unless each has a caption, and each head says what it is the head of (HTML, 4.9).
func rowsOf(t *testing.T, name string, data []byte) string {
	t.Helper()
	doc, err := html.Parse(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	var text func(n *html.Node) string
	text = func(n *html.Node) string {
		if n.Type == html.TextNode {
			return n.Data
		}
		all := ""
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			all += text(c)
		}
		return all
	}
	each(doc, func(table *html.Node) {
		if table.Data != "table" {
			return
		}
		captions := 0
		each(table, func(n *html.Node) {
			switch n.Data {
			case "caption":
				captions++
			case "tr":
				for c := n.FirstChild; c != nil; c = c.NextSibling {
					scope, _ := attr(c, "scope")
					want := ""
					switch {
					case n.Parent.Data == "thead":
						want = "col"
					case c == n.FirstChild:
						want = "row"
					}
					if scope != want || (c.Data == "th") != (want != "") {
						t.Errorf("%s: a cell %s has scope %q, want %q", name, c.Data, scope, want)
					}
					out.WriteString(text(c) + "|")
				}
				out.WriteString("\n")
			}
		})
		if captions != 1 {
			t.Errorf("%s: a table has %d captions", name, captions)
		}
	})
	return out.String()
}

// TestWardSheets reads published rows (WHO, Managing newborn problems, 2003, Tables F-3,
// F-5 and page C-53) back from the pages of the ward's sheets.
func TestWardSheets(t *testing.T) {
	files := build(t, "../../content")
	for name, want := range map[string][]string{
		"en/sheet-feeding-table.html": {"1500 to 1749 g|8|ml a feed|12|18|22|26|30|33|35|F-3|\n", "under 1250 g|12|ml a feed|0|0|3|5|8|11|15|F-5|\n"},
		"hi/sheet-feeding-table.html": {"|१२|१८|२२|२६|३०|३३|३५|F-3|\n"},
		"ar/sheet-feeding-table.html": {"|١٢|١٨|٢٢|٢٦|٣٠|٣٣|٣٥|"},
		"en/sheet-weight-record.html": {"Then a gain of (g a day)|20 to 30|30 to 35|WHO, 2003, C-53|\n"},
		"ar/sheet-weight-record.html": {"|من ٢٠ إلى ٣٠|من ٣٠ إلى ٣٥|"},
		"en/sheet-contact-log.html":   {"Hour|Day 1|Day 2|Day 3|Day 4|Day 5|Day 6|Day 7|\n", "23:00||||||||\n"},
		"hi/sheet-contact-log.html":   {"२३:००||||||||\n"},
		"en/sheet-sign-tally.html":    {"Very cold, under 35.5\u00a0°C (WHO, 2019)|||||||\n"},
		"ar/sheet-sign-tally.html":    {"٣٥٫٥"},
	} {
		got := rowsOf(t, name, files[name])
		for _, w := range want {
			if !strings.Contains(got, w) && !strings.Contains(strings.ReplaceAll(got, "\u00a0", " "), strings.ReplaceAll(w, "\u00a0", " ")) {
				t.Errorf("%s: %q is not in\n%s", name, w, got)
			}
		}
	}
	// Where lessons place them: staff's tables with the notes for trainers, and no
	// volume for babies with intravenous fluid.
	trainer := string(files["en/trainer.html"])
	for _, w := range []string{"sheet-feeding-table.html", "sheet-weight-record.html", "sheet-sign-tally.html", ">F-3<"} {
		if !strings.Contains(trainer, w) {
			t.Errorf("the trainers' page lacks %s", w)
		}
	}
	if strings.Contains(trainer, ">F-5<") || strings.Contains(string(files["en/feeding.html"]), ">F-3<") {
		t.Error("a table of volumes stands where it should not")
	}
	if !strings.Contains(string(files["ar/through-the-day.html"]), "sheet-contact-log.html") {
		t.Error("the lesson on the day does not lead to the log")
	}
}
