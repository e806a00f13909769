package site

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

func styles(t *testing.T) string {
	t.Helper()
	b, err := os.ReadFile("../../templates/site.css")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Every ink on paper has at least the contrast of level AAA: 7 to 1, as WCAG 2.2
// defines it (1.4.6), by day, by night and in print.
func TestContrast(t *testing.T) {
	palette := regexp.MustCompile(`--ink: (#\w+); --leaf: (#\w+); --clay: (#\w+); --paper: (#\w+)`)
	found := palette.FindAllStringSubmatch(styles(t), -1)
	if len(found) != 3 {
		t.Fatalf("%d palettes, want those of day, night and print", len(found))
	}
	for _, p := range found {
		for _, ink := range p[1:4] {
			if c := contrast(t, ink, p[4]); c < 7 {
				t.Errorf("%s on %s has a contrast of %.2f", ink, p[4], c)
			}
		}
	}
}

func contrast(t *testing.T, a, b string) float64 {
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// luminance is WCAG's relative luminance of #rgb or #rrggbb.
func luminance(t *testing.T, colour string) float64 {
	hex := strings.TrimPrefix(colour, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		v, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatalf("colour %q: %v", colour, err)
		}
		c := float64(v) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

// The style sheet names no side by hand, so that it turns round for a language written from
// right to left, and asks for nothing from elsewhere.
func TestStyleSheet(t *testing.T) {
	css := styles(t)
	for _, re := range []string{
		`(margin|padding|border|inset)-(left|right)\b`,
		`[{;]\s*(left|right)\s*:`,
		`(float|clear|text-align)\s*:\s*(left|right)`,
		`url\(`, `@import`, `@font-face`, `transition`, `animation`, `!important`, `</`,
	} {
		if m := regexp.MustCompile(re).FindString(css); m != "" {
			t.Errorf("the style sheet has %q", m)
		}
	}
}
