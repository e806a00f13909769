// Package lesson is one module in one language as data: parts, blocks and inlines,
// each with the span it was read from.
//
// It is what every later stage works on. It knows nothing of Markdown, paper or HTML.
package lesson

import (
	"slices"
	"strings"

	"wardleaf/internal/drawing"
	"wardleaf/internal/source"
)

// A Lesson is one module in one language.
type Lesson struct {
	Module string // folder name of the module
	Lang   string // BCP 47 tag
	File   *source.File
	Title  []Inline
	Lead   []Block // what stands between the title and the first part
	Parts  []Part
	Span   source.Span // of the title, or of the start of the file when there is none
}

// A Role says what a part is for. The zero Role is ordinary prose.
type Role string

// The roles a part can have; the words are those written in the heading's class.
const (
	Prose        Role = ""
	Caution      Role = "caution"
	Materials    Role = "materials"
	Steps        Role = "steps"
	Checklist    Role = "checklist"
	WarningSigns Role = "warning-signs"
	KeyPoints    Role = "key-points"
	Quiz         Role = "quiz"
	TrainerNotes Role = "trainer-notes"
)

// Roles lists every role but Prose, in the order a module usually has them.
var Roles = []Role{Caution, Materials, Steps, Checklist, WarningSigns, KeyPoints, Quiz, TrainerNotes}

// A Part is a level-2 heading and what follows it.
type Part struct {
	Role    Role
	Classes []string // every class on the heading, as written
	Heading []Inline
	Blocks  []Block
	Span    source.Span // of the heading line
}

// Kind tells blocks apart.
type Kind int

// The kinds of block.
const (
	Paragraph Kind = iota
	Heading        // level 3 and deeper
	List
	Quote
	Table
	Figure // an image that stands alone in its paragraph
	Code   // a code block; Inlines holds its text
	Rule   // a thematic break
	Form   // labels with lines to write on, side by side; no lesson holds one, sheets do
)

// A Block is one block of text. Which fields are used depends on Kind.
type Block struct {
	Kind    Kind
	Span    source.Span
	Inlines []Inline // Paragraph, Heading, Code
	Level   int      // Heading: 3 to 6
	Ordered bool     // List
	Start   int      // List, ordered: number of the first item
	Items   []Item   // List
	Blocks  []Block  // Quote
	Rows    []Row    // Table; the first row is its head
	Align   []Align  // Table: one a column
	Source  string   // Figure: path of the picture from the root of the pack, or a scheme ("sheet:growth-chart")
	Alt     string   // Figure: its alternative text

	// What sheets are made of besides. A lesson that was read never has these.
	Drawing *drawing.Drawing // Figure: a chart in units of 1 mm; Rows hold the data behind it
	Shares  []float64        // Table: how wide each column is, adding up to 1; nil: all alike
	Ruled   bool             // Table: lines between all cells, rows high enough to write in
	Dense   bool             // Table that is Ruled: rows no higher than their words
	Row     float64          // Table that is Ruled: height of a row in mm, unless its words need more; 0: by Dense
	Fill    bool             // Table that is Ruled: its last row is empty, and repeated as far as the page goes
	Fields  []Field          // Form
	Caption string           // Table that is Ruled: what it is called
	Heads   bool             // Table that is Ruled: the first cell of a row says what the row is
}

// A Field is a label with a line to write on. Value, when set, stands on the line.
type Field struct {
	Label, Value string
	Share        float64 // of the width; those of a form add up to 1
}

// Filled is a table that has its last row, which is empty, so many times more.
func (b Block) Filled(more int) Block {
	b.Rows = slices.Clone(b.Rows)
	for range more {
		b.Rows = append(b.Rows, b.Rows[len(b.Rows)-1])
	}
	return b
}

// Sheet returns the name of the computed sheet that a Figure places, or "".
func (b *Block) Sheet() string {
	name, ok := strings.CutPrefix(b.Source, "sheet:")
	if b.Kind != Figure || !ok {
		return ""
	}
	return name
}

// An Item is one item of a list.
type Item struct {
	Task   Task
	Blocks []Block
	Span   source.Span
}

// Task says whether a list item carries a box, and whether it is ticked.
type Task int

// Task values.
const (
	NoTask Task = iota
	Open
	Ticked
)

// Align is the alignment of a table column.
type Align int

// Column alignments; Start follows the direction of the text.
const (
	AlignStart Align = iota
	AlignCentre
	AlignEnd
)

// A Row is one row of a table.
type Row struct {
	Cells [][]Inline
	Span  source.Span
}

// InlineKind tells inlines apart.
type InlineKind int

// The kinds of inline.
const (
	Text InlineKind = iota
	Strong
	Emphasis
	CodeSpan
	Link
	Image  // an image inside a line of text; not allowed by the rules, kept so that they can say where
	Break  // a hard line break
	Struck // words that were taken out, in a redline; no lesson holds any
	Added  // words that are new, in a redline
)

// An Inline is a run of text within a block. A soft line break is a space in Text.
type Inline struct {
	Kind     InlineKind
	Span     source.Span
	Text     string   // Text, CodeSpan; Image: alternative text
	Children []Inline // Strong, Emphasis, Link, Struck, Added
	Scheme   string   // Link: "number", "source", "module", "term", "facility", "https", "mailto", "tel", or "" for a relative address
	Target   string   // Link: what follows the scheme; Image: the address
}

// Plain returns the text of inlines with all markup taken away.
func Plain(ins []Inline) string {
	var out []byte
	var walk func([]Inline)
	walk = func(ins []Inline) {
		for _, in := range ins {
			switch in.Kind {
			case Text, CodeSpan:
				out = append(out, in.Text...)
			case Break:
				out = append(out, ' ')
			}
			walk(in.Children)
		}
	}
	walk(ins)
	return string(out)
}

// Part returns the first part with a role, or nil.
func (l *Lesson) Part(r Role) *Part {
	for i := range l.Parts {
		if l.Parts[i].Role == r {
			return &l.Parts[i]
		}
	}
	return nil
}

// Walk calls fn for every block of the lesson in reading order, blocks inside others too.
func (l *Lesson) Walk(fn func(*Block)) {
	walkBlocks(l.Lead, fn)
	for i := range l.Parts {
		walkBlocks(l.Parts[i].Blocks, fn)
	}
}

func walkBlocks(bs []Block, fn func(*Block)) {
	for i := range bs {
		b := &bs[i]
		fn(b)
		walkBlocks(b.Blocks, fn)
		for j := range b.Items {
			walkBlocks(b.Items[j].Blocks, fn)
		}
	}
}

// WalkInlines calls fn for every inline of the lesson in reading order.
func (l *Lesson) WalkInlines(fn func(*Inline)) {
	var walk func([]Inline)
	walk = func(ins []Inline) {
		for i := range ins {
			fn(&ins[i])
			walk(ins[i].Children)
		}
	}
	block := func(b *Block) {
		walk(b.Inlines)
		for _, r := range b.Rows {
			for _, c := range r.Cells {
				walk(c)
			}
		}
	}
	walk(l.Title)
	walkBlocks(l.Lead, block)
	for i := range l.Parts {
		walk(l.Parts[i].Heading)
		walkBlocks(l.Parts[i].Blocks, block)
	}
}
