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

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// TestPixels sets words at 96 points and compares every pixel with what Chromium,
// which has a shaper and a PDF writer of its own, makes of the same font.
func TestPixels(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	tool(t, "chromium")
	tool(t, "pdftoppm")
	for name, words := range map[string][]string{
		"NotoSans-Regular":           {"AVATAR", "ắở", "d\u0301q\u0323"},
		"NotoSansDevanagari-Regular": {"क्षत्रिय", "कंगारू", "शृंखला", "ट्रॉली", "र्कि"},
		"NotoNaskhArabic-Regular":    {"الرضاعة", "الأمّ", "إلهٌ", "لحم", "(ثلاث)"},
	} {
		t.Run(name, func(t *testing.T) {
			face, rtl := loadFace(t, name), strings.Contains(name, "Arabic")
			d := &page.Document{Title: name}
			var body strings.Builder
			for _, w := range words {
				run := shape(face, measure.Pt(96), measure.Pt(60), measure.Pt(180), w, rtl, nil)
				d.Pages = append(d.Pages, page.Page{Size: measure.Size{Width: measure.Pt(600), Height: measure.Pt(300)}, Items: []page.Item{run}})
				fmt.Fprintf(&body, "<div>%s</div>", html.EscapeString(w))
			}
			fonts, err := filepath.Abs(fontFolder)
			if err != nil {
				t.Fatal(err)
			}
			document := fmt.Sprintf(`<!doctype html><meta charset="utf-8"><style>
				@page { size: 600pt 300pt; margin: 0 } @font-face { font-family: F; src: url("file://%s/%s.ttf") }
				body { margin: 0; font: 96pt F } div { padding: 60pt; height: 180pt; box-sizing: border-box; break-after: page; line-height: 1.8; direction: %s }
				</style>%s`, fonts, name, choose(rtl, "rtl", "ltr"), body.String())
			ours, theirs := rasterise(t, write(t, d)), rasterise(t, chromium(t, document))
			if len(ours) != len(words) || len(theirs) != len(words) {
				t.Fatalf("%d and %d pages, want %d", len(ours), len(theirs), len(words))
			}
			for i, w := range words {
				if off := distance(ours[i], theirs[i]) + distance(theirs[i], ours[i]); off > 0 {
					t.Errorf("%q: %d pixels are more than one pixel off", w, off)
				}
			}
		})
	}
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
