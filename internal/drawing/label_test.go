package drawing

import (
	"strings"
	"testing"

	"wardleaf/internal/source"
)

// Anchors are those of SVG 1.1, 10.9.1: where text runs from right to left, its start
// is at its right.
func TestLabelSVG(t *testing.T) {
	d := &Drawing{Width: 20, Height: 10}
	d.Say(Label{Text: "a<b", X: 1.239, Y: 2, Size: 3, Colour: Ink})
	d.Say(Label{Text: "middle", X: 10, Y: 5, Size: 3, Anchor: AtMiddle, Bold: true, Colour: Leaf})
	d.Say(Label{Text: "up", X: 19, Y: 9, Size: 3, Anchor: AtRight, Upward: true, Colour: Ink})
	for _, tt := range []struct {
		rtl  bool
		want []string
	}{
		{false, []string{
			`<text x="1.24" y="2" font-size="3" text-anchor="start" fill="#1f1d1a">a&lt;b</text>`,
			`<text x="10" y="5" font-size="3" text-anchor="middle" font-weight="bold" fill="#1f5c3d">middle</text>`,
			`<text x="19" y="9" font-size="3" text-anchor="end" transform="rotate(-90 19 9)" fill="#1f1d1a">up</text>`,
		}},
		{true, []string{
			`<text x="1.24" y="2" font-size="3" text-anchor="end" direction="rtl" fill="#1f1d1a">a&lt;b</text>`,
			`text-anchor="middle" direction="rtl" font-weight="bold"`,
			`text-anchor="start" direction="rtl" transform="rotate(-90 19 9)"`,
		}},
	} {
		svg := string(d.SVG(Labels{ID: "x", Title: "x", RTL: tt.rtl}))
		for _, w := range tt.want {
			if !strings.Contains(svg, w) {
				t.Errorf("rtl %v: no %s in\n%s", tt.rtl, w, svg)
			}
		}
		if _, found := Read(source.New("x.svg", []byte(svg))); len(found) == 0 {
			t.Error("words in a picture of a pack are not refused")
		}
	}
}
