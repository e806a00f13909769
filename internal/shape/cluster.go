package shape

import (
	"sort"
	"strings"

	"github.com/go-text/typesetting/harfbuzz"

	"wardleaf/internal/page"
)

// clusters groups the glyphs of a shaped buffer by the text they stand for.
func clusters(b *harfbuzz.Buffer, runes []rune) []page.Cluster {
	var starts []int
	for i, g := range b.Info {
		if i == 0 || g.Cluster != b.Info[i-1].Cluster {
			starts = append(starts, g.Cluster)
		}
	}
	sort.Ints(starts)
	end := map[int]int{}
	for i, s := range starts {
		end[s] = len(runes)
		if i+1 < len(starts) {
			end[s] = starts[i+1]
		}
	}
	var out []page.Cluster
	for i := 0; i < len(b.Info); {
		at := b.Info[i].Cluster
		c := page.Cluster{Text: visible(string(runes[at:end[at]]))}
		for ; i < len(b.Info) && b.Info[i].Cluster == at; i++ {
			p := b.Pos[i]
			c.Glyphs = append(c.Glyphs, page.Glyph{ID: int(b.Info[i].Glyph), X: c.Advance + int(p.XOffset), Y: int(p.YOffset)})
			c.Advance += int(p.XAdvance)
		}
		if c.Text == "" {
			continue // only characters that are never drawn
		}
		out = append(out, c)
	}
	return out
}

// merge makes one cluster of several.
func merge(clusters []page.Cluster, rtl bool) page.Cluster {
	if len(clusters) == 1 {
		return clusters[0]
	}
	var whole page.Cluster
	for _, c := range clusters {
		for _, g := range c.Glyphs {
			g.X += whole.Advance
			whole.Glyphs = append(whole.Glyphs, g)
		}
		whole.Advance += c.Advance
		if rtl {
			whole.Text = c.Text + whole.Text
		} else {
			whole.Text += c.Text
		}
	}
	return whole
}

// visible leaves out the characters that steer layout and are no part of the
// words: bidi controls and zero-width spaces. Joiners stay, for they spell.
func visible(s string) string {
	return strings.Map(func(r rune) rune {
		if ignorable(r) && r != 0x200C && r != 0x200D {
			return -1
		}
		return r
	}, s)
}
