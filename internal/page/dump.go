package page

import (
	"fmt"
	"strings"
)

// Dump writes a document as text, one line an item, lengths in points to a tenth.
// Two layouts are the same to the eye when their dumps are; tests compare them.
func Dump(d *Document) string {
	var b strings.Builder
	fmt.Fprintf(&b, "document %q lang %s rtl %v\n", d.Title, d.Lang, d.RTL)
	for _, m := range d.Outline {
		fmt.Fprintf(&b, "bookmark %d %q page %d\n", m.Level, m.Title, m.Page+1)
	}
	for i := range d.Pages {
		p := &d.Pages[i]
		fmt.Fprintf(&b, "page %d %.1f x %.1f\n", i+1, p.Size.Width.Points(), p.Size.Height.Points())
		dumpItems(&b, p.Items, " ")
	}
	return b.String()
}

func dumpItems(b *strings.Builder, items []Item, indent string) {
	for _, it := range items {
		b.WriteString(indent)
		switch it := it.(type) {
		case *GlyphRun:
			fmt.Fprintf(b, "text %.1f,%.1f %.1f %s %s %q\n", it.X.Points(), it.Y.Points(), it.Size.Points(), it.Face.Name, dumpTag(it.Tag), it.Text())
		case *Box:
			fmt.Fprintf(b, "box %.1f,%.1f %.1f x %.1f %02x%02x%02x\n", it.X.Points(), it.Y.Points(), it.Width.Points(), it.Height.Points(), it.Colour.R, it.Colour.G, it.Colour.B)
		case *Path:
			fmt.Fprintf(b, "path of %d segments %s\n", len(it.Segments), dumpTag(it.Tag))
		case *Link:
			fmt.Fprintf(b, "link %.1f,%.1f %.1f x %.1f to %s page %d\n", it.X.Points(), it.Y.Points(), it.Width.Points(), it.Height.Points(), it.URI, it.Page+1)
		case *Group:
			fmt.Fprintf(b, "group %.1f,%.1f\n", it.X.Points(), it.Y.Points())
			dumpItems(b, it.Items, indent+" ")
		}
	}
}

func dumpTag(t *Tag) string {
	if t == nil {
		return "artifact"
	}
	return t.Role
}
