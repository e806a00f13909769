package assemble

import (
	"bytes"

	"wardleaf/internal/check"
	"wardleaf/internal/finding"
	"wardleaf/internal/font"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/page"
	"wardleaf/internal/pdf"
	"wardleaf/internal/piece"
	"wardleaf/internal/sheet"
	"wardleaf/internal/source"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// Sheet makes one computed sheet as a PDF, in the first of the languages asked for, or
// else the pack's source language. When the findings hold errors there is no PDF.
func Sheet(o Options, s *sheet.Sheet, inputs map[string]string, files map[string]*source.File) ([]byte, []finding.Finding, error) {
	catalog, err := locale.Load(o.Assets.Locales)
	if err != nil {
		return nil, nil, err
	}
	p, findings, err := load.Pack(o.Pack, o.Name)
	if err != nil || p == nil {
		return nil, findings, err
	}
	if err := o.known(p); err != nil {
		return nil, nil, err
	}
	lang := p.Source
	if len(o.Langs) > 0 {
		lang = o.Langs[0]
	}
	if stops(findings, "") || stops(findings, lang) {
		return nil, findings, nil
	}
	loc, err := catalog.For(lang, p.Digits[lang], p.Calendars[lang])
	if err != nil {
		return nil, nil, err
	}
	faces, err := font.Load(o.Assets.Fonts)
	if err != nil {
		return nil, nil, err
	}
	j := &piece.Job{Edition: translate.Join(p, loc), Fonts: typeset.NewFonts(faces), Paper: o.Paper, Distance: o.Distance}
	r, found, err := piece.Sheet(j, s, inputs, files)
	if err != nil || r == nil {
		return nil, found, err
	}
	if found = append(found, check.Glyphs(p, lang, r.Missing)...); stops(found, lang) || o.Strict && finding.Count(found, finding.Note) < len(found) {
		return nil, found, nil
	}
	if o.Black {
		page.Black(r.Document)
	}
	var b bytes.Buffer
	err = pdf.Write(&b, r.Document)
	return b.Bytes(), found, err
}
