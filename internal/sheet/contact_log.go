package sheet

import (
	"fmt"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/ward"
)

// contactLog is a week of hours to shade, or the hours of each day of a log.
var contactLog = &Sheet{
	Name:  "contact-log",
	About: "hours of skin-to-skin contact: a week to shade, or the total of each day of a log",
	Inputs: []Input{
		{Name: "csv", Value: "FILE", About: "a CSV FILE of date,start,end, or of start,end with their dates; days are split at midnight", File: true},
	},
	Whole:   true,
	Numbers: []string{"hours-least", "hours-aim"},
}

func init() { contactLog.Make = makeContact } // it reads its own list of inputs

func makeContact(j Job) (*Content, error) {
	w := voice{j.Locale, j.Pack}
	c := &Content{Title: w.label("contact-log")}
	blocks := []lesson.Block{Bold(w.label("for-both")),
		Form(lesson.Field{Label: w.label("name"), Share: 0.6}, lesson.Field{Label: w.label("date"), Share: 0.4})}
	blocks = append(blocks, aim(w)...)
	file := j.Files["csv"]
	if file == nil {
		c.Pages = []Page{{Blocks: append(blocks, contactGrid(w, (j.Room.Height.Millimetres()-76)/27)), Apart: true}}
		return c, nil
	}
	ss, found := ward.ReadSessions(file.Path, file.Bytes)
	c.Findings = found
	if len(ss) == 0 {
		return c, nil
	}
	days, err := contactDays(w, ss)
	c.Pages = []Page{{Blocks: append(blocks, days...)}}
	return c, err
}

// aim says the least hours of a day and the aim, with their source.
func aim(w voice) []lesson.Block {
	least, most := w.pack.Numbers["hours-least"], w.pack.Numbers["hours-aim"]
	if least == nil || most == nil {
		return nil
	}
	b := Text(w.label("contact-aim", locale.With("Least", w.amount(least)), locale.With("Aim", w.amount(most))) + " ")
	b.Inlines = bracketed(b.Inlines, w.cite(least))
	return []lesson.Block{b}
}

// contactGrid is a week to shade: an hour a row of a height in mm, a day a column, and
// the total below.
func contactGrid(w voice, row float64) lesson.Block {
	const days = 7
	t := grid{caption: w.label("contact-how"), head: []string{w.label("hour")}, shares: []float64{0.16}, row: row}
	for d := 1; d <= days; d++ {
		t.head = append(t.head, w.label("day-number", w.with("Day", d)))
		t.shares = append(t.shares, 0.84/days)
	}
	add := func(first []lesson.Inline) {
		t.rows = append(t.rows, append([][]lesson.Inline{first}, make([][]lesson.Inline, days)...))
	}
	add(words(w.label("date")))
	for h := range 24 {
		add(words(w.ltr(w.loc.Digits(fmt.Sprintf("%02d:00", h)))))
	}
	add(bold(w.label("total")))
	return t.block()
}

// contactDays sets the hours of each day of a log against the least to aim for.
func contactDays(w voice, ss []ward.Session) ([]lesson.Block, error) {
	n := w.pack.Numbers["hours-least"]
	if n == nil {
		return nil, fmt.Errorf("numbers.yaml lacks hours-least, which the log compares with; add it with its source")
	}
	least, _ := strconv.ParseFloat(n.Amount, 64) // checked when it was read
	t := grid{
		caption: w.label("contact-log"),
		head:    []string{w.label("day"), w.label("date"), w.label("sessions"), w.label("hours"), w.label("compared")},
		shares:  []float64{0.1, 0.32, 0.16, 0.16, 0.26},
	}
	for i, d := range ward.Days(ss) {
		said := words(w.label("or-more", locale.With("Amount", w.amount(n))))
		if float64(d.Minutes) < 60*least {
			said = bold(w.label("below-least", locale.With("Least", w.amount(n))))
		}
		t.rows = append(t.rows, [][]lesson.Inline{words(w.loc.Number(i + 1)), words(w.loc.Date(d.Date)), words(w.loc.Number(d.Sessions)),
			words(w.ltr(w.loc.Digits(fmt.Sprintf("%d:%02d", d.Minutes/60, d.Minutes%60)))), said})
	}
	return []lesson.Block{t.block(), Text(w.label("contact-split"))}, nil
}
