package site

import (
	"bytes"

	"wardleaf/internal/redline"
	"wardleaf/internal/translate"
)

// A redlinePage is what changed between two revisions, on one page.
type redlinePage struct {
	frame
	View     *redline.View
	First    []change
	Sections []changes
}

// changes are those of one module in one language.
type changes struct {
	Title   string
	Notes   []string
	Changes []change
}

// A change is one entry as its template shows it.
type change struct {
	redline.Entry
	ID, Href string // either
	Dir      string
	Words    []stretch
}

// A stretch is a run of words and what became of it.
type stretch struct {
	Text          string
	Struck, Added bool
}

// Redline returns a page of changes that stands alone.
func (s *Site) Redline(e *translate.Edition, v *redline.View) ([]byte, error) {
	p := redlinePage{frame: s.frame(e, v.Title+": "+v.Pack, indexName, nil, e.Modules), View: v}
	p.Contacts = nil
	p.Band = []string{e.Locale.Label("awaiting-review")} // whatever was signed off before
	for _, e := range v.First {
		c := shown(e, redline.Excerpt(e.Runs))
		c.Href = "#change-" + e.ID
		c.Where, c.Lines = e.Section+" – "+e.Where, nil
		p.First = append(p.First, c)
	}
	for _, sec := range v.Sections {
		out := changes{Title: sec.Title, Notes: sec.Notes}
		for _, e := range sec.Entries {
			c := shown(e, e.Runs)
			c.ID = "change-" + e.ID
			out.Changes = append(out.Changes, c)
		}
		p.Sections = append(p.Sections, out)
	}
	var b bytes.Buffer
	err := s.pages.ExecuteTemplate(&b, "redline.html", p)
	return b.Bytes(), err
}

func shown(e redline.Entry, runs []redline.Run) change {
	c := change{Entry: e, Dir: dir(e.RTL)}
	if e.Lang == "" {
		c.Dir = "auto" // a value of a record, such as a telephone number
	}
	for i, r := range runs {
		before, words, after := redline.Core(r.Text)
		if r.Op == redline.Added && i > 0 && runs[i-1].Op == redline.Struck && before == "" {
			before = " " // else letters of a joined script would run on from those struck
		}
		c.Words = append(c.Words, stretch{Text: before}, stretch{Text: words, Struck: r.Op == redline.Struck, Added: r.Op == redline.Added}, stretch{Text: after})
	}
	return c
}
