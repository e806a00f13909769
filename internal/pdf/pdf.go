// Package pdf writes finished pages as PDF 1.7 (ISO 32000-1:2008), as live text in
// every script, tagged as ISO 14289-1 (PDF/UA-1) asks when the document has a
// structure tree. No claim of conformance is made: no validator has checked it.
//
// It is not a layout engine and knows nothing of lessons: it sees package page, and
// puts every item where the item says. Fonts, pages and their objects come from
// github.com/go-pdf/fpdf; what that library cannot say is added to its output in
// one pass (file.go, save.go). Write is the place to start.
//
// The same document gives the same bytes.
package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/go-pdf/fpdf"

	"wardleaf/internal/page"
)

// Write writes a document as PDF. It writes nothing when it returns an error from
// the document itself.
func Write(w io.Writer, d *page.Document) error {
	out, err := build(d)
	if err != nil {
		return fmt.Errorf("pdf %q: %w", d.Title, err)
	}
	_, err = w.Write(out)
	return err
}

func build(d *page.Document) ([]byte, error) {
	if err := check(d); err != nil {
		return nil, err
	}
	fonts := newFontSet()
	marks, err := newMarks(d)
	if err != nil {
		return nil, err
	}
	contents := make([][]byte, len(d.Pages))
	for i := range d.Pages {
		if contents[i], err = content(d, i, fonts, marks); err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
	}
	raw, err := draw(d, contents, fonts)
	if err != nil {
		return nil, err
	}
	f, err := parse(raw, len(d.Pages))
	if err != nil {
		return nil, err
	}
	if err := fonts.finish(f); err != nil {
		return nil, err
	}
	if err := addLinks(f, d, marks); err != nil {
		return nil, err
	}
	catalog := catalogKeys(d)
	catalog += addOutline(f, d)
	catalog += addMetadata(f, d)
	catalog += addStructure(f, d, marks)
	f.objects[f.root] = []byte("<</Type/Catalog/Pages 1 0 R" + catalog + ">>")
	f.objects[f.info] = []byte(info(d))
	return f.bytes(), nil
}

// check refuses what no page can be made of.
func check(d *page.Document) error {
	if len(d.Pages) == 0 {
		return errors.New("the document has no pages")
	}
	for i, p := range d.Pages {
		if p.Size.Width <= 0 || p.Size.Height <= 0 {
			return fmt.Errorf("page %d has no size", i+1)
		}
	}
	if d.Tags != nil && (d.Lang == "" || d.Title == "") {
		return errors.New("a tagged document needs a language and a title, which screen readers speak; set Lang and Title")
	}
	for _, b := range d.Outline {
		if b.Page < 0 || b.Page >= len(d.Pages) || b.Level < 0 {
			return fmt.Errorf("the bookmark %q leads to page %d at level %d, which the document does not have", b.Title, b.Page+1, b.Level)
		}
	}
	return nil
}

// draw has fpdf make a file of the pages and fonts.
func draw(d *page.Document, contents [][]byte, fonts *fontSet) ([]byte, error) {
	p := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "pt", Size: pageSize(&d.Pages[0])})
	p.SetCompression(false) // streams are compressed harder at the end
	p.SetCatalogSort(true)
	p.SetAutoPageBreak(false, 0)
	if err := fonts.register(p); err != nil {
		return nil, err
	}
	for i := range d.Pages {
		p.AddPageFormat("P", pageSize(&d.Pages[i]))
		p.RawWriteStr(string(contents[i]))
	}
	var raw bytes.Buffer
	err := p.Output(&raw)
	return raw.Bytes(), err
}

func pageSize(p *page.Page) fpdf.SizeType {
	return fpdf.SizeType{Wd: p.Size.Width.Points(), Ht: p.Size.Height.Points()}
}
