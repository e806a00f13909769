package site

import (
	"bytes"
	"html/template"

	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/review"
)

// Reviewers returns the page that shows, in the source language, how far every module
// has come in every language.
func (s *Site) Reviewers(p *pack.Pack, loc *locale.Locale, m review.Matrix, all []Lang) ([]byte, error) {
	type cell struct {
		Href, State string
		Lines       []string // what is left to do
		Clean       bool
	}
	type row struct {
		Title string
		Cells []cell
	}
	data := struct {
		Style template.CSS
		Lang  Lang
		L     labels
		Title string
		Langs []Lang
		Rows  []row
	}{Style: s.style, Lang: Lang{Tag: loc.Tag, RTL: loc.RTL}, L: labels{loc}, Title: loc.Label("reviewers")}
	names := map[string]Lang{}
	for _, l := range all {
		names[l.Tag] = l
	}
	for _, tag := range m.Langs {
		l := names[tag]
		if l.Tag == "" {
			l = Lang{Tag: tag, Name: tag} // nothing was made in it
		}
		data.Langs = append(data.Langs, l)
	}
	for _, r := range m.Rows {
		out := row{Title: r.Module.Title(p.Source)}
		for i, c := range r.Cells {
			cl := cell{State: stateWord(loc, c), Clean: c.Clean()}
			if names[m.Langs[i]].Tag != "" {
				cl.Href = m.Langs[i] + "/" + r.Module.ID + ".html"
			}
			for _, n := range []struct {
				n     int
				label string
			}{{c.New, "matrix-new"}, {c.Behind, "matrix-behind"}, {c.Changed, "matrix-changed"}, {c.Errors, "matrix-errors"}, {c.Warnings, "matrix-warnings"}} {
				if n.n > 0 {
					cl.Lines = append(cl.Lines, loc.Label(n.label, locale.With("Number", loc.Number(n.n))))
				}
			}
			out.Cells = append(out.Cells, cl)
		}
		data.Rows = append(data.Rows, out)
	}
	var b bytes.Buffer
	err := s.pages.ExecuteTemplate(&b, "reviewers.html", data)
	return b.Bytes(), err
}

// stateWord says how far a lesson has come.
func stateWord(loc *locale.Locale, c review.Cell) string {
	word := loc.Label("state-source")
	switch {
	case c.Missing:
		word = loc.Label("state-missing")
	case !c.Source:
		word = loc.Label("state-" + c.State)
	}
	if c.Signed {
		word += ", " + loc.Label("state-signed")
	}
	return word
}
