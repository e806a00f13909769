package site

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"wardleaf/internal/drawing"
	"wardleaf/internal/lesson"
	"wardleaf/internal/sheet"
	"wardleaf/internal/translate"
)

// A sheetPage is a computed sheet on a page of its own.
type sheetPage struct {
	frame
	Caution  string
	Sections []sheetSection
	Prints   []link
	Script   template.JS // empty but on pages that can be worked
	Work     *sheetWork
}

// A sheetWork is what a script is given.
type sheetWork struct {
	Kind  string // growth or cutting
	Data  any
	Notes template.HTML // how it works things out, and by which source
}

type sheetSection struct {
	ID, Title string
	Figure    string // id of the title of its last chart
	Body      template.HTML
}

// sheetAddress is the page of a sheet.
func sheetAddress(name string) string { return "sheet-" + name + ".html" }

// sheet makes the page of a blank sheet.
func (s *Site) sheet(e *translate.Edition, sh *sheet.Sheet, all []Lang, pdfs []PDF) sheetPage {
	loc := e.Locale
	c := sh.Blank(loc, e.Pack, sheet.A4)
	var own []PDF
	for _, p := range pdfs {
		if p.Piece == sh.Name {
			own = append(own, p)
		}
	}
	out := sheetPage{
		frame:   s.frame(e, c.Title, sheetAddress(sh.Name), all, placing(e, sh.Name)),
		Caution: c.Caution, Prints: prints(loc, own, "", forFamilies),
	}
	if out.Caution == "" {
		out.Caution = loc.Label("caution-short")
	}
	r := &renderer{e: e, module: "sheet", level: 2}
	for i, p := range c.Pages {
		sec := sheetSection{ID: fmt.Sprintf("sheet-%d", i+1), Title: p.Title}
		r.level = 2
		sec.Body = r.blocks(writable(p.Blocks))
		sec.Figure = r.figureID() + "-title"
		out.Sections = append(out.Sections, sec)
	}
	if sh.Name == "growth-chart" {
		out.Work, out.Script = &sheetWork{"growth", newGrowthWork(e, out.Sections), r.blocks(sheet.GrowthNotes(loc, e.Pack))}, s.growth
	}
	if sh.Name == "cutting-plan" {
		out.Work, out.Script = &sheetWork{Kind: "cutting", Data: newCuttingWork(e)}, s.cutting
	}
	if out.Work != nil {
		out.ScriptHash = hash(out.Script)
	}
	return out
}

// writable gives a table to write on a dozen rows: a page on a screen has no end to fill.
func writable(bs []lesson.Block) []lesson.Block {
	bs = slices.Clone(bs)
	for i := range bs {
		if bs[i].Fill {
			bs[i] = bs[i].Filled(11)
		}
	}
	return bs
}

// placing returns the modules whose lesson places a sheet, or all when none does.
func placing(e *translate.Edition, name string) []translate.Module {
	var out []translate.Module
	for i := range e.Modules {
		found := false
		written(e, &e.Modules[i]).Walk(func(b *lesson.Block) { found = found || b.Sheet() == name })
		if found {
			out = append(out, e.Modules[i])
		}
	}
	if out == nil {
		return e.Modules
	}
	return out
}

// placed writes a sheet where a lesson places it, and the way to its own page.
func (r *renderer) placed(name string) template.HTML {
	sh := sheet.Find(name)
	if sh == nil {
		return "" // a rule has said so already
	}
	c := sh.Blank(r.e.Locale, r.e.Pack, sheet.A4)
	var b strings.Builder
	fmt.Fprintf(&b, "<p class=\"rows\"><a href=\"%s\">%s</a></p>\n", sheetAddress(name), esc(c.Title))
	b.WriteString(string(r.blocks(c.Embedded())))
	return template.HTML(b.String())
}

// chart writes a computed drawing with real text, and the table behind it.
func (r *renderer) chart(bl *lesson.Block) template.HTML {
	r.figures++
	svg := bl.Drawing.SVG(drawing.Labels{ID: r.figureID(), Title: bl.Alt, Key: r.e.Locale.Digits, RTL: r.e.Locale.RTL})
	var b strings.Builder
	fmt.Fprintf(&b, "<div class=\"figure chart\" tabindex=\"0\">%s</div>\n", svg)
	if len(bl.Rows) > 0 {
		fmt.Fprintf(&b, "<details><summary>%s</summary>\n", esc(r.e.Locale.Label("table-behind")))
		r.table(&b, bl)
		b.WriteString("</details>\n")
	}
	return template.HTML(b.String())
}

// form writes labels with lines to write on.
func (r *renderer) form(b *strings.Builder, bl *lesson.Block) {
	b.WriteString("<p class=\"form\">")
	for _, f := range bl.Fields {
		line := blank
		if f.Value != "" {
			line = "<bdi>" + esc(f.Value) + "</bdi>"
		}
		fmt.Fprintf(b, "<span class=\"whole-line\">%s %s</span> ", esc(f.Label), line)
	}
	b.WriteString("</p>\n")
}
