// Package table reads a table of records from a CSV file (RFC 4180, UTF-8, with or
// without a byte order mark) and knows the place of every cell.
//
// It knows nothing of what the columns mean: packages ward and growth read values out
// of the cells, and add their own findings.
package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// MaxBytes is the size of the largest file that is read; a larger one is not a record of one baby.
const MaxBytes = 1 << 20

// Options say what a table must and may hold.
type Options struct {
	Need, Also []string // columns
	MostRows   int
	Why        string // what becomes of a sheet when a row is not understood
}

// A Table is a file that was read, and what was found wrong with it.
type Table struct {
	File     *source.File // without a byte order mark
	Rows     []Row
	Findings []finding.Finding

	columns []string // of the head, by place; a column without a name is ""
	why     string
}

// A Row is one record below the head, with something in it.
type Row struct {
	cells []string // without white space around them
	spans []source.Span
}

// Read reads a file, called name in messages. What cannot be read is a finding, and
// the rows are those before it.
func Read(name string, b []byte, o Options) *Table {
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	t := &Table{File: source.New(name, b), why: o.Why}
	if len(b) > MaxBytes {
		t.File = source.New(name, nil)
		t.Say("csv-syntax", source.Span{}, fmt.Sprintf("the file is larger than %d KiB and was not read", MaxBytes>>10), t.why, "give the record of one baby alone")
		return t
	}
	for i := 0; i < len(b); {
		c, n := utf8.DecodeRune(b[i:])
		if c == utf8.RuneError && n == 1 || c == 0 {
			t.Say("csv-syntax", source.Span{Start: i, End: i + 1}, fmt.Sprintf("the byte 0x%02X is not UTF-8 text", b[i]), t.why, "save the file as CSV in UTF-8")
			return t
		}
		i += n
	}
	r := csv.NewReader(bytes.NewReader(b))
	r.FieldsPerRecord = -1
	for n := 0; ; n++ {
		cells, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.syntax(err)
			return t
		}
		row := Row{cells: cells}
		for i, c := range cells {
			row.spans = append(row.spans, t.at(r, i, c))
			row.cells[i] = strings.TrimSpace(c)
		}
		switch {
		case n == 0:
			if !t.head(row, o) {
				return t
			}
		case n > o.MostRows:
			t.Say("csv-syntax", row.spans[0], fmt.Sprintf("there are more than %d rows", o.MostRows), t.why, "give the record of one baby alone")
			return t
		default:
			t.row(row)
		}
	}
	if t.columns == nil {
		t.Say("csv-syntax", source.Span{}, "the file is empty", t.why, "write "+strings.Join(slices.Concat(o.Need, o.Also), ",")+" on the first line, and one row for each entry below it")
	} else if len(t.Rows) == 0 && len(t.Findings) == 0 {
		t.Say("csv-syntax", source.Span{}, "there is no row below the head", t.why, "write one row for each entry")
	}
	return t
}

// Say adds an error, and returns it for what else there is to say.
func (t *Table) Say(rule string, at source.Span, what, why, mend string) *finding.Finding {
	t.Findings = append(t.Findings, finding.Finding{
		Rule: rule, Level: finding.Error, Place: finding.Place{File: t.File, Span: at}, What: what, Why: why, Mend: mend,
	})
	return &t.Findings[len(t.Findings)-1]
}

// Failed reports whether there is an error among the findings.
func (t *Table) Failed() bool { return finding.Count(t.Findings, finding.Error) > 0 }

// Has reports whether the head names a column.
func (t *Table) Has(column string) bool { return slices.Contains(t.columns, column) }

// Cell returns a value of a row and its place; an empty value is where the row is.
func (t *Table) Cell(r Row, column string) (string, source.Span) {
	i := slices.Index(t.columns, column)
	if i < 0 || i >= len(r.cells) {
		return "", r.spans[0]
	}
	return r.cells[i], r.spans[i]
}

// Date reads an ISO 8601 calendar date; when it is none, a finding says so.
func (t *Table) Date(text string, at source.Span) (time.Time, bool) {
	d, err := time.Parse(time.DateOnly, text)
	if err != nil || d.Year() < 1990 || d.Year() > 2200 {
		t.Say("csv-value", at, fmt.Sprintf("%q is not a date", Short(text)), t.why, "write year, month and day, such as 2026-11-25, in the digits 0 to 9")
		return d, false
	}
	return d, true
}

// Short keeps a message readable whatever a cell holds.
func Short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// Names reports whether the head of a file names a column, before it is read.
func Names(b []byte, column string) bool {
	head, _, _ := bytes.Cut(b, []byte("\n"))
	return strings.Contains(strings.ToLower(string(head)), column)
}

// row takes in one record; commas alone, as a table program leaves them, are none.
func (t *Table) row(r Row) {
	if !slices.ContainsFunc(r.cells, func(c string) bool { return c != "" }) {
		return
	}
	for i, c := range r.cells {
		if c != "" && (i >= len(t.columns) || t.columns[i] == "") {
			t.Say("csv-syntax", r.spans[i], fmt.Sprintf("the value %q stands under no column", Short(c)), t.why, "write one value for each name of the head, decimals with a point, and a value with a comma in quotes")
			return
		}
	}
	t.Rows = append(t.Rows, r)
}

// head reads the names of the columns, in small or capital letters.
func (t *Table) head(r Row, o Options) bool {
	known := slices.Concat(o.Need, o.Also)
	t.columns = []string{}
	for i, c := range r.cells {
		name := strings.ToLower(c)
		switch {
		case strings.ContainsAny(name, ";\t"):
			t.Say("csv-column", r.spans[i], "the values are not parted by commas", t.why, "save the file with commas between values")
			return false
		case name != "" && slices.Contains(t.columns, name):
			t.Say("csv-column", r.spans[i], fmt.Sprintf("the column %s stands here twice", name), "It is not clear which of them holds.", "take one of the two out")
			return false
		case name != "" && !slices.Contains(known, name):
			f := t.Say("csv-column", r.spans[i], fmt.Sprintf("the column %q is not used", Short(c)), t.why, finding.Meant(name, known)+"take it out, or leave it: the others are read")
			if finding.Nearest(name, known) == "" { // else it is a slip, and its values would be missed
				f.Level = finding.Warning
			}
		}
		t.columns = append(t.columns, name)
	}
	for _, n := range o.Need {
		if !slices.Contains(t.columns, n) {
			t.Say("csv-column", r.spans[0], "there is no column "+n, t.why, "write "+strings.Join(known, ",")+" on the first line")
			return false
		}
	}
	return !t.Failed()
}

// at is the span of a cell. Its end is that of its bytes on the same line, at most.
func (t *Table) at(r *csv.Reader, i int, text string) source.Span {
	line, column := r.FieldPos(i)
	start := min(t.File.Offset(line, 1)+column-1, len(t.File.Bytes))
	end := min(start+len(text), len(t.File.Bytes))
	if i := bytes.IndexByte(t.File.Bytes[start:end], '\n'); i >= 0 {
		end = start + i
	}
	return source.Span{Start: start, End: end}
}

func (t *Table) syntax(err error) {
	var pe *csv.ParseError
	at, what := source.Span{}, err.Error()
	if errors.As(err, &pe) {
		at.Start = min(t.File.Offset(pe.Line, 1)+max(pe.Column-1, 0), len(t.File.Bytes))
		at.End, what = at.Start, pe.Err.Error()
	}
	t.Say("csv-syntax", at, "this is not well-formed CSV: "+what, "Nothing from here on can be read.", `look for a quotation mark without its fellow; a quotation mark inside a value is written twice ("")`)
}
