package pdf

import (
	"errors"
	"fmt"
	"maps"
	"math"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// A pen writes the content stream of one page. PDF measures from the bottom left
// corner upwards; place turns the two systems into each other.
type pen struct {
	out    []byte
	height measure.Length
	dx, dy measure.Length    // origin of the group being drawn
	state  map[string]string // operands last written of each operator that sets the graphics state
	fonts  *fontSet
	marks  *marks
	page   int
}

// content returns the content stream of a page.
func content(d *page.Document, index int, fonts *fontSet, m *marks) ([]byte, error) {
	p := &pen{height: d.Pages[index].Size.Height, state: map[string]string{}, fonts: fonts, marks: m, page: index}
	if err := p.items(d.Pages[index].Items); err != nil {
		return nil, err
	}
	p.write(m.end())
	return p.out, nil
}

func (p *pen) items(items []page.Item) error {
	for _, item := range items {
		var err error
		switch i := item.(type) {
		case *page.GlyphRun:
			if err = p.mark(i.Tag); err == nil {
				err = p.run(i)
			}
		case *page.Box:
			if err = p.mark(nil); err == nil {
				p.box(i)
			}
		case *page.Path:
			if err = p.mark(i.Tag); err == nil {
				err = p.path(i)
			}
		case *page.Link:
			err = p.marks.link(p.page, p.dx, p.dy, i)
		case *page.Group:
			p.dx, p.dy = p.dx+i.X, p.dy+i.Y
			err = p.group(i)
			p.dx, p.dy = p.dx-i.X, p.dy-i.Y
		default:
			err = fmt.Errorf("an item of type %T cannot be drawn", item)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// group draws items, within the group's clip if it has one. A clip lasts until the
// graphics state is put back, so what was set inside it is forgotten after it.
func (p *pen) group(g *page.Group) error {
	if g.Clip == nil {
		return p.items(g.Items)
	}
	before := maps.Clone(p.state)
	p.write(p.marks.end() + "q " + p.place(0, g.Clip.Height) + " " + g.Clip.Width.String() + " " + g.Clip.Height.String() + " re W n\n")
	err := p.items(g.Items)
	p.write(p.marks.end() + "Q\n")
	p.state = before
	return err
}

// mark makes what follows the content of a tag.
func (p *pen) mark(t *page.Tag) error {
	s, err := p.marks.start(p.page, p.dx, p.dy, t)
	p.write(s)
	return err
}

func (p *pen) write(s string) { p.out = append(p.out, s...) }

// set writes an operator of the graphics state, unless it would change nothing.
func (p *pen) set(operator, operands string) {
	if was, ok := p.state[operator]; ok && was == operands {
		return
	}
	p.state[operator] = operands
	p.write(operands + " " + operator + "\n")
}

// place writes a point of the page.
func (p *pen) place(x, y measure.Length) string {
	return (x + p.dx).String() + " " + (p.height - y - p.dy).String()
}

func (p *pen) box(b *page.Box) {
	p.set("rg", colour(b.Colour))
	p.write(p.place(b.X, b.Y+b.Height) + " " + b.Width.String() + " " + b.Height.String() + " re f\n")
}

// run shows text. Adjustments are worked out against the widths the file states,
// which are rounded to thousandths of an em, so that no error adds up; half a
// thousandth is let be.
func (p *pen) run(r *page.GlyphRun) error {
	if r.Face == nil || len(r.Clusters) == 0 || r.Size <= 0 {
		return errors.New("a run of text has no face, no clusters or no size")
	}
	f := p.fonts.of(r.Face)
	p.set("rg", colour(r.Colour))
	p.write("BT\n")
	p.set("Tf", "/"+f.name+" "+r.Size.String())
	p.write(choose(r.Upward, "0 1 -1 0 ", "1 0 0 1 ") + p.place(r.X, r.Y) + " Tm[<")
	thousandths := 1000 / float64(r.Face.UnitsPerEm)
	stated, advance := 0.0, 0
	for i := range r.Clusters {
		c := &r.Clusters[i]
		if c.Text == "" {
			return errors.New("a cluster has no text, so nobody can search for it or hear it; a hyphen at the end of a line stands for U+00AD")
		}
		code, err := p.fonts.code(f, c, r.RTL)
		if err != nil {
			return err
		}
		if adjust := stated - float64(advance)*thousandths; math.Abs(adjust) > 0.5 {
			s := number(adjust)
			p.write(">" + s + "<")
			stated = float64(advance) * thousandths
		}
		p.out = fmt.Appendf(p.out, "%04X", code)
		stated += math.Round(thousandths * float64(f.subset.Advance(code)))
		advance += c.Advance
	}
	p.write(">]TJ\nET\n")
	return nil
}

func (p *pen) path(path *page.Path) error {
	if path.Fill == nil && path.Stroke == nil {
		return errors.New("a path is neither filled nor stroked")
	}
	if path.Fill != nil {
		p.set("rg", colour(*path.Fill))
	}
	if path.Stroke != nil {
		p.set("RG", colour(*path.Stroke))
		p.set("w", path.StrokeWidth.String())
		p.set("M", "4") // the limit that SVG has (1.1, 11.4)
		p.set("J", choose(path.RoundCap, "1", "0"))
		p.set("j", choose(path.RoundJoin, "1", "0"))
		dash := ""
		for _, l := range path.Dash {
			dash += l.String() + " "
		}
		p.set("d", "["+dash+"]0")
	}
	for i, s := range path.Segments {
		if i == 0 && s.Op != page.MoveTo {
			return errors.New("a path does not begin with a move")
		}
		switch s.Op {
		case page.MoveTo:
			p.write(p.place(s.P[0].X, s.P[0].Y) + " m\n")
		case page.LineTo:
			p.write(p.place(s.P[0].X, s.P[0].Y) + " l\n")
		case page.CurveTo:
			p.write(p.place(s.P[0].X, s.P[0].Y) + " " + p.place(s.P[1].X, s.P[1].Y) + " " + p.place(s.P[2].X, s.P[2].Y) + " c\n")
		case page.Close:
			p.write("h\n")
		default:
			return fmt.Errorf("a path has the unknown operation %d", s.Op)
		}
	}
	star := choose(path.EvenOdd, "*", "")
	switch {
	case path.Stroke == nil:
		p.write("f" + star + "\n")
	case path.Fill == nil:
		p.write("S\n")
	default:
		p.write("B" + star + "\n")
	}
	return nil
}

func choose(condition bool, yes, no string) string {
	if condition {
		return yes
	}
	return no
}
