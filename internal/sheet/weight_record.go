package sheet

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/ward"
)

// weightRecord is a form to fill in; with a birth weight, what to expect of it; with
// weights, what they show.
var weightRecord = &Sheet{
	Name:  "weight-record",
	About: "weights and gains: a form, what to expect of a birth weight, or a record with its gains and what stands out",
	Inputs: []Input{
		{Name: "birth-weight", Value: "GRAMS", About: "print what to expect of a birth weight in GRAMS, and where the loss is past the limit"},
		{Name: "csv", Value: "FILE", About: "a CSV FILE of date,weight in grams; the first row is the day of birth", File: true},
	},
	Whole: true,
	Numbers: []string{"very-small-band", "small-band", "very-small-loss", "small-loss", "very-small-loss-days", "small-loss-days",
		"very-small-gain", "small-gain", "very-small-week-gain", "small-week-gain", "usual-gain", "usual-month-gain",
		"least-gain", "least-gain-days", "regain-age", "small-at-birth"},
}

func init() { weightRecord.Make = makeWeights } // it reads its own list of inputs

func makeWeights(j Job) (*Content, error) {
	w := voice{j.Locale, j.Pack}
	c := &Content{Title: w.label("weight-record")}
	blocks := []lesson.Block{Bold(w.label("for-both")), babyLine(w, "", 0)}
	birth := j.Value(weightRecord, "birth-weight")
	file := j.Files["csv"]
	grams := 0
	if birth != "" {
		var err error
		if grams, err = whole("birth-weight", birth, "grams, such as 1600"); err != nil {
			return nil, err
		}
	}
	if file != nil {
		ws, found := ward.ReadWeights(file.Path, file.Bytes)
		c.Findings = found
		if len(ws) == 0 {
			return c, nil
		}
		if birth != "" && grams != ws[0].Grams {
			return nil, fmt.Errorf("--birth-weight is %d g, and the first row of %s is %d g; the first row is the birth weight: leave the option out, or mend the row", grams, file.Path, ws[0].Grams)
		}
		blocks[1] = babyLine(w, w.loc.Date(ws[0].Date), ws[0].Grams)
		read, err := weightReadings(w, ws)
		if err != nil {
			return nil, err
		}
		c.Pages = []Page{{Blocks: append(append(append(blocks, read...), weightNotes(w)...), expectTable(w))}}
		return c, nil
	}
	if birth != "" {
		expected, err := expectedWeights(w, grams)
		if err != nil {
			return nil, err
		}
		blocks[1] = babyLine(w, "", grams)
		blocks = append(append(blocks, expected...), weightNotes(w)...)
		c.Pages = []Page{{Blocks: append(blocks, weightForm(w))}}
		return c, nil
	}
	c.Pages = []Page{
		{Blocks: append(blocks, weightForm(w)), Apart: true},
		{Title: w.label("weight-record") + ": " + w.label("expect"), Blocks: append([]lesson.Block{expectTable(w)}, weightNotes(w)...)},
	}
	return c, nil
}

// formRow is the height of a row to write in, in mm.
const formRow = 9

// babyLine says whose record it is, as far as it is known.
func babyLine(w voice, born string, birth int) lesson.Block {
	weight := ""
	if birth > 0 {
		weight = w.label("grams", w.with("Weight", birth))
	}
	return Form(lesson.Field{Label: w.label("name"), Share: 0.4}, lesson.Field{Label: w.label("born-on"), Value: born, Share: 0.3},
		lesson.Field{Label: w.label("birth-weight"), Value: weight, Share: 0.3})
}

// expectedUntil is the last day of life of the expected band (common practice: six weeks).
const expectedUntil = 42

// guide takes what weights are compared with out of the pack's numbers.
func guide(w voice) (*ward.Guide, error) {
	var lacking []string
	top := func(id string) float64 {
		if w.pack.Numbers[id] == nil {
			lacking = append(lacking, id)
		}
		return Amount(w.pack, id)
	}
	low := func(id string) float64 {
		if w.pack.Numbers[id] == nil {
			return 0 // top has said so
		}
		v, _ := strconv.ParseFloat(w.pack.Numbers[id].Low, 64)
		return v
	}
	grams := func(kg float64) int { return int(math.Round(1000 * kg)) }
	g := &ward.Guide{
		Groups: []ward.Group{
			{To: grams(top("very-small-band")) - 1, LossPercent: int(top("very-small-loss")), LossDays: int(top("very-small-loss-days")),
				GainLow: int(low("very-small-gain")), GainHigh: int(top("very-small-gain"))},
			{From: grams(low("small-band")), To: grams(top("small-band")), LossPercent: int(top("small-loss")), LossDays: int(top("small-loss-days")),
				GainLow: int(low("small-gain")), GainHigh: int(top("small-gain"))},
		},
		RegainDay: int(top("regain-age")), LeastGain: int(top("least-gain")), OverDays: int(top("least-gain-days")),
	}
	if len(lacking) > 0 {
		return nil, fmt.Errorf("numbers.yaml lacks %v, which the weight record compares with; add them with their source", lacking)
	}
	return g, nil
}

// expectTable says what the pack's numbers expect of the two groups of birth weight.
// A row whose numbers the pack lacks is left out.
func expectTable(w voice) lesson.Block {
	t := grid{caption: w.label("expect"), shares: []float64{0.34, 0.19, 0.19, 0.28}}
	born := ""
	if n := w.pack.Numbers["small-band"]; n != nil {
		born = w.label("born-range", locale.With("Low", w.loc.Decimal(n.Low)), locale.With("High", w.loc.Decimal(n.High)))
	}
	bornUnder := ""
	if n := w.pack.Numbers["very-small-band"]; n != nil {
		bornUnder = w.label("born-under", locale.With("Weight", w.loc.Decimal(n.Amount)))
	}
	t.head = []string{"", bornUnder, born, w.label("source")}
	days := locale.With("Days", "")
	if n := w.pack.Numbers["least-gain-days"]; n != nil {
		days = locale.With("Days", w.amount(n))
	}
	for _, r := range []struct {
		label            string
		verySmall, small string
	}{
		{w.label("expect-loss"), "very-small-loss", "small-loss"},
		{w.label("expect-loss-days"), "very-small-loss-days", "small-loss-days"},
		{w.label("expect-regain"), "regain-age", "regain-age"},
		{w.label("expect-gain"), "very-small-gain", "small-gain"},
		{w.label("expect-week"), "very-small-week-gain", "small-week-gain"},
		{w.label("expect-least", days), "least-gain", "least-gain"},
		{w.label("expect-usual"), "usual-gain", "usual-gain"},
		{w.label("expect-month"), "usual-month-gain", "usual-month-gain"},
	} {
		a, b := w.pack.Numbers[r.verySmall], w.pack.Numbers[r.small]
		if a != nil && b != nil {
			t.rows = append(t.rows, [][]lesson.Inline{words(r.label), words(w.amount(a)), words(w.amount(b)), w.cite(b)})
		}
	}
	return t.block()
}

// weightNotes say how the gain is counted, and what birth weight is low.
func weightNotes(w voice) []lesson.Block {
	out := []lesson.Block{Text(w.label("gain-method"))}
	if n := w.pack.Numbers["small-at-birth"]; n != nil {
		low := Text(w.label("born-small", locale.With("Weight", w.loc.Decimal(n.Amount))) + " ")
		low.Inlines = bracketed(low.Inlines, w.cite(n))
		out = append(out, low)
	}
	return out
}

// weightForm is the table to write on.
func weightForm(w voice) lesson.Block {
	t := grid{
		caption: w.label("day-of-birth", w.with("Day", 1)), row: formRow,
		head:   []string{w.label("day"), w.label("date"), w.label("weight-grams"), w.label("gain-grams"), w.label("gain-day"), w.label("remarks"), w.label("signed")},
		shares: []float64{0.08, 0.16, 0.14, 0.12, 0.14, 0.22, 0.14},
	}
	t.rows = [][][]lesson.Inline{make([][]lesson.Inline, len(t.head))}
	b := t.block()
	b.Fill = true
	return b
}

// expectedWeights is the band of one birth weight, and where its loss passes the limit.
func expectedWeights(w voice, birth int) ([]lesson.Block, error) {
	g, err := guide(w)
	if err != nil {
		return nil, err
	}
	gr := g.Group(birth)
	if gr == nil {
		return nil, fmt.Errorf("the weight guide covers birth weights up to %d g, not %d g; a trained health worker decides what to expect", g.Groups[1].To, birth)
	}
	if birth < ward.LeastWeight {
		return nil, fmt.Errorf("a birth weight of %d g is not one a baby in the ward has; give whole grams from %d", birth, ward.LeastWeight)
	}
	verySmall := gr == &g.Groups[0]
	prefix := map[bool]string{true: "very-small-", false: "small-"}[verySmall]
	t := grid{
		caption: w.label("expect") + w.comma() + w.label("grams", w.with("Weight", birth)),
		head:    []string{w.label("day"), w.label("expect-weight"), w.label("source")}, shares: []float64{0.2, 0.5, 0.3},
	}
	for i, e := range g.Expect(birth, expectedUntil) {
		src := w.pack.Numbers[prefix+"gain"]
		day, amount := w.loc.Number(e.Day), w.label("range", w.with("Low", e.Low), w.with("High", e.High))
		switch i {
		case 0:
			src, amount = w.pack.Numbers[prefix+"loss"], w.orMore(e.Low, true)
			day = w.label("range", w.with("Low", 1), w.with("High", e.Day))
		case 1:
			src, amount = w.pack.Numbers["regain-age"], w.orMore(e.Low, true)
		}
		t.rows = append(t.rows, [][]lesson.Inline{words(day), words(amount), w.cite(src)})
	}
	limit := lesson.Block{Kind: lesson.Paragraph, Inlines: bold(w.label("limit-below", w.with("Weight", ward.LossLimit(birth, gr.LossPercent)), w.with("Percent", gr.LossPercent)))}
	return []lesson.Block{limit, t.block()}, nil
}

// weightReadings sets a record of weights with its gains and what stands out in it.
func weightReadings(w voice, ws []ward.Weighing) ([]lesson.Block, error) {
	g, err := guide(w)
	if err != nil {
		return nil, err
	}
	if len(ws) == 0 {
		return nil, errors.New("there are no weights")
	}
	t := grid{
		caption: w.label("day-of-birth", w.with("Day", 1)),
		head: []string{w.label("day"), w.label("date"), w.label("weight-grams"), w.label("gain-grams"), w.label("gain-day"), w.label("gain-kg"),
			w.label("loss-percent"), w.label("remarks")},
		shares: []float64{0.07, 0.19, 0.1, 0.09, 0.11, 0.12, 0.11, 0.21},
	}
	for _, r := range g.Read(ws) {
		row := [][]lesson.Inline{words(w.loc.Number(r.Day)), words(w.loc.Date(r.Date)), words(w.loc.Number(r.Grams)), nil, nil, nil, words(w.tenths(r.Loss)), nil}
		if r.Since > 0 {
			row[3], row[4] = words(w.signed(r.Change)), words(w.tenths(r.PerDay))
		}
		if r.Over > 0 {
			row[5] = words(w.tenths(r.Velocity))
		}
		for i, f := range r.Flags {
			if i > 0 {
				row[7] = append(row[7], lesson.Inline{Kind: lesson.Break})
			}
			row[7] = append(row[7], bold(w.flag(g, ws[0].Grams, f))...)
		}
		t.rows = append(t.rows, row)
	}
	return []lesson.Block{t.block()}, nil
}

func (w voice) flag(g *ward.Guide, birth int, f ward.Flag) string {
	switch f {
	case ward.LossPast:
		return w.label("flag-loss", w.with("Percent", g.Group(birth).LossPercent))
	case ward.StillLosing:
		return w.label("flag-falling", w.with("Day", g.Group(birth).LossDays))
	case ward.NotRegained:
		return w.label("flag-regain", w.with("Day", g.RegainDay))
	}
	return w.label("flag-gain", w.with("Gain", g.LeastGain))
}
