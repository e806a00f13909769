package drawing

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"os/exec"
	"testing"
)

// Limits on how two renderings of one picture may differ.
const (
	maxMean   = 1.0   // of 255, over all pixels and channels
	strong    = 32    // of 255: a pixel that differs so much can be seen
	maxStrong = 0.001 // share of the pixels
)

// Each picture and its rewritten form look the same to librsvg, an independent renderer of SVG.
func TestLooksTheSame(t *testing.T) {
	rsvg, err := exec.LookPath("rsvg-convert")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("rsvg-convert (package librsvg2-bin) is missing: ", err)
		}
		t.Skip("rsvg-convert (package librsvg2-bin) is missing")
	}
	for _, path := range pictures(t) {
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		d := read(t, path, b)
		want, got := raster(t, rsvg, b), raster(t, rsvg, d.SVG(Labels{ID: "f", Title: "Title"}))
		mean, share := difference(want, got)
		t.Logf("%s: mean difference %.4f, %.4f %% of pixels strongly", path, mean, share*100)
		if mean >= maxMean || share >= maxStrong {
			t.Errorf("%s looks different when rewritten", path)
		}
		if blank(want) {
			t.Errorf("%s shows nothing", path)
		}
	}
}

// raster renders on white, 800 pixels wide.
func raster(t *testing.T, rsvg string, svg []byte) *image.RGBA {
	t.Helper()
	cmd := exec.Command(rsvg, "--width=800", "--height=800", "--keep-aspect-ratio", "--background-color=white")
	cmd.Stdin = bytes.NewReader(svg)
	var errors bytes.Buffer
	cmd.Stderr = &errors
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, errors.String())
	}
	m, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	rgba := image.NewRGBA(m.Bounds())
	for y := range rgba.Rect.Max.Y {
		for x := range rgba.Rect.Max.X {
			rgba.Set(x, y, m.At(x, y))
		}
	}
	return rgba
}

// difference returns the mean difference of all channels, and the share of pixels of
// which one channel differs strongly.
func difference(a, b *image.RGBA) (mean, share float64) {
	if a.Rect != b.Rect {
		return 255, 1
	}
	sum, many := 0, 0
	for i := 0; i < len(a.Pix); i += 4 {
		worst := 0
		for j := i; j < i+3; j++ {
			d := int(a.Pix[j]) - int(b.Pix[j])
			d = max(d, -d)
			sum += d
			worst = max(worst, d)
		}
		if worst >= strong {
			many++
		}
	}
	pixels := float64(len(a.Pix) / 4)
	return float64(sum) / 3 / pixels, float64(many) / pixels
}

func blank(m *image.RGBA) bool {
	for _, v := range m.Pix {
		if v != 255 {
			return false
		}
	}
	return true
}
