package impose

import (
	"testing"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// Tiles cover the whole page, join within a tenth of a millimetre, and overlap by the
// stated amount; no window reaches into the 7 mm that printers cannot print.
func TestTiled(t *testing.T) {
	a2 := measure.Size{Width: measure.MM(420), Height: measure.MM(594)}
	for _, c := range []struct {
		name        string
		page, paper measure.Size
		sheets      int
	}{
		{"A3 on A4", measure.A3, measure.A4, 4},
		{"A2 on A4", a2, measure.A4, 8},
		{"A3 on Letter", measure.A3, measure.Letter, 4},
		{"A5 on A4", measure.A5, measure.A4, 1},
	} {
		d := &page.Document{Pages: []page.Page{{Size: c.page, Items: []page.Item{&page.Box{Width: 1000, Height: 1000}}}}}
		out := Tiled(d, c.paper)
		if len(out.Pages) != c.sheets || !out.ExactScale {
			t.Errorf("%s: %d sheets, want %d; exact scale %v", c.name, len(out.Pages), c.sheets, out.ExactScale)
		}
		covered := map[[2]measure.Length]bool{}
		for _, p := range out.Pages {
			window := p.Items[0].(*page.Group)
			inner := window.Items[0].(*page.Group)
			if window.X < measure.MM(7) || window.Y < measure.MM(7) || window.X+window.Clip.Width > p.Size.Width-measure.MM(7) || window.Y+window.Clip.Height > p.Size.Height-measure.MM(7) {
				t.Errorf("%s: a window leaves the printable part", c.name)
			}
			// A point of the page lies at the same place relative to the window on every sheet that shows it.
			for x := measure.Length(0); x <= c.page.Width; x += measure.MM(3.7) {
				for y := measure.Length(0); y <= c.page.Height; y += measure.MM(3.7) {
					px, py := inner.X+x, inner.Y+y
					if px >= 0 && py >= 0 && px <= window.Clip.Width && py <= window.Clip.Height {
						covered[[2]measure.Length{x, y}] = true
					}
				}
			}
		}
		for x := measure.Length(0); x <= c.page.Width; x += measure.MM(3.7) {
			for y := measure.Length(0); y <= c.page.Height; y += measure.MM(3.7) {
				if !covered[[2]measure.Length{x, y}] {
					t.Fatalf("%s: %.1f, %.1f mm is on no sheet", c.name, x.Millimetres(), y.Millimetres())
				}
			}
		}
	}
}

func TestTiledNeighboursAreAStepApart(t *testing.T) {
	d := &page.Document{Pages: []page.Page{{Size: measure.A3}}}
	out := Tiled(d, measure.A4)
	inner := func(i int) *page.Group { return out.Pages[i].Items[0].(*page.Group).Items[0].(*page.Group) }
	window := out.Pages[0].Items[0].(*page.Group).Clip
	step := inner(0).X - inner(1).X
	if got := (window.Width - step).Millimetres(); got < 9.9 || got > 10.1 {
		t.Errorf("two sheets overlap by %.2f mm, want 10", got)
	}
}
