package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
)

// Labels are the words that belong to a drawing in one language.
type Labels struct {
	ID          string                  // starts the ids in the drawing; unique on its page
	Title       string                  // the alternative text; without it the drawing is hidden from screen readers
	Description string                  // a longer text, or empty
	Key         func(key string) string // how the language writes a key; nil leaves it as it is
	RTL         bool                    // the words of labels run from right to left
}

// SVG returns the drawing as an element to stand in an HTML page or a file. Fonts
// of keys are left to the page.
func (d *Drawing) SVG(l Labels) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="%s" viewBox="%s"`, namespace, spaced(d.MinX, d.MinY, d.Width, d.Height))
	if l.Title == "" {
		b.WriteString(` aria-hidden="true">` + "\n")
	} else {
		id := escape(l.ID)
		fmt.Fprintf(&b, ` role="img" aria-labelledby="%s-title"`, id)
		if l.Description != "" {
			fmt.Fprintf(&b, ` aria-describedby="%s-desc"`, id)
		}
		fmt.Fprintf(&b, ">\n<title id=\"%s-title\">%s</title>\n", id, escape(l.Title))
		if l.Description != "" {
			fmt.Fprintf(&b, "<desc id=\"%s-desc\">%s</desc>\n", id, escape(l.Description))
		}
	}
	for i := range d.Shapes {
		d.Shapes[i].write(&b, l)
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

func (s *Shape) write(b *bytes.Buffer, words Labels) {
	if s.Label != nil {
		s.Label.write(b, words.RTL)
		return
	}
	if k := s.Key; k != nil {
		text := k.Text
		if words.Key != nil {
			text = words.Key(text)
		}
		weight := ""
		if k.Bold {
			weight = ` font-weight="bold"`
		}
		fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s" text-anchor="middle"%s fill="%s">%s</text>`+"\n",
			short(k.X), short(k.Y), short(k.Size), weight, k.Colour, escape(text))
		return
	}
	fmt.Fprintf(b, `<path d="%s" fill="%s"`, pathData(s.Path), s.Fill)
	if s.EvenOdd {
		b.WriteString(` fill-rule="evenodd"`)
	}
	if s.Stroke.Set {
		fmt.Fprintf(b, ` stroke="%s" stroke-width="%s"`, s.Stroke, short(s.StrokeWidth))
		if s.Cap != ButtCap {
			fmt.Fprintf(b, ` stroke-linecap="%s"`, capNames[s.Cap])
		}
		if s.Join != MiterJoin {
			fmt.Fprintf(b, ` stroke-linejoin="%s"`, joinNames[s.Join])
		}
		if s.Dash != nil {
			fmt.Fprintf(b, ` stroke-dasharray="%s"`, spaced(s.Dash...))
		}
	}
	b.WriteString("/>\n")
}

// pathData writes absolute commands, with separators only where they are needed.
func pathData(path []Segment) string {
	var b strings.Builder
	for _, s := range path {
		b.WriteByte("MLCZ"[s.Op])
		for i, p := range s.P[:points[s.Op]] {
			for j, v := range [2]float64{p.X, p.Y} {
				n := short(v)
				if i+j > 0 && n[0] != '-' {
					b.WriteByte(' ')
				}
				b.WriteString(n)
			}
		}
	}
	return b.String()
}

// String returns the colour as none, #rgb or #rrggbb.
func (p Paint) String() string {
	if !p.Set {
		return "none"
	}
	s := fmt.Sprintf("#%02x%02x%02x", p.R, p.G, p.B)
	if s[1] == s[2] && s[3] == s[4] && s[5] == s[6] {
		return string([]byte{'#', s[1], s[3], s[5]})
	}
	return s
}

// short writes a number with at most two decimals and nothing superfluous.
func short(v float64) string {
	s := strconv.FormatFloat(hundredths(v), 'f', -1, 64)
	if rest, ok := strings.CutPrefix(s, "-0."); ok {
		return "-." + rest
	}
	if rest, ok := strings.CutPrefix(s, "0."); ok {
		return "." + rest
	}
	return s
}

func spaced(vs ...float64) string {
	ss := make([]string, len(vs))
	for i, v := range vs {
		ss[i] = short(v)
	}
	return strings.Join(ss, " ")
}

// escape makes any text safe in HTML and XML, in elements and in quoted attributes.
func escape(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) // a Builder does not fail
	return b.String()
}
