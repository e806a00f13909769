package growth

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// A Baby is what is known at birth.
type Baby struct {
	Birth       time.Time // a date without a time of day
	Weeks, Days int       // gestation at birth
	Sex         Sex
}

// A Row is what was measured on one day. A measure that was not taken is 0.
type Row struct {
	Date   time.Time
	Age    int         // postmenstrual, in days
	Values [3]float64  // by Measure: kg, cm, cm
	Span   source.Span // of the date
}

// Columns are the names that the header of a file of measurements may hold, in any
// order. The date is needed, and one of the others.
var Columns = []string{"date", "weight-g", "length-cm", "head-cm"}

// MostRows is how many measurements one file may hold: one a day for the whole range.
const MostRows = LastDay - FirstDay + 1

// Beyond these many standard deviations a measurement is a slip of the pen, or must be
// looked at again (common practice).
const (
	Absurd  = 8
	unusual = 5
)

// Read reads a baby's measurements from a CSV file (RFC 4180, UTF-8, with or without a
// byte order mark), sorted by date. Dates are YYYY-MM-DD, numbers have a point; an empty
// cell was not measured. Anything doubtful is a finding at its row.
func Read(f *source.File, b Baby) ([]Row, []finding.Finding) {
	r := &reader{file: f, baby: b, seen: map[time.Time]int{}}
	r.read()
	slices.SortStableFunc(r.rows, func(a, b Row) int { return a.Date.Compare(b.Date) })
	return r.rows, r.found
}

type reader struct {
	file    *source.File
	baby    Baby
	columns []string // of the header, by place
	seen    map[time.Time]int
	rows    []Row
	found   []finding.Finding
	start   int // of the text, after a byte order mark
}

func (r *reader) say(level finding.Level, span source.Span, what, why, mend string) {
	r.found = append(r.found, finding.Finding{Rule: "measurement", Level: level, Place: finding.Place{File: r.file, Span: span}, What: what, Why: why, Mend: mend})
}

const whyRead = "A measurement that is not read is missing from the chart."
const whyWrong = "A wrong point on the chart can lead to a wrong decision."

func (r *reader) read() {
	text := r.file.Bytes
	if rest, ok := bytes.CutPrefix(text, []byte("\xef\xbb\xbf")); ok {
		r.start, text = 3, rest
	}
	if !utf8.Valid(text) {
		at := 0
		for at < len(text) {
			c, n := utf8.DecodeRune(text[at:])
			if c == utf8.RuneError && n == 1 {
				break
			}
			at += n
		}
		r.say(finding.Error, source.Span{Start: r.start + at, End: r.start + at + 1}, "the file is not UTF-8 text", whyRead, "save it as CSV in UTF-8")
		return
	}
	in := csv.NewReader(bytes.NewReader(text))
	in.FieldsPerRecord = -1
	for n := 0; ; n++ {
		record, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		var bad *csv.ParseError
		if errors.As(err, &bad) {
			at := r.offset(bad.Line, bad.Column)
			r.say(finding.Error, source.Span{Start: at, End: at}, "the quotation marks of this row do not match", whyRead, `write cells without quotation marks, or with one at either end: "1605"`)
			return
		}
		if n == 0 {
			if !r.header(in, record) {
				return
			}
			continue
		}
		if n > MostRows {
			r.say(finding.Error, r.span(in, 0, record), fmt.Sprintf("there are more than %d rows", MostRows), "One file is one baby; so many rows are a mistake.", "keep the measurements of one baby, one row a day at most")
			return
		}
		r.row(in, record)
	}
	if r.columns == nil {
		r.say(finding.Error, source.Span{}, "the file is empty", whyRead, "begin it with the row "+strings.Join(Columns, ","))
	} else if len(r.rows) == 0 && len(r.found) == 0 {
		r.say(finding.Error, source.Span{}, "there are no measurements under the header", whyRead, "add a row for each day, such as 2026-11-25,1605,,")
	}
}

// offset turns a line and a column in bytes, both from 1, into an offset of the file.
func (r *reader) offset(line, column int) int {
	at := r.file.Offset(line, 1) + column - 1
	if line == 1 {
		at += r.start
	}
	return min(max(at, 0), len(r.file.Bytes))
}

func (r *reader) span(in *csv.Reader, i int, record []string) source.Span {
	line, column := in.FieldPos(i)
	at := r.offset(line, column)
	return source.Span{Start: at, End: min(at+len(record[i]), len(r.file.Bytes))}
}

func (r *reader) header(in *csv.Reader, record []string) bool {
	r.columns = make([]string, len(record))
	if len(record) == 1 && strings.ContainsAny(record[0], ";\t") {
		r.say(finding.Error, r.span(in, 0, record), "the cells are not parted by commas", whyRead, "save the file with commas between its cells")
		return false
	}
	for i, c := range record {
		name := strings.ToLower(strings.TrimSpace(c))
		switch {
		case name == "" && i > 0: // a comma too many
		case !slices.Contains(Columns, name):
			r.say(finding.Error, r.span(in, i, record), fmt.Sprintf("there is no column %q", shortened(c)), whyRead, finding.Meant(name, Columns)+"use the columns "+strings.Join(Columns, ", "))
		case slices.Contains(r.columns, name):
			r.say(finding.Error, r.span(in, i, record), fmt.Sprintf("the column %s stands there twice", name), "It is not clear which of them holds.", "take one of them out")
		default:
			r.columns[i] = name
		}
	}
	if len(r.found) > 0 {
		return false
	}
	if !slices.Contains(r.columns, "date") || !slices.ContainsFunc(r.columns, func(c string) bool { return c != "" && c != "date" }) {
		r.say(finding.Error, r.span(in, 0, record), "the header has no date, or nothing that was measured", "A point needs a day and a measure.", "begin the file with the row "+strings.Join(Columns, ","))
		return false
	}
	return true
}

func (r *reader) row(in *csv.Reader, record []string) {
	if !slices.ContainsFunc(record, func(c string) bool { return strings.TrimSpace(c) != "" }) {
		return // commas alone, as a table program leaves them
	}
	row := Row{}
	dated := false
	before := len(r.found)
	for i, c := range record {
		if i >= len(r.columns) || r.columns[i] == "" {
			if strings.TrimSpace(c) != "" {
				r.say(finding.Error, r.span(in, i, record), fmt.Sprintf("the cell %q stands under no column", shortened(c)), whyRead, "write numbers with a point, not a comma, and as many cells as the header has")
			}
			continue
		}
		if r.columns[i] == "date" {
			dated = true
			r.date(&row, strings.TrimSpace(c), r.span(in, i, record))
		}
	}
	if !dated {
		r.say(finding.Error, r.span(in, 0, record), "the row has no date", "A point needs a day.", "write the date as YYYY-MM-DD, such as 2026-11-25")
	}
	if len(r.found) > before {
		return
	}
	measured := false
	for i, c := range record {
		if c = strings.TrimSpace(c); c == "" || i >= len(r.columns) || r.columns[i] == "date" {
			continue
		}
		measured = true
		m := Measure(slices.Index(Columns, r.columns[i]) - 1)
		if v, ok := r.value(m, c, row.Age, r.span(in, i, record)); ok {
			row.Values[m] = v
		}
	}
	if !measured {
		r.say(finding.Error, row.Span, "nothing was measured on this day", whyRead, "add a weight, a length or a head circumference, or take the row out")
	}
	if !hasError(r.found[before:]) {
		r.rows = append(r.rows, row)
	}
}

func hasError(fs []finding.Finding) bool {
	return slices.ContainsFunc(fs, func(f finding.Finding) bool { return f.Level == finding.Error })
}

func (r *reader) date(row *Row, text string, span source.Span) {
	row.Span = span
	t, err := time.Parse(time.DateOnly, text)
	switch {
	case err != nil:
		r.say(finding.Error, span, fmt.Sprintf("%q is not a date", shortened(text)), whyRead, "write the date as YYYY-MM-DD, such as 2026-11-25")
		return
	case t.Before(r.baby.Birth):
		r.say(finding.Error, span, fmt.Sprintf("%s is before the birth, %s", text, r.baby.Birth.Format(time.DateOnly)), whyWrong, "correct this date, or the date of birth")
		return
	}
	row.Date, row.Age = t, PostmenstrualDays(r.baby.Weeks, r.baby.Days, r.baby.Birth, t)
	if !Holds(row.Age) {
		r.say(finding.Error, span, fmt.Sprintf("on %s the baby's age is %d weeks and %d days", text, row.Age/7, row.Age%7),
			"The standards hold from 27 to 64 weeks, and are never used outside them.", "take the row out; use another chart for this age")
		return
	}
	line, _ := r.file.Position(span.Start)
	if first, twice := r.seen[t]; twice {
		r.say(finding.Error, span, fmt.Sprintf("%s stands in row %d already", text, first), "It is not clear which of them holds.", "keep one row for each day")
		return
	}
	r.seen[t] = line
}

func (r *reader) value(m Measure, text string, age int, span source.Span) (float64, bool) {
	v, err := strconv.ParseFloat(text, 64)
	name := Columns[m+1]
	example := [...]string{Weight: "1605", Length: "42.5", Head: "30.5"}[m]
	switch {
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0) || strings.ContainsAny(text, "xXpP_"):
		r.say(finding.Error, span, fmt.Sprintf("%q is not a number", shortened(text)), whyRead, "write digits, with a point and not a comma, such as "+example)
		return 0, false
	case v <= 0:
		r.say(finding.Error, span, fmt.Sprintf("%s of %s is not above zero", name, shortened(text)), whyWrong, "correct it, or leave the cell empty when nothing was measured")
		return 0, false
	}
	if m == Weight {
		v /= 1000
	}
	z, _ := Z(m, r.baby.Sex, age, v)
	switch {
	case math.Abs(z) > Absurd:
		mend := "look at the record again and correct it; " + name + " is such as " + example
		if m == Weight && v*1000 < 20 {
			mend = "write the weight in grams: " + strconv.FormatFloat(v*1e6, 'f', 0, 64)
		}
		r.say(finding.Error, span, fmt.Sprintf("%s of %s cannot be at %d weeks and %d days", name, shortened(text), age/7, age%7), whyWrong, mend)
		return 0, false
	case math.Abs(z) > unusual:
		r.say(finding.Warning, span, fmt.Sprintf("%s of %s is far from what is usual at %d weeks and %d days", name, shortened(text), age/7, age%7), whyWrong, "look at the record again, and at the baby")
	}
	return v, true
}

// shortened keeps a message readable whatever a cell holds.
func shortened(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
