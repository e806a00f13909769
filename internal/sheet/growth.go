package sheet

import (
	"fmt"
	"strconv"

	"wardleaf/internal/growth"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
)

// growthChart is one page for each measure and sex, blank or with one baby's points.
var growthChart = &Sheet{
	Name:  "growth-chart",
	About: "growth charts of small babies, from 27 to 64 weeks, blank or with one baby's measurements",
	Whole: true,
}

func init() { growthChart.Make = makeGrowth } // it reads its own list of inputs

func makeGrowth(j Job) (*Content, error) {
	loc := j.Locale
	c := &Content{Title: loc.Label("growth-chart"), Caution: loc.Label("growth-caution") + " " + loc.Label("caution-short")}
	for _, m := range growth.Measures {
		for _, s := range growth.Sexes {
			ch := newGrowthPlot(loc, m, s, j.Room)
			c.Pages = append(c.Pages, Page{
				Title: growthTitle(loc, m, s),
				Apart: m != growth.Weight,
				Blocks: []lesson.Block{
					babyForm(loc),
					Chart(ch.drawing, growthAlt(loc, m, s), growthData(loc, m, s)),
					growthSource(loc),
				},
			})
		}
	}
	return c, nil
}

// babyForm is where it is written whose chart it is.
func babyForm(loc *locale.Locale) lesson.Block {
	return Form(lesson.Field{Label: loc.Label("name"), Share: 0.4},
		lesson.Field{Label: loc.Label("born-on"), Share: 0.28},
		lesson.Field{Label: loc.Label("weeks-at-birth"), Share: 0.32})
}

var measureLabels = map[growth.Measure]string{growth.Weight: "measure-weight", growth.Length: "measure-length", growth.Head: "measure-head"}
var sexLabels = map[growth.Sex]string{growth.Girl: "girls", growth.Boy: "boys"}
var units = map[growth.Measure]string{growth.Weight: "kg", growth.Length: "cm", growth.Head: "cm"}

func growthTitle(loc *locale.Locale, m growth.Measure, s growth.Sex) string {
	return loc.Label("growth-chart") + ": " + loc.Label(measureLabels[m]) + " – " + loc.Label(sexLabels[s])
}

func growthAlt(loc *locale.Locale, m growth.Measure, s growth.Sex) string {
	return loc.Label("growth-alt", locale.With("Measure", loc.Label(measureLabels[m])), locale.With("Sex", loc.Label(sexLabels[s])),
		weeks(loc, "First", growth.FirstDay), weeks(loc, "Last", growth.LastDay))
}

// growthSource names the standard and where it is firmest: 201 babies, few of them born
// before 33 weeks (the same publication).
func growthSource(loc *locale.Locale) lesson.Block {
	return Text(loc.Label("growth-source", locale.With("Source", "\u2068"+growth.Citation+"\u2069"),
		weeks(loc, "First", growth.FirstDay), weeks(loc, "Last", growth.LastDay), weeks(loc, "Low", 33*7), weeks(loc, "High", 36*7)))
}

func weeks(loc *locale.Locale, name string, days int) locale.Var {
	return locale.With(name, loc.Number(days/7))
}

// growthData is the table behind a chart: each whole week with its centiles.
func growthData(loc *locale.Locale, m growth.Measure, s growth.Sex) [][]string {
	head := []string{loc.Label("growth-weeks")}
	for _, c := range growth.Centiles {
		head = append(head, loc.Label("centile-of", locale.With("Percent", loc.Number(c.Percent))))
	}
	out := [][]string{head}
	for d := growth.FirstDay; d <= growth.LastDay; d += 7 {
		row := []string{loc.Number(d / 7)}
		for _, c := range growth.Centiles {
			v, _ := growth.Value(m, s, d, c.Z)
			row = append(row, loc.Decimal(growthAmount(m, v))+"\u00a0"+units[m])
		}
		out = append(out, row)
	}
	return out
}

// growthAmount writes a weight in kg with two decimals, a length with one.
func growthAmount(m growth.Measure, v float64) string {
	if m == growth.Weight {
		return fmt.Sprintf("%.2f", v)
	}
	return strconv.FormatFloat(v, 'f', 1, 64)
}
