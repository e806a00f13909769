package site

import (
	"html/template"
	"time"

	"wardleaf/internal/locale"
	"wardleaf/internal/translate"
)

// A frame is what every page of a language has around its main part.
type frame struct {
	Style template.CSS
	// ScriptHash is that of the one script of the page; most pages have none.
	ScriptHash string
	Lang       Lang
	Digits     string // Unicode numbering system
	Title      string // of the page
	Pack       string // title of the pack
	Languages  []choice
	Home       string // address of the index; empty on the index itself
	Band       []string
	Facility   string
	Contacts   []contact
	Dates      []dated
	Version    string
	L          labels
}

// labels gives templates the program's own words.
type labels struct{ loc *locale.Locale }

// Say returns a label.
func (l labels) Say(id string) string { return l.loc.Label(id) }

// A choice is the same page in one of the languages.
type choice struct {
	Lang
	Href    string
	Current bool
}

type dated struct{ Text, ISO string }

// frame makes the frame of a page about modules; name is its file in every language.
func (s *Site) frame(e *translate.Edition, title, name string, all []Lang, ms []translate.Module) frame {
	loc, p := e.Locale, e.Pack
	f := frame{
		Style: s.style, Lang: Lang{loc.Tag, loc.Name, loc.RTL}, Digits: p.Digits[loc.Tag], Title: title,
		Pack: p.Title.In(loc.Tag, p.Source), Facility: p.Facility.Name.In(loc.Tag, p.Source), Contacts: contacts(e),
		Version: loc.Label("version", locale.With("Version", loc.Digits(p.Version))), L: labels{loc},
	}
	if name != indexName {
		f.Home = indexName
	}
	for _, l := range all {
		page := name
		if !p.HasPage(name, l.Tag) {
			page = indexName
		}
		f.Languages = append(f.Languages, choice{l, "../" + l.Tag + "/" + page, l.Tag == loc.Tag})
	}
	if !translate.Signed(ms) {
		f.Band = append(f.Band, loc.Label("awaiting-review"))
	}
	if !translate.Final(ms) {
		f.Band = append(f.Band, loc.Label("awaiting-translation-review"))
	}
	prepared, due := translate.Dates(ms)
	for _, d := range []struct {
		label string
		date  time.Time
	}{{"prepared", prepared}, {"review-due", due}} {
		if !d.date.IsZero() {
			f.Dates = append(f.Dates, dated{loc.Label(d.label, locale.With("Date", loc.Date(d.date))), d.date.Format(time.DateOnly)})
		}
	}
	return f
}
