package pdf

import (
	"fmt"

	"wardleaf/internal/page"
)

// An entry is a bookmark with its place among the others; indexes, -1 for none.
type entry struct{ parent, first, last, previous, next, open int }

// addOutline adds the bookmarks and returns the catalog's keys: ISO 32000-1, 12.3.3.
// A bookmark belongs to the nearest one before it of a lower level.
func addOutline(f *file, d *page.Document) string {
	if len(d.Outline) == 0 {
		return ""
	}
	const none = -1
	root := entry{parent: none, first: none, last: none, previous: none, next: none}
	entries := make([]entry, len(d.Outline))
	at := func(i int) *entry {
		if i == none {
			return &root
		}
		return &entries[i]
	}
	for i, b := range d.Outline {
		parent := i - 1
		for parent != none && d.Outline[parent].Level >= b.Level {
			parent = entries[parent].parent
		}
		p := at(parent)
		entries[i] = entry{parent: parent, first: none, last: none, previous: p.last, next: none}
		if p.last == none {
			p.first = i
		} else {
			entries[p.last].next = i
		}
		p.last = i
		for up := parent; ; up = entries[up].parent {
			at(up).open++
			if up == none {
				break
			}
		}
	}
	base := f.reserve(len(entries) + 1)
	ref := func(i int) string { return fmt.Sprintf("%d 0 R", base+1+i) } // none is the root
	link := func(key string, i int) string {
		if i == none {
			return ""
		}
		return key + " " + ref(i)
	}
	for i, b := range d.Outline {
		e := entries[i]
		dict := "<</Title" + textString(b.Title) + "/Parent " + ref(e.parent) +
			link("/Prev", e.previous) + link("/Next", e.next) + link("/First", e.first) + link("/Last", e.last)
		if e.open > 0 {
			dict += fmt.Sprintf("/Count %d", e.open)
		}
		f.objects[base+1+i] = []byte(dict + "/Dest" + destination(d, b.Page, b.Top) + ">>")
	}
	f.objects[base] = fmt.Appendf(nil, "<</Type/Outlines/First %s/Last %s/Count %d>>", ref(root.first), ref(root.last), root.open)
	return "/Outlines " + ref(none) + "/PageMode/UseOutlines"
}
