package pdf

import (
	"os"
	"path/filepath"
	"testing"

	gotext "github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"

	"wardleaf/internal/font"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

const fontFolder = "../../templates/fonts"

func loadFace(t testing.TB, name string) *font.Face {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(fontFolder, name+".ttf"))
	if err != nil {
		t.Fatal(err)
	}
	face, err := font.Parse(name, data)
	if err != nil {
		t.Fatal(err)
	}
	return face
}

// shape turns text of one script and direction into a run.
func shape(face *font.Face, size measure.Length, x, y measure.Length, text string, rtl bool, tag *page.Tag) *page.GlyphRun {
	runes := []rune(text)
	buf := harfbuzz.NewBuffer()
	buf.AddRunes(runes, 0, len(runes))
	buf.GuessSegmentProperties()
	buf.Props.Direction = harfbuzz.LeftToRight
	if rtl {
		buf.Props.Direction = harfbuzz.RightToLeft
		buf.Props.Script = language.Arabic
	}
	buf.Shape(harfbuzz.NewFont(gotext.NewFace(face.Shaping())), nil)

	ends := map[int]int{} // of each cluster in the text
	starts := make([]bool, len(runes)+1)
	for _, g := range buf.Info {
		starts[g.Cluster] = true
	}
	for end, i := len(runes), len(runes)-1; i >= 0; i-- {
		if starts[i] {
			ends[i] = end
			end = i
		}
	}
	run := &page.GlyphRun{Face: face, Size: size, X: x, Y: y, RTL: rtl, Tag: tag}
	for i := 0; i < len(buf.Info); {
		start := buf.Info[i].Cluster
		c := page.Cluster{Text: string(runes[start:ends[start]])}
		for ; i < len(buf.Info) && buf.Info[i].Cluster == start; i++ {
			pos := buf.Pos[i]
			c.Glyphs = append(c.Glyphs, page.Glyph{ID: int(buf.Info[i].Glyph), X: c.Advance + int(pos.XOffset), Y: int(pos.YOffset)})
			c.Advance += int(pos.XAdvance)
		}
		run.Clusters = append(run.Clusters, c)
	}
	return run
}
