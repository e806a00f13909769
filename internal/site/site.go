// Package site turns an edition into HTML: one page a lesson, an index, and a page
// of notes for trainers. Every page stands alone: its style is in it, its pictures
// are in it, it asks the network for nothing and needs no script to be read.
//
// Templates say how a page is framed; render.go says what a block looks like and
// part.go what a part does. The package reads no files but the templates.
package site

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// A Site is the parsed templates.
type Site struct {
	pages *template.Template
	style template.CSS
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
	return &Site{pages: pages, style: template.CSS(css)}, nil
}

// A frame is what every page has around its main part.
type frame struct {
	Style     template.CSS
	Lang      Lang
	Title     string // of the page
	Pack      string // title of the pack
	Languages []choice
	Home      string // address of the index; empty on the index itself
	Band      []string
	Facility  string
	Contacts  []contact
	Dates     []dated
	Version   string
	L         labels
}

// labels gives templates the program's own words.
type labels struct{ loc *locale.Locale }

// Say returns a label.
func (l labels) Say(id string) string { return l.loc.Label(id) }

type choice struct {
	Lang
	Href    string
	Current bool
}

type contact struct{ Label, Value, Tel string }

type dated struct{ Text, ISO string }

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
	if err := add("index.html", "index.html", s.index(e, all, pdfs)); err != nil {
		return nil, err
	}
	for i := range e.Modules {
		if err := add(e.Modules[i].ID+".html", "lesson.html", s.lesson(e, i, all, pdfs)); err != nil {
			return nil, err
		}
	}
	return out, add("trainer.html", "trainer.html", s.trainer(e, all, pdfs))
}

// frame makes the frame of a page; name is its file in every language.
func (s *Site) frame(e *translate.Edition, title, name string, all []Lang, ms []translate.Module) frame {
	loc, p := e.Locale, e.Pack
	f := frame{
		Style: s.style, Lang: Lang{loc.Tag, loc.Name, loc.RTL}, Title: title,
		Pack: p.Title.In(loc.Tag, p.Source), Facility: p.Facility.Name.In(loc.Tag, p.Source),
		Version: loc.Label("version", locale.With("Version", loc.Digits(p.Version))), L: labels{loc},
	}
	if name != "index.html" {
		f.Home = "index.html"
	}
	for _, l := range all {
		href := "../" + l.Tag + "/" + name
		if !p.HasPage(name, l.Tag) {
			href = "../" + l.Tag + "/index.html"
		}
		f.Languages = append(f.Languages, choice{l, href, l.Tag == loc.Tag})
	}
	if !translate.Signed(ms) {
		f.Band = append(f.Band, loc.Label("awaiting-review"))
	}
	if !translate.Final(ms) {
		f.Band = append(f.Band, loc.Label("awaiting-translation-review"))
	}
	prepared, due := translate.Dates(ms)
	f.Dates = []dated{
		{loc.Label("prepared", locale.With("Date", loc.Date(prepared))), prepared.Format("2006-01-02")},
		{loc.Label("review-due", locale.With("Date", loc.Date(due))), due.Format("2006-01-02")},
	}
	for i := range p.Facility.Contacts {
		c := &p.Facility.Contacts[i]
		f.Contacts = append(f.Contacts, contact{c.Label.In(loc.Tag, p.Source), loc.Digits(c.Value), dialled(c.Value)})
	}
	return f
}

// dialled is a telephone number as a tel: address holds it (RFC 3966): digits, and a plus in front.
func dialled(value string) string {
	var out []rune
	for i, r := range value {
		if r >= '0' && r <= '9' || r == '+' && i == 0 {
			out = append(out, r)
		}
	}
	return string(out)
}

// Start returns the first page of the site: the choice of language.
func (s *Site) Start(p *pack.Pack, all []Lang) ([]byte, error) {
	type row struct {
		Lang
		Title, Subtitle string
	}
	data := struct {
		Style template.CSS
		Title string
		Tag   string
		Rows  []row
	}{Style: s.style, Title: p.Title.In(p.Source, p.Source), Tag: p.Source}
	for _, l := range all {
		data.Rows = append(data.Rows, row{l, p.Title.In(l.Tag, p.Source), p.Subtitle.In(l.Tag, p.Source)})
	}
	var b bytes.Buffer
	err := s.pages.ExecuteTemplate(&b, "start.html", data)
	return b.Bytes(), err
}

func plain(ins []lesson.Inline) string { return lesson.Plain(ins) }
