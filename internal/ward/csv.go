package ward

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// Limits of a CSV file; a longer one is not a record of one baby.
const (
	MaxBytes = 1 << 20
	maxRows  = 5000
	maxDays  = 400 // from the first date to the last
)

// A table reads one CSV file: RFC 4180, UTF-8, a byte order mark let through.
type table struct {
	file     *source.File
	columns  map[string]int
	rows     []row
	findings []finding.Finding
}

// A row is one record of a CSV file; a cell that is not there is empty.
type row struct {
	cells []string
	spans []source.Span
}

func (t *table) say(rule string, at source.Span, what, why, mend string) *finding.Finding {
	t.findings = append(t.findings, finding.Finding{
		Rule: rule, Level: finding.Error, Place: finding.Place{File: t.file, Span: at}, What: what, Why: why, Mend: mend,
	})
	return &t.findings[len(t.findings)-1]
}

const whyTable = "A row that is not understood would be left out of the sheet, and its sums would be wrong without a word."

// readTable reads the rows of a file below its head. The head must hold need; other
// names than need and also are findings.
func readTable(name string, b []byte, need, also []string) *table {
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	t := &table{file: source.New(name, b), columns: map[string]int{}}
	if len(b) > MaxBytes {
		t.file = source.New(name, nil)
		t.say("csv-syntax", source.Span{}, fmt.Sprintf("the file is larger than %d KiB and was not read", MaxBytes>>10), whyTable, "give the record of one baby alone")
		return t
	}
	for i := 0; i < len(b); {
		c, n := utf8.DecodeRune(b[i:])
		if c == utf8.RuneError && n == 1 || c == 0 {
			t.say("csv-syntax", source.Span{Start: i, End: i + 1}, fmt.Sprintf("the byte 0x%02X is not text in UTF-8", b[i]), whyTable, "save the file as CSV in UTF-8")
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
		if n > maxRows {
			t.say("csv-syntax", t.at(r, 0, cells[0]), fmt.Sprintf("there are more than %d rows", maxRows), whyTable, "give the record of one baby alone")
			return t
		}
		rw := row{cells: cells}
		for i, c := range cells {
			rw.cells[i] = strings.TrimSpace(c)
			rw.spans = append(rw.spans, t.at(r, i, c))
		}
		if n == 0 {
			if !t.head(rw, need, also) {
				return t
			}
			continue
		}
		if len(cells) > len(t.columns) {
			t.say("csv-syntax", rw.spans[len(t.columns)], fmt.Sprintf("this row has %d values, and the head names %d", len(cells), len(t.columns)), whyTable, "write one value for each name of the head; put a value with a comma in quotes")
			continue
		}
		t.rows = append(t.rows, rw)
	}
	if len(t.columns) == 0 {
		t.say("csv-syntax", source.Span{}, "the file is empty", whyTable, "write "+strings.Join(need, ",")+" on the first line, and one row for each entry below it")
	} else if len(t.rows) == 0 && len(t.findings) == 0 {
		t.say("csv-syntax", source.Span{}, "there is no row below the head", whyTable, "write one row for each entry")
	}
	return t
}

// at is the span of a cell. Its end is that of its bytes on the same line, at most.
func (t *table) at(r *csv.Reader, i int, text string) source.Span {
	line, column := r.FieldPos(i)
	start := min(t.file.Offset(line, 1)+column-1, len(t.file.Bytes))
	end := min(start+len(text), len(t.file.Bytes))
	if i := bytes.IndexByte(t.file.Bytes[start:end], '\n'); i >= 0 {
		end = start + i
	}
	return source.Span{Start: start, End: end}
}

func (t *table) syntax(err error) {
	var pe *csv.ParseError
	at, what := source.Span{}, err.Error()
	if errors.As(err, &pe) {
		at.Start = min(t.file.Offset(pe.Line, 1)+max(pe.Column-1, 0), len(t.file.Bytes))
		at.End, what = at.Start, pe.Err.Error()
	}
	t.say("csv-syntax", at, "this is not well-formed CSV: "+what, "Nothing from here on can be read.", `look for a quotation mark without its fellow; a quotation mark inside a value is written twice ("")`)
}

// head reads the names of the columns, in small or capital letters.
func (t *table) head(rw row, need, also []string) bool {
	known := append(append([]string{}, need...), also...)
	for i, c := range rw.cells {
		name := strings.ToLower(c)
		_, twice := t.columns[name]
		switch {
		case strings.Contains(name, ";"):
			t.say("csv-column", rw.spans[i], "the values are parted by semicolons", whyTable, "save the file with commas between values")
			return false
		case twice:
			t.say("csv-column", rw.spans[i], fmt.Sprintf("the column %s stands here twice", name), whyTable, "take one of the two out")
			return false
		}
		t.columns[name] = i
		isKnown := false
		for _, k := range known {
			isKnown = isKnown || k == name
		}
		if !isKnown {
			f := t.say("csv-column", rw.spans[i], fmt.Sprintf("the column %q is not used", c), whyTable, finding.Meant(name, known)+"take it out, or leave it: the others are read")
			f.Level = finding.Warning
		}
	}
	for _, n := range need {
		if _, ok := t.columns[n]; !ok {
			t.say("csv-column", rw.spans[0], "there is no column "+n, whyTable, "write "+strings.Join(need, ",")+" on the first line")
			return false
		}
	}
	return true
}

// headHolds reports whether the first line of a file names a column.
func headHolds(b []byte, column string) bool {
	head, _, _ := bytes.Cut(b, []byte("\n"))
	return strings.Contains(strings.ToLower(string(head)), column)
}

// cell returns a value of a row and its place; an empty value is where the row is.
func (t *table) cell(rw row, name string) (string, source.Span) {
	i := t.columns[name]
	if i >= len(rw.cells) {
		return "", rw.spans[0]
	}
	return rw.cells[i], rw.spans[i]
}

// date reads an ISO 8601 calendar date.
func (t *table) date(text string, at source.Span) (time.Time, bool) {
	d, err := time.Parse(time.DateOnly, text)
	if err != nil || d.Year() < 1990 || d.Year() > 2200 {
		t.say("csv-value", at, fmt.Sprintf("%q is not a date", text), whyTable, "write year, month and day, such as 2026-11-25, in the digits 0 to 9")
		return d, false
	}
	return d, true
}

// failed reports whether there is an error among the findings.
func (t *table) failed() bool { return finding.Count(t.findings, finding.Error) > 0 }
