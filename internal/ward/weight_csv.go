package ward

import (
	"fmt"
	"strconv"

	"wardleaf/internal/finding"
)

// ReadWeights reads the columns date and weight, or weight-g, in g; the first row is
// the day of birth. A file of a growth chart, which has lengths, too, may be given.
// Messages call the file name. With an error among the findings there are no
// weighings: half a record would mislead.
func ReadWeights(name string, b []byte) ([]Weighing, []finding.Finding) {
	column := "weight"
	if headHolds(b, "weight-g") {
		column = "weight-g"
	}
	t := readTable(name, b, []string{"date", column}, []string{"length-cm", "head-cm"})
	var out []Weighing
	for _, rw := range t.rows {
		text, at := t.cell(rw, "date")
		d, ok := t.date(text, at)
		weight, on := t.cell(rw, column)
		grams, err := strconv.Atoi(weight)
		if err != nil || grams < LeastWeight || grams > 2*MostWeight {
			t.say("csv-value", on, fmt.Sprintf("%q is not a weight", weight), whyTable,
				fmt.Sprintf("write whole grams from %d to %d, such as 1600, without a unit", LeastWeight, 2*MostWeight))
			continue
		}
		if !ok {
			continue
		}
		if n := len(out); n > 0 {
			switch before := out[n-1].Date; {
			case d.Equal(before):
				t.say("csv-value", at, "this date has a weight already", "Two weights on one day give no gain a day.", "keep the one that was read with the baby bare and the scale at zero")
				continue
			case d.Before(before):
				t.say("csv-value", at, "this date is before that of the row above", "The first row is the day of birth, and gains are counted from row to row.", "put the rows in order, the birth weight first; or mend the date")
				continue
			case d.Sub(out[0].Date).Hours() > 24*maxDays:
				t.say("csv-value", at, fmt.Sprintf("this date is more than %d days after birth", maxDays), whyTable, "mend the year, or leave out later weights")
				continue
			}
		}
		out = append(out, Weighing{d, grams})
	}
	if t.failed() {
		out = nil
	}
	finding.Sort(t.findings)
	return out, t.findings
}
