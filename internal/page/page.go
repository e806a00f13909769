// Package page is the seam between laying out and writing: finished pages as data.
//
// Everything on a page has its final place. Lengths are measured from the top left
// corner of the page, y downwards. Glyph runs are in visual order, left to right,
// but keep the text they stand for, so that a writer can give the words back to
// search, copy and screen readers. A writer needs nothing else: it never sees a
// lesson, and layout never sees a file format.
package page

import (
	"time"

	"wardleaf/internal/font"
	"wardleaf/internal/measure"
)

// A Document is a whole piece, ready to be written.
type Document struct {
	Title   string
	Subject string
	Author  string    // the facility
	Lang    string    // BCP 47 tag of the text as a whole
	RTL     bool      // pages turn and read from right to left
	Date    time.Time // the only date a writer may use
	Pages   []Page
	Outline []Bookmark
	Tags    *Tag // root of the structure tree; nil for an untagged document
	// Imposed documents and sheets at true size must not be scaled; they say so, and how the paper turns.
	ExactScale bool
	Duplex     Duplex
}

// Duplex says how a sheet is turned to print its other side.
type Duplex int

// Duplex values.
const (
	AnyDuplex Duplex = iota
	FlipShortEdge
	FlipLongEdge
)

// A Page is one page or one side of a sheet.
type Page struct {
	Size  measure.Size
	Items []Item
}

// An Item is something that leaves a mark on a page, or a link over it.
type Item interface{ item() }

// A Colour is an sRGB colour.
type Colour struct{ R, G, B uint8 }

// A Cluster is the smallest piece of shaped text that can be taken apart: one or
// more glyphs that stand for Text. Glyph places are in font units from the
// cluster's own origin on the baseline, y upwards.
type Cluster struct {
	Text    string // logical order
	Advance int    // font units
	Glyphs  []Glyph
}

// A Glyph is one glyph of a cluster.
type Glyph struct {
	ID   int
	X, Y int
}

// A GlyphRun is text of one face, size, colour and direction. Clusters are in
// visual order and shared between runs: never change them.
type GlyphRun struct {
	Face     *font.Face
	Size     measure.Length
	X, Y     measure.Length // start of the baseline
	RTL      bool
	Upward   bool // a quarter turn anticlockwise about X, Y
	Clusters []Cluster
	Colour   Colour
	Tag      *Tag // nil: an artifact, such as a running head
	Cut      bool // it holds a piece of a word that no line could hold
}

// Width returns how far the run reaches to the right of X.
func (r *GlyphRun) Width() measure.Length {
	n := 0
	for i := range r.Clusters {
		n += r.Clusters[i].Advance
	}
	return r.Size.Scale(float64(n) / float64(r.Face.UnitsPerEm))
}

// Text returns what the run says, in the order it is read.
func (r *GlyphRun) Text() string {
	var text []byte
	for i := range r.Clusters {
		c := &r.Clusters[i]
		if r.RTL {
			c = &r.Clusters[len(r.Clusters)-1-i]
		}
		text = append(text, c.Text...)
	}
	return string(text)
}

// A Box is a filled rectangle; rules and panels are made of it.
type Box struct {
	X, Y, Width, Height measure.Length
	Colour              Colour
}

// A Path is an outline, filled, stroked or both.
type Path struct {
	Segments    []Segment
	Fill        *Colour
	EvenOdd     bool
	Stroke      *Colour
	StrokeWidth measure.Length
	RoundCap    bool
	RoundJoin   bool
	Dash        []measure.Length
	Tag         *Tag
}

// Op is what a Segment does.
type Op uint8

// The operations of a path.
const (
	MoveTo  Op = iota // one point
	LineTo            // one point
	CurveTo           // three points: two controls and the end
	Close             // no point
)

// A Segment is one operation of a path with its absolute points.
type Segment struct {
	Op Op
	P  [3]Point
}

// A Point is a place on the page.
type Point struct{ X, Y measure.Length }

// A Link makes a rectangle lead somewhere: to a URI, or to a page of the same document.
type Link struct {
	X, Y, Width, Height measure.Length
	URI                 string
	Page                int // index into Document.Pages, when URI is empty
	Top                 measure.Length
	Tag                 *Tag
}

// A Group is a set of items moved together, such as one page placed on a sheet.
type Group struct {
	X, Y  measure.Length // where the group's own origin lies
	Clip  *measure.Size  // when set, nothing is drawn outside this box from the origin
	Items []Item
}

func (*GlyphRun) item() {}
func (*Box) item()      {}
func (*Path) item()     {}
func (*Link) item()     {}
func (*Group) item()    {}

// A Bookmark is one line of the outline that a reader shows beside the pages.
type Bookmark struct {
	Title string
	Level int // 0 is the outermost
	Page  int // index into Document.Pages
	Top   measure.Length
}

// A Tag is an element of the structure tree. Its content is every item that names
// it, in page order; its place in the reading order is its place in the tree.
// Role is a standard structure type of ISO 32000-1, 14.8.4: Document, Sect, H1 to
// H6, P, L, LI, Lbl, LBody, Table, TR, TH, TD, Figure, Link, BlockQuote, Caption, Span.
type Tag struct {
	Role   string
	Alt    string // alternative text, for a Figure or a Link
	Lang   string // when it differs from its parent's
	Actual string // the true text in logical order, set for right-to-left text
	Scope  string // TH: Column or Row
	// Numbering says how the labels of an L run: Decimal, UpperAlpha, Disc, Square (ISO 32000-1, 14.8.5.5).
	Numbering string
	BBox      *[4]measure.Length // Figure: left, top, right, bottom, measured as its items are
	Kids      []*Tag
}

// List appends a new list whose labels run as numbering says, and returns it.
func (t *Tag) List(numbering string) *Tag {
	k := t.Add("L")
	k.Numbering = numbering
	return k
}

// Add appends a new child and returns it.
func (t *Tag) Add(role string) *Tag {
	k := &Tag{Role: role}
	t.Kids = append(t.Kids, k)
	return k
}
