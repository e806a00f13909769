package sheet

import (
	"fmt"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/sewing"
)

// cuttingPlan lays the pieces of a number of carriers on cloth of one width, and lists
// what the group needs.
var cuttingPlan = &Sheet{
	Name:  "cutting-plan",
	About: "how to lay the pieces of some carriers on the least length of cloth, and what the group needs",
	Inputs: append([]Input{
		{Name: "count", Value: "N", About: fmt.Sprintf("plan N carriers, 1 to %d", sewing.MostCarriers), Default: "2"},
		{Name: "width", Value: "CM", About: "width of the cloth without its selvedges, CM", Default: "90"},
		{Name: "cloth", Value: "PRINT", About: "plain, or one-way when the PRINT has an up and a down", Default: "plain"},
		{Name: "price", Value: "PRICE", About: "PRICE of one metre of cloth, for what the group pays"},
	}, patternInputs()...),
	Whole:   true,
	Numbers: proofNumbers,
}

func init() { cuttingPlan.Make = makeCuttingPlan }

// order reads the inputs.
func (j *Job) order(s *Sheet) (sewing.Order, error) {
	var o sewing.Order
	n, err := strconv.Atoi(j.Value(s, "count"))
	if err != nil {
		return o, fmt.Errorf("--count is %q: it must be how many carriers to plan, a whole number such as 2", j.Value(s, "count"))
	}
	o.Count = n
	if o.Width, err = centimetres("width", j.Value(s, "width")); err != nil {
		return o, err
	}
	switch j.Value(s, "cloth") {
	case "plain":
	case "one-way":
		o.OneWay = true
	default:
		return o, fmt.Errorf("--cloth is %q: pieces are turned only on plain cloth; say plain or one-way", j.Value(s, "cloth"))
	}
	return o, nil
}

func makeCuttingPlan(j Job) (*Content, error) {
	m, err := j.measures(cuttingPlan)
	if err != nil {
		return nil, err
	}
	p, err := sewing.Draft(m)
	if err != nil {
		return nil, option(err)
	}
	o, err := j.order(cuttingPlan)
	if err != nil {
		return nil, err
	}
	pl, err := sewing.MakePlan(p, o)
	if err != nil {
		return nil, option(err)
	}
	need, err := p.NeedFor(pl, j.Value(cuttingPlan, "price"))
	if err != nil {
		return nil, option(err)
	}
	loc := j.Locale
	c := &Content{Title: loc.Label("cutting-plan"), Caution: loc.Label("sewing-caution")}
	blocks := []lesson.Block{
		bullets(sewingRules(j)...),
		Table([]float64{0.36, 0.14, 0.36, 0.14}, planTable(loc, pl), true, 1, 3),
		Text(proved(loc, pl)),
	}
	for i := range pl.Sections {
		s := &pl.Sections[i]
		if len(pl.Sections) > 1 || s.Times > 1 {
			label := "plan-section"
			if s.Times == 1 {
				label = "plan-section-once"
			}
			blocks = append(blocks, Bold(loc.Label(label, locale.With("Carriers", loc.Number(s.Carriers)),
				locale.With("Length", loc.Decimal(s.Length.Centimetres())), locale.With("Times", loc.Number(s.Times)))))
		}
		data := placeTable(loc, s)
		for _, d := range layPlan(loc, p, o, s, j.Room) {
			blocks = append(blocks, Chart(d, loc.Label("plan-alt", locale.With("Length", loc.Decimal(s.Length.Centimetres())),
				locale.With("Width", loc.Decimal(o.Width.Centimetres()))), data))
			data = nil
		}
	}
	how := loc.Label("plan-how")
	if !o.OneWay {
		how += " " + loc.Label("plan-cap-turned")
	}
	blocks = append(blocks, Text(how),
		Table([]float64{0.7, 0.3}, materialsTable(j, need), true, 1),
		Text(loc.Label("sewing-practice")))
	c.Pages = []Page{{Blocks: blocks}}
	return c, nil
}

// proved says how near the plan is to the shortest there is.
func proved(loc *locale.Locale, pl *sewing.Plan) string {
	if pl.Best() {
		return loc.Label("plan-best")
	}
	return loc.Label("plan-not-proved", locale.With("Bound", loc.Decimal(pl.Bound.Centimetres())))
}

func planTable(loc *locale.Locale, pl *sewing.Plan) [][]string {
	cloth := "plan-plain"
	if pl.Order.OneWay {
		cloth = "plan-one-way"
	}
	return [][]string{
		{loc.Label("plan-this"), "", "", ""},
		{loc.Label("plan-carriers"), loc.Number(pl.Order.Count), loc.Label("plan-length"), cm(loc, pl.Length)},
		{loc.Label("plan-width"), cm(loc, pl.Order.Width), loc.Label("plan-bound"), cm(loc, pl.Bound)},
		{loc.Label("plan-print"), loc.Label(cloth), loc.Label("plan-gap"), percent(loc, pl.Gap())},
		{loc.Label("plan-waste"), percent(loc, pl.Waste()), "", ""},
	}
}

// placeTable is the table behind the drawing: where each piece lies.
func placeTable(loc *locale.Locale, s *sewing.Section) [][]string {
	out := [][]string{{loc.Label("piece"), loc.Label("plan-along"), loc.Label("plan-across"), loc.Label("length"), loc.Label("width")}}
	for _, q := range s.Placed {
		out = append(out, []string{loc.Label(pieceLabels[q.Kind]), cm(loc, q.Y), cm(loc, q.X), cm(loc, q.Length), cm(loc, q.Width)})
	}
	return out
}

func materialsTable(j Job, need *sewing.Materials) [][]string {
	loc := j.Locale
	metres := func(l sewing.Length) string {
		return loc.Label("metres", locale.With("Amount", loc.Decimal(strconv.FormatFloat(float64((l+5*sewing.CM)/(10*sewing.CM))/10, 'f', -1, 64))))
	}
	out := [][]string{
		{loc.Label("materials-list"), ""},
		{loc.Label("materials-cloth"), metres(need.Cloth)},
		{loc.Label("materials-thread"), metres(need.Thread)},
		{loc.Label("materials-labels"), loc.Number(need.Labels)},
	}
	if load := j.Pack.Numbers["proof-load"]; load != nil {
		out = append(out, []string{loc.Label("materials-sand"), loc.Label("kilograms", locale.With("Amount", loc.Decimal(load.Amount)))})
	}
	if need.Cost != "" {
		out = append(out,
			[]string{loc.Label("materials-cost"), loc.Decimal(need.Cost)},
			[]string{loc.Label("materials-each"), loc.Decimal(need.Each)})
	}
	return out
}
