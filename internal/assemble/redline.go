package assemble

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/check"
	"wardleaf/internal/font"
	"wardleaf/internal/locale"
	"wardleaf/internal/page"
	"wardleaf/internal/pdf"
	"wardleaf/internal/piece"
	"wardleaf/internal/redline"
	"wardleaf/internal/site"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// A State is a pack with the revision it was read at.
type State struct {
	redline.Side
	redline.Revision
}

// Redline prints what changed from one state of a pack to another, as text, html or
// pdf. Its labels are in the first of o.Langs, or in the source language; text is in
// English, as all that the program says on a terminal. missing lists the characters
// that a PDF could not show.
func Redline(o Options, old, now *State, format string) (out []byte, missing []rune, err error) {
	catalog, err := locale.Load(o.Assets.Locales)
	if err != nil {
		return nil, nil, err
	}
	p := now.Pack
	lang := p.Source
	switch {
	case format == "text":
		lang = "en"
	case len(o.Langs) > 0:
		lang = o.Langs[0]
		if !slices.Contains(p.Languages, lang) {
			return nil, nil, fmt.Errorf("the pack has no language %q; it has %s", lang, strings.Join(p.Languages, ", "))
		}
	}
	loc, err := catalog.For(lang, p.Digits[lang], p.Calendars[lang])
	if err != nil {
		return nil, nil, err
	}
	find := func(tag string) *locale.Locale {
		l, err := catalog.For(tag, p.Digits[tag], p.Calendars[tag])
		if err != nil {
			return nil
		}
		return l
	}
	names := func(tag string) (string, bool) {
		if l := find(tag); l != nil {
			return l.Name, l.RTL
		}
		return tag, false
	}
	v := redline.Compare(old.Side, now.Side, check.Negations(catalog)).View(loc, names, p.Title.In(lang, p.Source), old.Revision, now.Revision)
	var b bytes.Buffer
	switch format {
	case "html":
		s, err := site.New(o.Assets.Templates)
		if err != nil {
			return nil, nil, err
		}
		out, err = s.Redline(translate.Join(p, loc), v)
		return out, nil, err
	case "pdf":
		faces, err := font.Load(o.Assets.Fonts)
		if err != nil {
			return nil, nil, err
		}
		res, err := piece.RedlineSheet(&piece.Job{Edition: translate.Join(p, loc), Fonts: typeset.NewFonts(faces), Paper: o.Paper}, v, find)
		if err != nil {
			return nil, nil, err
		}
		for _, m := range res.Missing {
			missing = append(missing, m.Gap.Rune)
		}
		slices.Sort(missing)
		if o.Black {
			page.Black(res.Document)
		}
		err = pdf.Write(&b, res.Document)
		return b.Bytes(), slices.Compact(missing), err
	}
	err = redline.Text(&b, v, loc.Label("redline-was"), loc.Label("redline-now"))
	return b.Bytes(), nil, err
}
