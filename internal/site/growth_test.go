package site

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"html/template"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"wardleaf/internal/growth"
	"wardleaf/internal/locale"
	"wardleaf/internal/sheet"
	"wardleaf/internal/source"
	"wardleaf/internal/translate"
)

const workedRows = `date,weight-g,length-cm,head-cm
2026-08-05,640,,
2026-09-01,1500,41.0,28.8
2026-09-04,1405,,
2026-09-13,1535,,29.2
2026-09-28,1880,43.4,30.9
2026-11-20,3790,50.5,36.1
2027-03-01,6500,61.5,41
`

// TestGrowthInBrowser fills in the page in Chromium, at the width of a phone and of a
// desk, and compares every z-score with this program's, and every point with the chart.
// That the page works at all shows that its policy lets its own script run.
func TestGrowthInBrowser(t *testing.T) {
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("chromium is missing")
		}
		t.Skip("chromium is not installed")
	}
	files := build(t, "../../content")
	born := time.Date(2026, 8, 1, 0, 0, 0, 0, time.UTC)
	baby := growth.Baby{Birth: born, Weeks: 27, Days: 1}
	marked := 0
	for _, run := range []struct {
		lang, sex string
		width     int
		rows      string

		birthWeight float64 // g
	}{
		{"en", "girl", 360, workedRows, 0},
		{"hi", "boy", 1280, workedRows, 1600},
		{"ar", "girl", 360, strings.NewReplacer("1", "١", "5", "٥", "0", "٠").Replace(workedRows), 1300},
	} {
		baby.Sex = growth.Girl
		if run.sex == "boy" {
			baby.Sex = growth.Boy
		}
		text, _ := json.Marshal(run.rows)
		fill := fmt.Sprintf(`document.getElementById("growth-born").value = "2026-08-01";
document.getElementById("growth-weeks").value = "27"; document.getElementById("growth-days").value = "1";
document.querySelector("input[value=%s]").click();
document.getElementById("growth-rows").value = %s;
document.getElementById("growth-birth-weight").value = "%.0f";
document.getElementById("growth-plot").click();
document.body.dataset.overflow = document.documentElement.scrollWidth - document.documentElement.clientWidth;`, run.sex, text, run.birthWeight)
		doc := worked(t, chromium, files[run.lang+"/sheet-growth-chart.html"], fill, run.width)
		var cells []string
		var circles [][2]float64
		hidden := 0
		each(doc, func(n *html.Node) {
			switch {
			case n.Data == "body":
				if over, _ := attr(n, "data-overflow"); over != "0" {
					t.Errorf("%s at %d pixels: the page is %s pixels too wide", run.lang, run.width, over)
				}
			case n.Data == "td" && n.Parent != nil && n.Parent.Parent != nil:
				if id, _ := attr(n.Parent.Parent, "id"); id == "growth-body" {
					cells = append(cells, european(words(n)))
				}
			case n.Data == "circle":
				x, _ := attr(n, "cx")
				y, _ := attr(n, "cy")
				fx, _ := strconv.ParseFloat(x, 64)
				fy, _ := strconv.ParseFloat(y, 64)
				circles = append(circles, [2]float64{fx, fy})
			case n.Data == "section":
				if _, is := attr(n, "hidden"); is {
					hidden++
				}
			case n.Data == "li" && n.Parent.Data == "ul":
				if id, _ := attr(n.Parent, "id"); id == "growth-wrong" {
					t.Errorf("%s: %s", run.lang, words(n))
				}
			}
		})
		if hidden != 3 {
			t.Errorf("%s: %d sections hidden, want the three of the other sex", run.lang, hidden)
		}
		rows, found := growth.Read(source.New("rows.csv", []byte(workedRows)), baby)
		if len(found) > 0 {
			t.Fatal(found[0].What)
		}
		if len(cells) != 6*len(rows) {
			t.Fatalf("%s: %d cells for %d rows", run.lang, len(cells), len(rows))
		}
		at := 0
		for i, r := range rows {
			for _, m := range growth.Measures {
				cell := cells[6*i+1+int(m)]
				if r.Values[m] == 0 {
					if cell != "" {
						t.Errorf("%s row %d: %q for nothing", run.lang, i, cell)
					}
					continue
				}
				want, _ := growth.Z(m, baby.Sex, r.Age, r.Values[m])
				got := regexp.MustCompile(`\((.*)\)`).FindStringSubmatch(cell)
				if got == nil {
					t.Fatalf("%s row %d: cell %q", run.lang, i, cell)
				}
				z, err := strconv.ParseFloat(strings.ReplaceAll(got[1], "−", "-"), 64)
				if err != nil || math.Abs(z-want) > 0.01 {
					t.Errorf("%s row %d measure %d: the browser has %q, want %.4f", run.lang, i, m, cell, want)
				}
			}
		}
		loc := editionOf(t, run.lang)
		limits := sheet.GrowthLimits(loc.Pack)
		for i, p := range growth.Course(baby, run.birthWeight/1000, rows, limits) {
			gain, marks := "", ""
			if !p.Since.IsZero() {
				gain = european(sheet.Signed(loc.Locale, p.Gain, 1))
			}
			for k, m := range p.Marks {
				if k > 0 {
					marks += "; "
				}
				marks += european(sheet.MarkName(loc.Locale, m, limits, run.birthWeight < 1500 && run.birthWeight > 0))
			}
			if cells[6*i+4] != gain || cells[6*i+5] != marks {
				t.Errorf("%s row %d: gain %q and marks %q, want %q and %q", run.lang, i, cells[6*i+4], cells[6*i+5], gain, marks)
			}
			marked += len(p.Marks)
		}
		for _, m := range growth.Measures { // charts stand in this order
			f := sheet.GrowthFrame(m, sheet.A4)
			for _, r := range rows {
				if r.Values[m] == 0 {
					continue
				}
				x := f.Left + float64(r.Age-growth.FirstDay)/(growth.LastDay-growth.FirstDay)*(f.Right-f.Left)
				y := f.Bottom - (r.Values[m]-f.Low)/(f.High-f.Low)*(f.Bottom-f.Top)
				if at >= len(circles) || math.Abs(circles[at][0]-x) > 0.01 || math.Abs(circles[at][1]-y) > 0.01 {
					t.Fatalf("%s: point %d of %d is not at %.2f, %.2f", run.lang, at, len(circles), x, y)
				}
				at++
			}
		}
	}
	if marked < 4 {
		t.Errorf("only %d marks were compared", marked)
	}
}

func editionOf(t *testing.T, lang string) *translate.Edition {
	t.Helper()
	p := read(t, "../../content")
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	loc, err := catalog.Locale(lang, p.Digits[lang])
	if err != nil {
		t.Fatal(err)
	}
	return translate.Join(p, loc)
}

// TestGrowthRefuses says in the browser what the program says of a file, row by row.
func TestGrowthRefuses(t *testing.T) {
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("chromium is not installed")
	}
	files := build(t, "../../content")
	fill := `document.getElementById("growth-born").value = "2026-08-01";
document.getElementById("growth-weeks").value = "27";
document.querySelector("input[value=girl]").click();
document.getElementById("growth-rows").value = "2026-08-05,heavy,,\n2026-07-05,900,,\n2026-08-20,10000,,\n2026-08-20,-5,,\n2026-02-30,900,,\n2026-08-21,900,,\n2026-08-21,900,,\n<b>,1,1,1";
document.getElementById("growth-plot").click();`
	doc := worked(t, chromium, files["en/sheet-growth-chart.html"], fill, 800)
	var said []string
	each(doc, func(n *html.Node) {
		if id, _ := attr(n, "id"); n.Data == "ul" && id == "growth-wrong" {
			for c := n.FirstChild; c != nil; c = c.NextSibling {
				said = append(said, strings.SplitAfterN(words(c), " ", 4)[1])
			}
		}
	})
	if got := strings.Join(said, ""); got != "1 2: 3: 4 5 7: 8 " {
		t.Errorf("rows that were refused: %q", got)
	}
}

// worked runs a script in a page that its policy is made to let run too, and reads the page back.
func worked(t *testing.T, chromium string, data []byte, script string, width int) *html.Node {
	t.Helper()
	before := []byte("script-src '")
	if !bytes.Contains(data, before) {
		t.Fatal("the page has no policy for scripts")
	}
	data = bytes.Replace(data, before, []byte("script-src '"+hash(template.JS(script))+"' '"), 1)
	data = bytes.Replace(data, []byte("</body>"), []byte("<script>"+script+"</script></body>"), 1)
	// A window has a least width of its own; a frame does not.
	data = fmt.Appendf(nil, `<!doctype html><body><iframe id="frame" width="%d" height="900" srcdoc="%s"></iframe><script>
addEventListener("load", function () {
  var page = document.createElement("pre");
  page.textContent = document.getElementById("frame").contentDocument.documentElement.outerHTML;
  document.body.replaceChildren(page);
});</script>`, width, html.EscapeString(string(data)))
	dir := t.TempDir()
	file := filepath.Join(dir, "page.html")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithTimeout(context.Background(), time.Minute)
	defer stop()
	out, err := exec.CommandContext(ctx, chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--window-size=1400,1000",
		"--user-data-dir="+filepath.Join(dir, "profile"), "--dump-dom", "file://"+file).Output()
	if err != nil {
		t.Fatalf("chromium: %v", err)
	}
	frame, err := html.Parse(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	var doc *html.Node
	each(frame, func(n *html.Node) {
		if n.Data == "pre" {
			doc, err = html.Parse(strings.NewReader(words(n)))
		}
	})
	if doc == nil || err != nil {
		t.Fatal("the page did not come back", err)
	}
	return doc
}

// words is the text of a node.
func words(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	var b strings.Builder
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		b.WriteString(words(c))
	}
	return b.String()
}

// european turns the digits and decimal marks of Hindi and Arabic into 0 to 9 and a point.
func european(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= '٠' && r <= '٩':
			return r - '٠' + '0'
		case r >= '०' && r <= '९':
			return r - '०' + '0'
		case r == '\u2066' || r == '\u2069':
			return -1
		case r == '٫':
			return '.'
		}
		return r
	}, s)
}
