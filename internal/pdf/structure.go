package pdf

import (
	"fmt"
	"strings"

	"wardleaf/internal/page"
)

// addStructure adds the structure tree and returns the catalog's keys: ISO 32000-1, 14.7.
func addStructure(f *file, d *page.Document, m *marks) string {
	if !m.tagged {
		return ""
	}
	t := &tree{f: f, d: d, marks: m, objects: map[*page.Tag]int{}}
	root := f.reserve(1)
	t.number(d.Tags)
	t.write(d.Tags, root)

	var parents strings.Builder
	for i, tags := range m.pages {
		fmt.Fprintf(&parents, "%d[", i)
		for _, tag := range tags {
			fmt.Fprintf(&parents, "%d 0 R ", t.objects[tag])
		}
		parents.WriteString("]")
		f.extend(pageObject(i), fmt.Sprintf("/StructParents %d/Tabs/S", i))
	}
	for _, l := range m.links {
		if l.key >= 0 {
			fmt.Fprintf(&parents, "%d %d 0 R ", l.key, t.objects[l.link.Tag])
		}
	}
	parentTree := f.add("<</Nums[" + parents.String() + "]>>")
	f.objects[root] = fmt.Appendf(nil, "<</Type/StructTreeRoot/K %d 0 R/ParentTree %d 0 R/ParentTreeNextKey %d>>",
		t.objects[d.Tags], parentTree, m.keys)
	return fmt.Sprintf("/MarkInfo<</Marked true>>/StructTreeRoot %d 0 R", root)
}

type tree struct {
	f       *file
	d       *page.Document
	marks   *marks
	objects map[*page.Tag]int
}

func (t *tree) number(tag *page.Tag) {
	t.objects[tag] = t.f.reserve(1)
	for _, k := range tag.Kids {
		t.number(k)
	}
}

// write writes the element of a tag and those below it.
func (t *tree) write(tag *page.Tag, parent int) {
	var b strings.Builder
	fmt.Fprintf(&b, "<</Type/StructElem/S/%s/P %d 0 R", tag.Role, parent)
	leaves := t.marks.uses[tag].leaves
	if len(leaves) > 0 {
		fmt.Fprintf(&b, "/Pg %d 0 R", pageObject(leaves[0].page))
	}
	if tag.Alt != "" && tag.Role != "Link" { // a link's stands in its annotation, beside its text
		b.WriteString("/Alt" + textString(tag.Alt))
	}
	if tag.Actual != "" {
		b.WriteString("/ActualText" + textString(tag.Actual))
	}
	if tag.Lang != "" {
		b.WriteString("/Lang" + textString(tag.Lang))
	}
	b.WriteString(t.attributes(tag))
	b.WriteString("/K[")
	for _, kid := range tag.Kids {
		if first := t.first(kid); first >= 0 { // own content that comes before it is read before it
			for len(leaves) > 0 && leaves[0].order < first {
				b.WriteString(t.leaf(tag, leaves[0]))
				leaves = leaves[1:]
			}
		}
		fmt.Fprintf(&b, "%d 0 R ", t.objects[kid])
	}
	for _, l := range leaves {
		b.WriteString(t.leaf(tag, l))
	}
	b.WriteString("]>>")
	t.f.objects[t.objects[tag]] = []byte(b.String())
	for _, kid := range tag.Kids {
		t.write(kid, t.objects[tag])
	}
}

// first returns the order of the first leaf in a tag or below it, -1 when there is none.
func (t *tree) first(tag *page.Tag) int {
	least := -1
	if leaves := t.marks.uses[tag].leaves; len(leaves) > 0 {
		least = leaves[0].order
	}
	for _, k := range tag.Kids {
		if o := t.first(k); o >= 0 && (least < 0 || o < least) {
			least = o
		}
	}
	return least
}

func (t *tree) leaf(tag *page.Tag, l leaf) string {
	pg := pageObject(l.page)
	if l.mcid < 0 {
		return fmt.Sprintf("<</Type/OBJR/Obj %d 0 R/Pg %d 0 R>>", t.marks.links[l.link].object, pg)
	}
	if l.page != t.marks.uses[tag].leaves[0].page {
		return fmt.Sprintf("<</Type/MCR/Pg %d 0 R/MCID %d>>", pg, l.mcid)
	}
	return fmt.Sprintf("%d ", l.mcid)
}

// attributes returns the key A: ISO 32000-1, 14.8.5.
func (t *tree) attributes(tag *page.Tag) string {
	switch {
	case tag.Scope != "":
		return "/A<</O/Table/Scope" + nameToken(tag.Scope) + ">>"
	case tag.Numbering != "":
		return "/A<</O/List/ListNumbering" + nameToken(tag.Numbering) + ">>"
	case tag.BBox != nil:
		u := t.marks.uses[tag]
		if len(u.leaves) == 0 {
			return ""
		}
		height := t.d.Pages[u.leaves[0].page].Size.Height
		left, top, right, bottom := tag.BBox[0], tag.BBox[1], tag.BBox[2], tag.BBox[3]
		return fmt.Sprintf("/A<</O/Layout/Placement/Block/BBox[%v %v %v %v]>>",
			left+u.dx, height-bottom-u.dy, right+u.dx, height-top-u.dy)
	}
	return ""
}
