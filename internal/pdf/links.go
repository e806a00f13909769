package pdf

import (
	"cmp"
	"fmt"
	"strings"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// addLinks adds a link annotation for each link: ISO 32000-1, 12.5.6.5.
func addLinks(f *file, d *page.Document, m *marks) error {
	annots := make([]string, len(d.Pages))
	for i := range m.links {
		p := &m.links[i]
		l := p.link
		height := d.Pages[p.page].Size.Height
		left, top := l.X+p.dx, l.Y+p.dy
		dict := fmt.Sprintf("<</Type/Annot/Subtype/Link/F 4/Border[0 0 0]/Rect[%v %v %v %v]",
			left, height-top-l.Height, left+l.Width, height-top)
		switch {
		case l.URI != "":
			dict += "/A<</S/URI/URI" + byteString(asciiURI(l.URI)) + ">>"
		case l.Page >= 0 && l.Page < len(d.Pages):
			dict += "/Dest" + destination(d, l.Page, l.Top)
		default:
			return fmt.Errorf("page %d: a link leads to page %d, which the document does not have", p.page+1, l.Page+1)
		}
		if p.key >= 0 {
			dict += fmt.Sprintf("/StructParent %d", p.key)
			if text := cmp.Or(l.Tag.Alt, l.Tag.Actual, l.URI); text != "" {
				dict += "/Contents" + textString(text)
			}
		}
		p.object = f.add(dict + ">>")
		annots[p.page] += fmt.Sprintf("%d 0 R ", p.object)
	}
	for i, refs := range annots {
		if refs != "" {
			f.extend(pageObject(i), "/Annots["+refs+"]")
		}
	}
	return nil
}

// destination names a place on a page: ISO 32000-1, 12.3.2.2.
func destination(d *page.Document, index int, top measure.Length) string {
	return fmt.Sprintf("[%d 0 R/XYZ null %v null]", pageObject(index), d.Pages[index].Size.Height-top)
}

// asciiURI percent-encodes what may not stand in a URI: RFC 3987, 3.1.
func asciiURI(s string) string {
	var b strings.Builder
	for i := range len(s) {
		if s[i] > ' ' && s[i] <= '~' {
			b.WriteByte(s[i])
		} else {
			fmt.Fprintf(&b, "%%%02X", s[i])
		}
	}
	return b.String()
}
