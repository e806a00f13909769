package pdf

import (
	"errors"
	"fmt"
	"slices"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// marks ties what is drawn to the structure tree: which stretch of a page's content,
// and which link, belongs to which tag. In an untagged document it does nothing.
type marks struct {
	tagged bool
	uses   map[*page.Tag]*use // every tag of the tree
	pages  [][]*page.Tag      // by page, then by marked-content identifier
	links  []placedLink
	keys   int // keys given in the parent tree; each page has its index
	order  int

	open    bool
	current *page.Tag // nil: an artifact
}

// A use is what a tag's own content is.
type use struct {
	leaves []leaf // in page order
	dx, dy measure.Length
}

// A leaf is one stretch of marked content, or one link.
type leaf struct {
	page, order int
	mcid        int // -1 for a link
	link        int // index into marks.links
}

// A placedLink is a link with the place of the groups it lies in.
type placedLink struct {
	page   int
	dx, dy measure.Length
	link   *page.Link
	key    int // in the parent tree, -1 for an untagged link
	object int
}

// standardRoles are the structure types of ISO 32000-1, 14.8.4.
var standardRoles = []string{
	"Document", "Part", "Art", "Sect", "Div", "BlockQuote", "Caption", "TOC", "TOCI", "Index", "NonStruct",
	"P", "H", "H1", "H2", "H3", "H4", "H5", "H6", "L", "LI", "Lbl", "LBody",
	"Table", "TR", "TH", "TD", "THead", "TBody", "TFoot",
	"Span", "Quote", "Note", "Reference", "BibEntry", "Code", "Link", "Annot", "Figure", "Formula", "Form",
}

func newMarks(d *page.Document) (*marks, error) {
	m := &marks{tagged: d.Tags != nil, uses: map[*page.Tag]*use{}, pages: make([][]*page.Tag, len(d.Pages)), keys: len(d.Pages)}
	if !m.tagged {
		return m, nil
	}
	return m, m.know(d.Tags)
}

func (m *marks) know(t *page.Tag) error {
	if t == nil {
		return errors.New("the structure tree holds an empty tag")
	}
	if m.uses[t] != nil {
		return fmt.Errorf("a tag %s stands twice in the structure tree", t.Role)
	}
	if !slices.Contains(standardRoles, t.Role) {
		return fmt.Errorf("%q is no standard structure type (ISO 32000-1, 14.8.4)", t.Role)
	}
	m.uses[t] = &use{}
	for _, k := range t.Kids {
		if err := m.know(k); err != nil {
			return err
		}
	}
	return nil
}

// start returns the operators that make what follows the content of t.
// Items of one tag that follow each other stay in one stretch.
func (m *marks) start(index int, dx, dy measure.Length, t *page.Tag) (string, error) {
	if !m.tagged || m.open && m.current == t {
		return "", nil
	}
	s := m.end()
	m.open, m.current = true, t
	if t == nil {
		return s + "/Artifact BMC\n", nil
	}
	mcid := len(m.pages[index])
	if err := m.use(t, dx, dy, leaf{page: index, mcid: mcid}); err != nil {
		return "", err
	}
	m.pages[index] = append(m.pages[index], t)
	return fmt.Sprintf("%s/%s<</MCID %d>>BDC\n", s, t.Role, mcid), nil
}

// end returns the operator that ends a stretch, if one is open.
func (m *marks) end() string {
	if !m.open {
		return ""
	}
	m.open = false
	return "EMC\n"
}

// link notes a link, which leaves no mark in the content.
func (m *marks) link(index int, dx, dy measure.Length, l *page.Link) error {
	p := placedLink{page: index, dx: dx, dy: dy, link: l, key: -1}
	if m.tagged && l.Tag != nil {
		if err := m.use(l.Tag, dx, dy, leaf{page: index, mcid: -1, link: len(m.links)}); err != nil {
			return err
		}
		p.key = m.keys
		m.keys++
	}
	m.links = append(m.links, p)
	return nil
}

func (m *marks) use(t *page.Tag, dx, dy measure.Length, l leaf) error {
	u := m.uses[t]
	if u == nil {
		return fmt.Errorf("an item has a tag %s that is not in the structure tree", t.Role)
	}
	if len(u.leaves) == 0 {
		u.dx, u.dy = dx, dy
	}
	l.order = m.order
	m.order++
	u.leaves = append(u.leaves, l)
	return nil
}
