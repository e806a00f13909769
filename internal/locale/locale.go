// Package locale says things the way a language does: the program's own labels,
// digits, dates, letters for quiz options, and the direction of the text.
//
// Labels are go-i18n message files, one a language; the facts of languages.json
// (names of months, date patterns) follow CLDR 48. The facts of a language may stand
// there before its message file does; it can be written in once both are there.
// Digits are always a setting, never a library's default.
package locale

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"time"

	"github.com/nicksnyder/go-i18n/v2/i18n"
	"golang.org/x/text/language"
)

// A Catalog holds what is known of every language.
type Catalog struct {
	bundle *i18n.Bundle
	facts  map[string]facts
	labels map[string]bool // languages with a message file
	words  map[string]*Words
}

// facts are the entry of one language in languages.json.
type facts struct {
	Name, Script, Decimal string
	Date                  string // pattern of UTS #35 made of d, MMMM, y and quoted text
	YearOffset            int    `json:"year-offset"` // 543 where years are counted as in Thailand
	Months, Letters       []string
	Quotes                [2]string // before and after what is quoted
	List                  [3]string // between items of a list, before its last item, and between two items alone
	Ethiopic              []string  // months of the Ethiopic calendar, where they are known
}

// A Locale is one language as a pack wants it written. It is safe for use by several goroutines.
type Locale struct {
	Tag    string // BCP 47
	Name   string // of the language, in itself
	Script string // ISO 15924
	RTL    bool

	facts     facts
	ethiopic  bool // dates stand in the Ethiopic calendar, too
	zero      rune
	localizer *i18n.Localizer
}

// Load reads languages.json and every message file of a folder.
func Load(fsys fs.FS) (*Catalog, error) {
	c := &Catalog{bundle: i18n.NewBundle(language.English), labels: map[string]bool{}, words: map[string]*Words{}}
	b, err := fs.ReadFile(fsys, "languages.json")
	if err != nil {
		return nil, err
	}
	if err := json.Unmarshal(b, &c.facts); err != nil {
		return nil, fmt.Errorf("languages.json: %w", err)
	}
	for tag := range c.facts {
		if c.words[tag], err = readWords(fsys, tag); err != nil {
			return nil, err
		}
		b, err := fs.ReadFile(fsys, tag+".json")
		if errors.Is(err, fs.ErrNotExist) {
			continue // not translated yet
		}
		if err != nil {
			return nil, err
		}
		if _, err := c.bundle.ParseMessageFileBytes(b, path.Join("locales", tag+".json")); err != nil {
			return nil, err
		}
		c.labels[tag] = true
	}
	return c, nil
}

// For returns a language as a pack wants it written: with its digits, and with a
// calendar beside the Gregorian one when it asks for one.
func (c *Catalog) For(tag, digits, calendar string) (*Locale, error) {
	l, err := c.Locale(tag, digits)
	if err != nil {
		return nil, err
	}
	return l.Beside(calendar)
}

// Has reports whether the program can be read in a language: it has both labels for it and facts.
func (c *Catalog) Has(tag string) bool { return c.labels[tag] }

// Quotes returns the quotation marks of a language, and whether they are known.
func (c *Catalog) Quotes(tag string) (before, after string, known bool) {
	f, ok := c.facts[tag]
	return f.Quotes[0], f.Quotes[1], ok && f.Quotes[0] != ""
}

// Locale returns a language with digits of a Unicode numbering system ("latn",
// "deva", "arab", ...); an empty system is "latn".
func (c *Catalog) Locale(tag, digits string) (*Locale, error) {
	f, ok := c.facts[tag]
	if !ok {
		return nil, fmt.Errorf("no labels for language %q; add locales/%s.json and its entry in locales/languages.json", tag, tag)
	}
	if !c.labels[tag] {
		return nil, fmt.Errorf("no labels for language %q; add locales/%s.json (its dates, letters and script are known already)", tag, tag)
	}
	zero, ok := zeros[digits]
	if !ok {
		return nil, fmt.Errorf("unknown numbering system %q for language %q; known are %s", digits, tag, strings.Join(NumberingSystems(), ", "))
	}
	return &Locale{
		Tag: tag, Name: f.Name, Script: f.Script, RTL: rightToLeft[f.Script],
		facts: f, zero: zero, localizer: i18n.NewLocalizer(c.bundle, tag),
	}, nil
}

// rightToLeft lists scripts written from right to left (Unicode 15, bidi class R or AL).
// Aran is Arabic in the Nastaliq style, as Urdu is set.
var rightToLeft = map[string]bool{"Arab": true, "Aran": true, "Hebr": true, "Syrc": true, "Thaa": true, "Nkoo": true, "Adlm": true, "Rohg": true}

// Label returns the program's own word for an id. Vars fill its placeholders.
func (l *Locale) Label(id string, vars ...Var) string {
	c := &i18n.LocalizeConfig{MessageID: id}
	data := map[string]any{}
	for _, v := range vars {
		if v.count {
			c.PluralCount = v.Value
			data["PluralCount"] = l.Number(v.Value.(int))
			continue
		}
		data[v.Name] = v.Value
	}
	c.TemplateData = data
	s, err := l.localizer.Localize(c)
	if err != nil && s == "" {
		// A label is a constant of the program: a missing one is a mistake in it,
		// caught by the test that walks every label in every language.
		panic(fmt.Sprintf("label %q: %v", id, err))
	}
	return s
}

// A Var fills one placeholder of a label.
type Var struct {
	Name  string
	Value any
	count bool
}

// With fills the placeholder called name.
func With(name, value string) Var { return Var{Name: name, Value: value} }

// Count chooses the plural form for n and fills PluralCount with it.
func Count(n int) Var { return Var{Value: n, count: true} }

// Number writes a whole number in the language's digits, without grouping.
func (l *Locale) Number(n int) string { return l.Digits(fmt.Sprint(n)) }

// Digits replaces the ASCII digits of s by the language's.
func (l *Locale) Digits(s string) string {
	if l.zero == '0' {
		return s
	}
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return l.zero + r - '0'
		}
		return r
	}, s)
}

// Date writes a calendar date in full, and in a second calendar when one is asked for.
func (l *Locale) Date(t time.Time) string {
	var out strings.Builder
	// Every second piece of the pattern is quoted, and stands for itself.
	for i, piece := range strings.Split(l.facts.Date, "'") {
		if i%2 == 0 {
			piece = strings.NewReplacer(
				"d", l.Number(t.Day()),
				"MMMM", l.facts.Months[t.Month()-1],
				"y", l.Number(t.Year()+l.facts.YearOffset),
			).Replace(piece)
		}
		out.WriteString(piece)
	}
	if l.ethiopic {
		out.WriteString(" (" + l.ethiopicDate(t) + ")")
	}
	return out.String()
}

// List writes short items one after another, with what the language sets between them
// (the list pattern unit-short of CLDR).
func (l *Locale) List(items []string) string {
	if len(items) == 2 {
		return items[0] + l.facts.List[2] + items[1]
	}
	var out strings.Builder
	for i, item := range items {
		switch {
		case i > 0 && i == len(items)-1:
			out.WriteString(l.facts.List[1])
		case i > 0:
			out.WriteString(l.facts.List[0])
		}
		out.WriteString(item)
	}
	return out.String()
}

// Letter returns the letter of the i-th option, from 0.
func (l *Locale) Letter(i int) string {
	if i < len(l.facts.Letters) {
		return l.facts.Letters[i]
	}
	return l.Number(i + 1)
}
