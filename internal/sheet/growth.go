package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/growth"
	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
)

// growthChart is one page for each measure and sex, blank or with one baby's points.
var growthChart = &Sheet{
	Name:  "growth-chart",
	About: "growth charts of small babies, from 27 to 64 weeks, blank or with one baby's measurements",
	Whole: true,
	Numbers: []string{"least-gain", "least-gain-days", "least-gain-until", "very-small-band", "small-band",
		"very-small-loss", "small-loss", "very-small-loss-days", "small-loss-days", "regain-age"},
	Inputs: []Input{
		{Name: "csv", Value: "FILE", File: true, About: "measurements of one baby: FILE with the header " + strings.Join(growth.Columns, ",") + ", dates as YYYY-MM-DD, empty cells for what was not measured"},
		{Name: "born", Value: "DATE", About: "day of birth, DATE as YYYY-MM-DD"},
		{Name: "gestation", Value: "W+D", About: "weeks and days of pregnancy at birth, W+D such as 31+4"},
		{Name: "sex", Value: "SEX", About: "SEX is girl or boy; without measurements, prints the charts of this sex alone"},
		{Name: "birth-weight", Value: "G", About: "weight at birth in grams, G such as 1500; without it, a weight on the day of birth counts"},
		{Name: "name", Value: "NAME", About: "NAME to print on the chart"},
	},
}

func init() { growthChart.Make = makeGrowth } // it reads its own list of inputs

// growthInputs are the options as values.
type growthInputs struct {
	baby        growth.Baby
	sexes       []growth.Sex
	born        bool
	gestation   bool
	birthWeight float64 // kg, 0 when it is not known
	name        string
}

var weeksAndDays = regexp.MustCompile(`^(\d\d)(?:\+([0-6]))?$`)

// Gestation at birth that can be: the least and the most weeks (common practice).
const leastGestation, mostGestation = 22, 44

// mostName is how many letters of a name find room on its line.
const mostName = 40

func (j *Job) growth() (growthInputs, error) {
	in := growthInputs{sexes: growth.Sexes, name: j.Value(growthChart, "name")}
	value := func(name string) string { return j.Value(growthChart, name) }
	if utf8.RuneCountInString(in.name) > mostName {
		return in, fmt.Errorf("--name: give at most %d letters; there is no room for more", mostName)
	}
	if v := value("born"); v != "" {
		t, err := time.Parse(time.DateOnly, v)
		if err != nil {
			return in, fmt.Errorf("--born %s: write a date as YYYY-MM-DD, such as 2026-11-25", v)
		}
		in.baby.Birth, in.born = t, true
	}
	if v := value("gestation"); v != "" {
		m := weeksAndDays.FindStringSubmatch(v)
		if m == nil {
			return in, fmt.Errorf("--gestation %s: write weeks and days of pregnancy at birth, such as 31+4", v)
		}
		in.baby.Weeks, _ = strconv.Atoi(m[1])
		in.baby.Days, _ = strconv.Atoi("0" + m[2])
		if in.baby.Weeks < leastGestation || in.baby.Weeks > mostGestation {
			return in, fmt.Errorf("--gestation %s: give %d to %d weeks", v, leastGestation, mostGestation)
		}
		in.gestation = true
	}
	switch v := value("sex"); v {
	case "":
	case "girl":
		in.baby.Sex, in.sexes = growth.Girl, []growth.Sex{growth.Girl}
	case "boy":
		in.baby.Sex, in.sexes = growth.Boy, []growth.Sex{growth.Boy}
	default:
		return in, fmt.Errorf("--sex %s: choose girl or boy; the standards differ", v)
	}
	if v := value("birth-weight"); v != "" {
		g, err := strconv.ParseFloat(v, 64)
		if err != nil || !(g >= 300 && g <= 6000) {
			return in, fmt.Errorf("--birth-weight %s: give grams from 300 to 6000, such as 1500", v)
		}
		in.birthWeight = g / 1000
	}
	if j.Files["csv"] != nil {
		for name, given := range map[string]bool{"born": in.born, "gestation": in.gestation} {
			if !given {
				return in, fmt.Errorf("--csv: the baby's age cannot be worked out; give --born and --gestation, and --sex (--%s is missing)", name)
			}
		}
		if len(in.sexes) > 1 {
			return in, fmt.Errorf("--csv: the standards differ for girls and boys; give --sex girl or --sex boy")
		}
	}
	return in, nil
}

func makeGrowth(j Job) (*Content, error) {
	loc := j.Locale
	in, err := j.growth()
	if err != nil {
		return nil, err
	}
	c := &Content{Title: loc.Label("growth-chart"), Caution: loc.Label("growth-caution")}
	var course []growth.Point
	limits := GrowthLimits(j.Pack)
	if f := j.Files["csv"]; f != nil {
		rows, found := growth.Read(f, in.baby)
		c.Findings = found
		if slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Level == finding.Error }) {
			return c, nil
		}
		course = growth.Course(in.baby, in.birthWeight, rows, limits)
	}
	for _, m := range growth.Measures {
		if course != nil && !measured(course, m) {
			continue
		}
		for _, s := range in.sexes {
			plot := newGrowthPlot(loc, m, s, j.Room)
			plot.points(m, course)
			c.Pages = append(c.Pages, Page{
				Title: growthTitle(loc, m, s),
				Apart: m != growth.Weight,
				Blocks: []lesson.Block{
					babyForm(loc, in),
					Chart(plot.drawing, growthAlt(loc, m, s), growthData(loc, m, s)),
					growthSource(loc),
				},
			})
		}
	}
	if course != nil {
		blocks := append([]lesson.Block{babyForm(loc, in), courseTable(loc, course, limits, in)}, GrowthNotes(loc, j.Pack)...)
		c.Pages = append(c.Pages, Page{Title: loc.Label("growth-chart") + ": " + loc.Label("growth-points"), Blocks: blocks})
	}
	return c, nil
}

func measured(course []growth.Point, m growth.Measure) bool {
	return slices.ContainsFunc(course, func(p growth.Point) bool { return p.Values[m] > 0 })
}

// babyForm is where it is written whose chart it is.
func babyForm(loc *locale.Locale, in growthInputs) lesson.Block {
	born, gestation := "", ""
	if in.born {
		born = loc.Date(in.baby.Birth)
	}
	if in.gestation {
		gestation = completed(loc, in.baby.Weeks*7+in.baby.Days)
	}
	return Form(lesson.Field{Label: loc.Label("name"), Value: in.name, Share: 0.38},
		lesson.Field{Label: loc.Label("born-on"), Value: born, Share: 0.31},
		lesson.Field{Label: loc.Label("weeks-at-birth"), Value: gestation, Share: 0.31})
}

// completed writes an age as weeks and days, "31 + 4", apart from what stands around it.
func completed(loc *locale.Locale, days int) string {
	return "\u2068" + loc.Number(days/7) + "\u00a0+\u00a0" + loc.Number(days%7) + "\u2069"
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
