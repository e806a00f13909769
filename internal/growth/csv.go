package growth

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
	"wardleaf/internal/table"
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

// Read reads a baby's measurements from a CSV file (package table), sorted by date.
// Numbers have a point; an empty cell was not measured. Anything doubtful is a finding
// at its row.
func Read(f *source.File, b Baby) ([]Row, []finding.Finding) {
	r := &reader{baby: b, seen: map[time.Time]int{}}
	r.Table = table.Read(f.Path, f.Bytes, table.Options{Need: Columns[:1], Also: Columns[1:], MostRows: MostRows, Why: whyRead})
	if len(r.Rows) > 0 && !slices.ContainsFunc(Columns[1:], r.Has) {
		r.say(finding.Error, source.Span{}, "the head names nothing that was measured", "A point needs a day and a measure.", "begin the file with the row "+strings.Join(Columns, ","))
		return nil, r.Findings
	}
	var rows []Row
	for _, from := range r.Rows {
		if row, ok := r.row(from); ok {
			rows = append(rows, row)
		}
	}
	slices.SortStableFunc(rows, func(a, b Row) int { return a.Date.Compare(b.Date) })
	return rows, r.Findings
}

type reader struct {
	*table.Table
	baby Baby
	seen map[time.Time]int // the line of each date
}

func (r *reader) say(level finding.Level, at source.Span, what, why, mend string) {
	r.Say("measurement", at, what, why, mend).Level = level
}

const whyRead = "A measurement that is not read is missing from the chart."
const whyWrong = "A wrong point on the chart can lead to a wrong decision."

// row reads what was measured on one day; ok is false when an error was found in it.
func (r *reader) row(from table.Row) (row Row, ok bool) {
	before := len(r.Findings)
	text, at := r.Cell(from, "date")
	row.Span = at
	if row.Date, ok = r.Date(text, at); !ok || !r.age(&row) {
		return row, false
	}
	measured := false
	for m, column := range Columns[1:] {
		text, at := r.Cell(from, column)
		if text == "" {
			continue
		}
		measured = true
		if v, ok := r.value(Measure(m), text, row.Age, at); ok {
			row.Values[m] = v
		}
	}
	if !measured {
		r.say(finding.Error, row.Span, "nothing was measured on this day", whyRead, "add a weight, a length or a head circumference, or take the row out")
	}
	return row, finding.Count(r.Findings[before:], finding.Error) == 0
}

// age works out the age on the day of a row, and refuses a day that cannot be charted.
func (r *reader) age(row *Row) bool {
	day := row.Date.Format(time.DateOnly)
	if row.Date.Before(r.baby.Birth) {
		r.say(finding.Error, row.Span, fmt.Sprintf("%s is before the birth, %s", day, r.baby.Birth.Format(time.DateOnly)), whyWrong, "correct this date, or the date of birth")
		return false
	}
	row.Age = PostmenstrualDays(r.baby.Weeks, r.baby.Days, r.baby.Birth, row.Date)
	if !Holds(row.Age) {
		r.say(finding.Error, row.Span, fmt.Sprintf("on %s the baby's age is %d weeks and %d days", day, row.Age/7, row.Age%7),
			"The standards hold from 27 to 64 weeks, and are never used outside them.", "take the row out; use another chart for this age")
		return false
	}
	line, _ := r.File.Position(row.Span.Start)
	if first, twice := r.seen[row.Date]; twice {
		r.say(finding.Error, row.Span, fmt.Sprintf("%s stands in row %d already", day, first), "It is not clear which of them holds.", "keep one row for each day")
		return false
	}
	r.seen[row.Date] = line
	return true
}

func (r *reader) value(m Measure, text string, age int, span source.Span) (float64, bool) {
	v, err := strconv.ParseFloat(text, 64)
	name := Columns[m+1]
	example := [...]string{Weight: "1605", Length: "42.5", Head: "30.5"}[m]
	switch {
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0) || strings.ContainsAny(text, "xXpP_"):
		r.say(finding.Error, span, fmt.Sprintf("%q is not a number", table.Short(text)), whyRead, "write digits, with a point and not a comma, such as "+example)
		return 0, false
	case v <= 0:
		r.say(finding.Error, span, fmt.Sprintf("%s of %s is not above zero", name, table.Short(text)), whyWrong, "correct it, or leave the cell empty when nothing was measured")
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
		r.say(finding.Error, span, fmt.Sprintf("%s of %s cannot be at %d weeks and %d days", name, table.Short(text), age/7, age%7), whyWrong, mend)
		return 0, false
	case math.Abs(z) > unusual:
		r.say(finding.Warning, span, fmt.Sprintf("%s of %s is far from what is usual at %d weeks and %d days", name, table.Short(text), age/7, age%7), whyWrong, "look at the record again, and at the baby")
	}
	return v, true
}
