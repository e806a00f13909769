package pdf

import (
	"encoding/xml"
	"strings"
	"time"

	"wardleaf/internal/page"
)

const creator = "Wardleaf"

// catalogKeys returns what the catalog says of language and viewing: ISO 32000-1, 7.7.2 and 12.2.
func catalogKeys(d *page.Document) string {
	keys := ""
	if d.Lang != "" {
		keys += "/Lang" + textString(d.Lang)
	}
	view := ""
	if d.Title != "" {
		view += "/DisplayDocTitle true"
	}
	if d.RTL {
		view += "/Direction/R2L"
	}
	if d.ExactScale {
		view += "/PrintScaling/None"
	}
	switch d.Duplex {
	case page.FlipShortEdge:
		view += "/Duplex/DuplexFlipShortEdge"
	case page.FlipLongEdge:
		view += "/Duplex/DuplexFlipLongEdge"
	}
	if view != "" {
		keys += "/ViewerPreferences<<" + view + ">>"
	}
	return keys
}

// info returns the document information dictionary: ISO 32000-1, 14.3.3.
func info(d *page.Document) string {
	s := "<<"
	for _, e := range [][2]string{
		{"/Title", d.Title}, {"/Subject", d.Subject}, {"/Author", d.Author}, {"/Creator", creator}, {"/Producer", "go-pdf/fpdf"},
	} {
		if e[1] != "" {
			s += e[0] + textString(e[1])
		}
	}
	if !d.Date.IsZero() {
		date := d.Date.UTC().Format("(D:20060102150405+00'00')")
		s += "/CreationDate" + date + "/ModDate" + date
	}
	return s + ">>"
}

// addMetadata adds the same as XMP (ISO 16684-1), which is where PDF/UA looks, and
// returns the catalog's key. It says what the file was built to, not that it conforms.
func addMetadata(f *file, d *page.Document) string {
	var b strings.Builder
	element := func(name, open, text, end string) {
		if text == "" {
			return
		}
		b.WriteString("<" + name + ">" + open)
		xml.EscapeText(&b, []byte(text)) // a strings.Builder never fails
		b.WriteString(end + "</" + name + ">\n")
	}
	b.WriteString("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` + "\n" +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"` +
		` xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">` + "\n")
	const inDefault, alternatives = `<rdf:Alt><rdf:li xml:lang="x-default">`, "</rdf:li></rdf:Alt>"
	element("dc:title", inDefault, d.Title, alternatives)
	element("dc:description", inDefault, d.Subject, alternatives)
	element("dc:creator", "<rdf:Seq><rdf:li>", d.Author, "</rdf:li></rdf:Seq>")
	element("dc:language", "<rdf:Bag><rdf:li>", d.Lang, "</rdf:li></rdf:Bag>")
	element("xmp:CreatorTool", "", creator, "")
	element("pdf:Producer", "", "go-pdf/fpdf", "")
	if !d.Date.IsZero() {
		date := d.Date.UTC().Format(time.RFC3339)
		element("xmp:CreateDate", "", date, "")
		element("xmp:ModifyDate", "", date, "")
	}
	if d.Tags != nil {
		element("pdfuaid:part", "", "1", "")
	}
	b.WriteString("</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>")
	return "/Metadata " + f.addStream("<<"+metadataType+"/Subtype/XML>>", []byte(b.String()))
}
