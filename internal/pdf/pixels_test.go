package pdf

import (
	"bytes"
	"context"
	"fmt"
	"html"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// TestPixels sets words at 72 points and compares every pixel with what Chromium,
// which has a shaper and a PDF writer of its own, makes of the same font.
func TestPixels(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	tool(t, "chromium")
	tool(t, "pdftoppm")
	fonts, err := filepath.Abs(fontFolder)
	if err != nil {
		t.Fatal(err)
	}
	size := measure.Size{Width: measure.Pt(520), Height: measure.Pt(360)}
	d := &page.Document{Title: "Words"}
	var style, body strings.Builder
	var all []string
	for _, s := range scripts {
		fmt.Fprintf(&style, "@font-face { font-family: %s; src: url(\"file://%s/%s-Regular.ttf\") }\n", s.code, fonts, s.font)
		lang := s.languages[0]
		set := s.setter(t, lang)
		for _, w := range append(difficult[s.code], sampled(t, lang, 3)...) {
			d.Pages = append(d.Pages, page.Page{Size: size, Items: set.line(w, false, measure.Pt(72), measure.Pt(40), measure.Pt(220))})
			fmt.Fprintf(&body, "<div lang=%s dir=%s style=\"font-family: %s\">%s</div>", lang, choose(s.rtl, "rtl", "ltr"), s.code, html.EscapeString(w))
			all = append(all, w)
		}
	}
	ours, theirs := rasterise(t, write(t, d)), rasterise(t, chromium(t, `<!doctype html><meta charset="utf-8"><style>
		@page { size: 520pt 360pt; margin: 0 } body { margin: 0; font-size: 72pt; line-height: 360pt }
		div { height: 360pt; padding: 0 40pt; overflow: hidden; white-space: nowrap; break-after: page }
		`+style.String()+`</style>`+body.String()))
	if len(ours) != len(all) || len(theirs) != len(all) {
		t.Fatalf("%d and %d pages, want %d", len(ours), len(theirs), len(all))
	}
	for i, w := range all {
		if ours[i].Rect.Empty() {
			t.Errorf("%q: nothing is drawn", w)
		}
		if off := distance(ours[i], theirs[i]) + distance(theirs[i], ours[i]); off > 0 {
			t.Errorf("%q: %d pixels are more than one pixel off", w, off)
		}
	}
}

// difficult words have marks that stack, letters that change places, or ligatures.
var difficult = map[string][]string{
	"Latn": {"AVATAR", "ắở", "d\u0301q\u0323"},
	"Deva": {"क्षत्रिय", "कंगारू", "शृंखला", "ट्रॉली", "र्कि"},
	"Beng": {"ক্ষত্রিয়", "স্ত্রী", "হ্নৌ"},
	"Taml": {"ஸ்ரீ", "கௌரவ"},
	"Telu": {"స్త్రీ", "క్షౌర"},
	"Arab": {"الرضاعة", "الأمّ", "إلهٌ", "لحم"},
	"Aran": {"بچہ", "صحیح", "نَفَس"},
	"Ethi": {"ጤንነት"},
	"Mymr": {"သမုဒ္ဒရာ", "ကြွေး", "နို့"},
	"Khmr": {"ស្ត្រី", "ឥណ្ឌូណេស៊ី", "ញ៉ាំ"},
	"Thai": {"น้ำ", "ที่ปู่", "ฎุญู"},
}

// sampled returns n words from the whole length of a language's list, none too long for a page.
func sampled(t *testing.T, lang string, n int) (words []string) {
	list := wordList(t, lang)
	for i := range n {
		at := (2*i + 1) * len(list) / (2 * n)
		for utf8.RuneCountInString(list[at]) > 9 {
			at++
		}
		words = append(words, list[at])
	}
	return words
}

// chromium prints a page of HTML.
func chromium(t *testing.T, document string) []byte {
	dir := t.TempDir()
	source, out := filepath.Join(dir, "words.html"), filepath.Join(dir, "words.pdf")
	if err := os.WriteFile(source, []byte(document), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithTimeout(context.Background(), time.Minute)
	defer stop()
	cmd := exec.CommandContext(ctx, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer",
		"--user-data-dir="+filepath.Join(dir, "profile"), "--print-to-pdf="+out, "file://"+source)
	if log, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("chromium: %v\n%s", err, log)
	}
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// rasterise returns the inked part of every page.
func rasterise(t *testing.T, data []byte) []*image.Gray {
	var pages []*image.Gray
	for raw := []byte(run(t, data, "pdftoppm", "-gray", "-r", "150", "FILE")); len(raw) > 0; {
		var w, h int
		if _, err := fmt.Sscanf(string(raw[:32]), "P5\n%d %d\n255\n", &w, &h); err != nil {
			t.Fatal(err)
		}
		raw = raw[bytes.Index(raw, []byte("\n255\n"))+5:]
		img := &image.Gray{Pix: raw[:w*h], Stride: w, Rect: image.Rect(0, 0, w, h)}
		raw = raw[w*h:]
		var ink image.Rectangle
		for i, v := range img.Pix {
			if v < 128 {
				ink = ink.Union(image.Rect(i%w, i/w, i%w+1, i/w+1))
			}
		}
		pages = append(pages, img.SubImage(ink).(*image.Gray))
	}
	return pages
}

// distance counts the dark pixels of a that have no grey pixel of b beside them,
// when their top left corners are laid on each other.
func distance(a, b *image.Gray) int {
	n := 0
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			if a.GrayAt(a.Rect.Min.X+x, a.Rect.Min.Y+y).Y > 64 {
				continue
			}
			near := false
			for i := range 9 {
				at := image.Pt(b.Rect.Min.X+x+i%3-1, b.Rect.Min.Y+y+i/3-1)
				near = near || at.In(b.Rect) && b.GrayAt(at.X, at.Y).Y < 192
			}
			if !near {
				n++
			}
		}
	}
	return n
}
