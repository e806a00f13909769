// Package site turns an edition into HTML: one page a lesson, an index, and a page
// of notes for trainers. Every page stands alone: its style is in it, its pictures
// are in it, it asks the network for nothing and needs no script to be read.
//
// Templates say how pages and parts are framed; the functions here turn the words of
// a lesson into the values that templates show. It is not a reader: it opens no files
// but the templates. HTML follows the WHATWG living standard, accessibility WCAG 2.2.
package site

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"

	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/sheet"
	"wardleaf/internal/translate"
)

// Pages that every language has beside its lessons.
const (
	indexName   = "index.html"
	trainerName = "trainer.html"
)

// A Site is the parsed templates.
type Site struct {
	pages *template.Template
	style template.CSS
	// Scripts that work the sheets of their pages.
	growth, cutting template.JS
}

// A Lang is one language that can be chosen.
type Lang struct {
	Tag, Name string
	RTL       bool
}

// Dir is the value of the dir attribute.
func (l Lang) Dir() string { return dir(l.RTL) }

func dir(rtl bool) string {
	if rtl {
		return "rtl"
	}
	return "ltr"
}

// A PDF is one piece to print.
type PDF struct {
	Path          string // from the folder of the language
	Piece         string
	Module        string // empty when it is one for the pack
	Paper         string // that a piece used flat is printed on: "A4"
	Pages, Sheets int    // Sheets is 0 for a piece that is not folded
	Bytes         int
}

// New parses the templates of a folder.
func New(templates fs.FS) (*Site, error) {
	pages, err := template.ParseFS(templates, "*.html")
	if err != nil {
		return nil, err
	}
	css, err := fs.ReadFile(templates, "site.css")
	if err != nil {
		return nil, err
	}
	growth, err := fs.ReadFile(templates, "growth.js")
	if err != nil {
		return nil, err
	}
	cutting, err := fs.ReadFile(templates, "cutting.js")
	if err != nil {
		return nil, err
	}
	return &Site{pages: pages, style: template.CSS(css), growth: template.JS(growth), cutting: template.JS(cutting)}, nil
}

// Edition returns the pages of one language by path from the site's root. all are the
// languages to choose from; pdfs the pieces to print.
func (s *Site) Edition(e *translate.Edition, all []Lang, pdfs []PDF) (map[string][]byte, error) {
	out := map[string][]byte{}
	tag := e.Locale.Tag
	add := func(name, tmpl string, data any) error {
		var b bytes.Buffer
		if err := s.pages.ExecuteTemplate(&b, tmpl, data); err != nil {
			return fmt.Errorf("page %s: %w", name, err)
		}
		out[tag+"/"+name] = b.Bytes()
		return nil
	}
	if err := add(indexName, "index.html", s.index(e, all, pdfs)); err != nil {
		return nil, err
	}
	for i := range e.Modules {
		if err := add(e.Modules[i].ID+".html", "lesson.html", s.lesson(e, i, all, pdfs)); err != nil {
			return nil, err
		}
	}
	for _, sh := range sheet.Placed(e.Pack) {
		if err := add(sheetAddress(sh.Name), "sheet.html", s.sheet(e, sh, all, pdfs)); err != nil {
			return nil, err
		}
	}
	return out, add(trainerName, "trainer.html", s.trainer(e, all, pdfs))
}

// Start returns the first page of the site: the choice of language. loc is the source language.
func (s *Site) Start(p *pack.Pack, loc *locale.Locale, all []Lang) ([]byte, error) {
	type row struct {
		Lang
		Title, Subtitle string
	}
	data := struct {
		Style template.CSS
		Lang  Lang
		Title string
		Rows  []row
		// Reviewers is what the page for reviewers is called.
		Reviewers string
	}{Style: s.style, Lang: Lang{Tag: p.Source}, Reviewers: loc.Label("reviewers"), Title: p.Title.In(p.Source, p.Source)}
	for _, l := range all {
		if l.Tag == p.Source {
			data.Lang = l
		}
		data.Rows = append(data.Rows, row{l, p.Title.In(l.Tag, p.Source), p.Subtitle.In(l.Tag, p.Source)})
	}
	var b bytes.Buffer
	err := s.pages.ExecuteTemplate(&b, "start.html", data)
	return b.Bytes(), err
}
