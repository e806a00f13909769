package page

import "testing"

func TestBlack(t *testing.T) {
	leaf, skin, white := Colour{0x1f, 0x5c, 0x3d}, Colour{0xc9, 0x8f, 0x68}, Colour{255, 255, 255}
	run := &GlyphRun{Colour: leaf}
	sign := &GlyphRun{Colour: white}
	path := &Path{Fill: &skin, Stroke: &leaf}
	d := &Document{Pages: []Page{{Items: []Item{run, &Group{Items: []Item{path, sign}}}}}}
	Black(d)
	if run.Colour != (Colour{}) || sign.Colour != white {
		t.Errorf("text is %v and %v", run.Colour, sign.Colour)
	}
	// BT.601: 0.299 R + 0.587 G + 0.114 B of the skin tone.
	if want := (Colour{156, 156, 156}); *path.Fill != want || *path.Stroke != (Colour{}) {
		t.Errorf("drawing is %v with lines %v", *path.Fill, *path.Stroke)
	}
	if skin != (Colour{0xc9, 0x8f, 0x68}) {
		t.Error("a colour that others share was changed")
	}
}
