package piece

import (
	"cmp"
	"strings"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/page"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// press is what every piece is made with: the edition, a setter for its sizes, the
// page it is set on, and the result as it grows.
type press struct {
	*translate.Edition
	s     *typeset.Setter
	frame typeset.Frame
	// frames are those of each page, when pages of one piece differ; nil: all have frame.
	frames []typeset.Frame
	label  string // what the piece is called, at the foot of its pages
	bare   bool   // pages carry no running head
	mark   string // that what all of it is about is not translated yet
	root   *page.Tag
	res    *Result
}

func newPress(e *translate.Edition, fonts *typeset.Fonts, sizes typeset.Sizes, frame typeset.Frame, label string) (*press, error) {
	s, err := typeset.NewSetter(fonts, e.Locale, sizes)
	if err != nil {
		return nil, err
	}
	s.Drawing = func(path string) *drawing.Drawing {
		if f := e.Pack.Figures[path]; f != nil {
			return f.Drawing
		}
		return nil
	}
	p := &press{Edition: e, s: s, frame: frame, label: label, root: &page.Tag{Role: "Document"}, res: &Result{}}
	s.Sheet = p.placed
	return p, nil
}

// use makes the setter mark the steps of a module that must never be missed.
func (p *press) use(m *translate.Module) {
	critical := map[[2]int]bool{}
	for _, r := range m.Record.CriticalSteps {
		critical[[2]int{r.Part, r.Step}] = true
	}
	p.s.Critical = func(part, step int) bool { return critical[[2]int{part, step}] }
}

// finish makes the document of paginated sheets: links lead to pages, anchors become
// bookmarks, and every page gets its furniture. modules are those it is about;
// covers says that first and last page carry no running head or foot.
func (p *press) finish(title string, sheets []typeset.Sheet, spots []typeset.Spot, modules []translate.Module, covers bool) {
	loc := p.Locale
	d := &page.Document{
		Title: title, Subject: p.Pack.Subtitle.In(loc.Tag, p.Pack.Source), Author: p.Pack.Facility.Name.In(loc.Tag, p.Pack.Source),
		Lang: loc.Tag, RTL: loc.RTL, Date: p.Prepared, Tags: p.root,
	}
	where := map[string]typeset.Spot{}
	for _, sp := range spots {
		where[sp.Name] = sp
		if sp.Title != "" {
			d.Outline = append(d.Outline, page.Bookmark{Title: sp.Title, Level: sp.Level, Page: sp.Page, Top: sp.Top})
		}
	}
	band := band(loc, modules)
	for i, sh := range sheets {
		f := typeset.Furniture{Band: band}
		if mark := cmp.Or(p.mark, sh.Mark); mark != "" {
			f.Band = mark
			if !translate.Signed(modules) {
				f.Band += " – " + loc.Label("awaiting-review")
			}
		}
		if !covers || i > 0 && i < len(sheets)-1 {
			f.Head = sh.Head
			switch {
			case p.bare:
				f.Head = ""
			case f.Head == "":
				f.Head = p.Pack.Title.In(loc.Tag, p.Pack.Source)
			}
			f.Page = loc.Label("page-of", number(loc, "Page", i+1), number(loc, "Pages", len(sheets)))
			f.Foot = []string{
				p.label + " – " + loc.Name + " – " + p.Pack.Facility.Name.In(loc.Tag, p.Pack.Source),
				strings.Join(p.dateLines(modules), " – "),
			}
		}
		items := append(resolve(sh.Items, where), p.s.Furnish(p.frameOf(i), i, f)...)
		d.Pages = append(d.Pages, page.Page{Size: p.frameOf(i).Size, Items: items})
	}
	p.res.Document = d
	for _, g := range p.s.Missing() {
		if !p.claimed(g) {
			p.res.Missing = append(p.res.Missing, Missing{Gap: g})
		}
	}
}

func (p *press) claimed(g typeset.Gap) bool {
	for _, m := range p.res.Missing {
		if m.Gap.Rune == g.Rune {
			return true
		}
	}
	return false
}

// claim puts down to a lesson the gaps that setting it has shown.
func (p *press) claim(l *lesson.Lesson) {
	for _, g := range p.s.Missing() {
		if !p.claimed(g) {
			p.res.Missing = append(p.res.Missing, Missing{g, l})
		}
	}
}

// resolve turns links to anchors into links to pages, and drops those that lead nowhere.
func resolve(items []page.Item, where map[string]typeset.Spot) []page.Item {
	var out []page.Item
	for _, it := range items {
		if l, ok := it.(*page.Link); ok && strings.HasPrefix(l.URI, "#") {
			sp, found := where[l.URI[1:]]
			if !found {
				continue
			}
			l.URI, l.Page, l.Top = "", sp.Page, sp.Top
		}
		out = append(out, it)
	}
	return out
}
