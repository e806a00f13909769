package sheet

import (
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// looks is how many times the sheet has room for in one shift (common practice).
const looks = 6

// signTally is where one shift writes down what it looked for and saw.
var signTally = &Sheet{
	Name:    "sign-tally",
	About:   "the warning signs of the lesson, to look for at set times in one shift",
	Whole:   true,
	Numbers: []string{"normal-temperature", "normal-breathing"},
	Make:    makeTally,
}

func makeTally(j Job) (*Content, error) {
	w := voice{j.Locale, j.Pack}
	return &Content{Title: w.label("sign-tally"), Pages: []Page{{Apart: true, Blocks: []lesson.Block{
		Bold(w.label("for-staff")),
		Form(lesson.Field{Label: w.label("bed"), Share: 0.4}, lesson.Field{Label: w.label("date"), Share: 0.25}, lesson.Field{Label: w.label("shift"), Share: 0.35}),
		tallyTable(w),
	}}}}, nil
}

// tallyTable is a table of one shift: first what is measured, then the signs of the
// pack's longest list of warning signs in the lesson's own words, so that the two
// cannot disagree.
func tallyTable(w voice) lesson.Block {
	var signs []lesson.Item
	for _, l := range w.lessons() {
		if p := l.Part(lesson.WarningSigns); p != nil {
			var here []lesson.Item
			for _, b := range p.Blocks {
				here = append(here, b.Items...)
			}
			if len(here) > len(signs) {
				signs = here
			}
		}
	}
	t := grid{caption: w.label("tally-how"), head: []string{w.label("sign")}, shares: []float64{0.58}, row: 8.5}
	for i := range looks {
		t.head = append(t.head, w.loc.Number(i+1))
		t.shares = append(t.shares, 0.42/looks)
	}
	row := func(first []lesson.Inline) {
		t.rows = append(t.rows, append([][]lesson.Inline{first}, make([][]lesson.Inline, looks)...))
	}
	row(bold(w.label("time")))
	for _, m := range []struct{ label, number string }{{"temperature-celsius", "normal-temperature"}, {"breaths-minute", "normal-breathing"}} {
		if n := w.pack.Numbers[m.number]; n != nil {
			row(toMeasure(w, w.label(m.label), n))
		}
	}
	for _, it := range signs {
		row(signOnly(it))
	}
	return t.block()
}

// toMeasure is what to measure, what is normal and who says so.
func toMeasure(w voice, label string, n *pack.Number) []lesson.Inline {
	out := bold(label)
	out = append(out, words(w.comma()+w.label("normal-range", locale.With("Range", w.amount(n)))+" ")...)
	return bracketed(out, w.cite(n))
}

// signOnly is a sign without what to do about it.
func signOnly(it lesson.Item) []lesson.Inline {
	sign, do := lesson.SplitSign(it.Blocks)
	if sign == nil {
		for _, b := range do {
			if b.Kind == lesson.Paragraph {
				return b.Inlines
			}
		}
		return nil
	}
	out := append([]lesson.Inline{}, sign...)
	last := &out[len(out)-1]
	last.Text = strings.TrimSuffix(last.Text, ":")
	return out
}
