package ward

import (
	"fmt"
	"strconv"

	"wardleaf/internal/finding"
	"wardleaf/internal/table"
)

// ReadWeights reads the columns date and weight, or weight-g, in g; the first row is
// the day of birth. A file of a growth chart, which has lengths, too, may be given.
// Messages call the file name. With an error among the findings there are no
// weighings: half a record would mislead.
func ReadWeights(name string, b []byte) ([]Weighing, []finding.Finding) {
	column := "weight"
	if table.Names(b, "weight-g") {
		column = "weight-g"
	}
	t := table.Read(name, b, table.Options{Need: []string{"date", column}, Also: []string{"length-cm", "head-cm"}, MostRows: mostRows, Why: whyTable})
	var out []Weighing
	for _, rw := range t.Rows {
		text, at := t.Cell(rw, "date")
		d, ok := t.Date(text, at)
		weight, on := t.Cell(rw, column)
		grams, err := strconv.Atoi(weight)
		if err != nil || grams < LeastWeight || grams > 2*MostWeight {
			t.Say("csv-value", on, fmt.Sprintf("%q is not a weight", weight), whyTable,
				fmt.Sprintf("write whole grams from %d to %d, such as 1600, without a unit", LeastWeight, 2*MostWeight))
			continue
		}
		if !ok {
			continue
		}
		if n := len(out); n > 0 {
			switch before := out[n-1].Date; {
			case d.Equal(before):
				t.Say("csv-value", at, "this date has a weight already", "Two weights on one day give no gain a day.", "keep the one that was read with the baby bare and the scale at zero")
				continue
			case d.Before(before):
				t.Say("csv-value", at, "this date is before that of the row above", "The first row is the day of birth, and gains are counted from row to row.", "put the rows in order, the birth weight first; or mend the date")
				continue
			case d.Sub(out[0].Date).Hours() > 24*mostDays:
				t.Say("csv-value", at, fmt.Sprintf("this date is more than %d days after birth", mostDays), whyTable, "mend the year, or leave out later weights")
				continue
			}
		}
		out = append(out, Weighing{d, grams})
	}
	if t.Failed() {
		out = nil
	}
	finding.Sort(t.Findings)
	return out, t.Findings
}
