package sheet

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/ward"
)

// mnp is the source of the published tables in the starter pack's sources.yaml:
// WHO, Managing newborn problems (2003).
const mnp = "mnp-2003"

// byKilogramShown are the weights that Table C-4 is worked out for, in g.
var byKilogramShown = []int{1750, 2000, 2250, 2500}

// feedingTable gives milk volumes: the ward's own table or, when it has none, the
// published ones; or the line of one baby. It works nothing out that no table covers.
var feedingTable = &Sheet{
	Name:  "feeding-table",
	About: "milk by weight and day: the ward's own table, else the published ones; or one baby's line",
	Inputs: []Input{
		{Name: "weight", Value: "GRAMS", About: "print the line of one baby of a weight in GRAMS; needs --day"},
		{Name: "day", Value: "N", About: "day N of life; the day of birth is day 1"},
		{Name: "fluid", Value: "yes|no", About: "yes|no: the baby has intravenous fluid, too (for staff alone)", Default: "no"},
	},
	Whole:   true,
	Sources: []string{mnp},
}

func init() { feedingTable.Make = makeFeeding } // it reads its own list of inputs

func makeFeeding(j Job) (*Content, error) {
	w := voice{j.Locale, j.Pack}
	c := &Content{Title: w.label("feeding-table")}
	weight, day := j.Value(feedingTable, "weight"), j.Value(feedingTable, "day")
	if weight == "" && day == "" {
		c.Pages = []Page{{Blocks: append([]lesson.Block{Bold(w.label("for-staff"))}, feedingTables(w)...)}}
		if w.pack.Facility.Feeding == nil {
			c.Pages = append(c.Pages, Page{Title: w.label("feeds-fluid"), Apart: true,
				Blocks: []lesson.Block{Bold(w.label("for-staff")), Text(w.label("day-of-birth", w.with("Day", 1))), bandTable(w, "feeds-fluid", true), Text(w.label("feeds-between"))}})
		}
		return c, nil
	}
	grams, err := whole("weight", weight, "grams, such as 1600")
	if err != nil {
		return nil, err
	}
	n, err := whole("day", day, "days of life, such as 3; the day of birth is day 1")
	if err != nil {
		return nil, err
	}
	fluid := j.Value(feedingTable, "fluid")
	if fluid != "yes" && fluid != "no" {
		return nil, fmt.Errorf("--fluid is %q; write yes or no", fluid)
	}
	blocks, err := oneFeed(w, grams, n, fluid == "yes")
	c.Pages = []Page{{Blocks: append([]lesson.Block{Bold(w.label("for-staff"))}, blocks...)}}
	return c, err
}

// whole reads an input that is a whole number.
func whole(name, value, unit string) (int, error) {
	n, err := strconv.Atoi(value)
	if err != nil {
		return 0, fmt.Errorf("--%s is %q; give whole %s", name, value, unit)
	}
	return n, nil
}

// feedingTables are the ward's own table or, when it has none, the published ones of
// babies without intravenous fluid.
func feedingTables(w voice) []lesson.Block {
	out := []lesson.Block{Text(w.label("day-of-birth", w.with("Day", 1)))}
	if own := w.pack.Facility.Feeding; own != nil {
		t := grid{caption: ownName(w)}
		days := 0
		for _, b := range own.Bands {
			days = max(days, len(b.PerFeed))
		}
		for _, b := range sorted(own.Bands) {
			t.rows = append(t.rows, feedRows(w, b, days, words(w.pack.Facility.Name.In(w.loc.Tag, w.pack.Source)))...)
		}
		feedHead(w, &t, days)
		return append(out, t.block(), Text(w.label("feeds-between")))
	}
	out = append(out, bandTable(w, "feeds-well", false), kilogramTable(w), Text(w.label("plus-means")))
	after := Text(w.label("feeds-after", w.with("Day", ward.PerKilogramOpen), w.with("Step", ward.StepPerKilogram), w.with("Full", ward.FullPerKilogram),
		w.with("Most", ward.MostPerKilogram), w.with("Gain", ward.StepGain), w.with("Days", ward.StepDays)) + " ")
	after.Inlines = bracketed(after.Inlines, published(w, "F-30"))
	return append(out, after, Text(w.label("feeds-between")))
}

// oneFeed is the line of one baby: what a table gives it on a day.
func oneFeed(w voice, grams, day int, fluid bool) ([]lesson.Block, error) {
	find := func() (ward.Feed, error) { return ward.Published(grams, day, fluid) }
	if own := w.pack.Facility.Feeding; own != nil {
		find = func() (ward.Feed, error) { return ward.Own(own.Bands, grams, day) }
		if fluid {
			return nil, errors.New("the ward's own table says nothing of babies with intravenous fluid; a trained health worker decides")
		}
	}
	f, err := find()
	if err != nil {
		return nil, err
	}
	var src []lesson.Inline
	if f.Table != "" {
		src = published(w, f.Table)
	} else {
		src = words(ownName(w))
	}
	t := grid{
		caption: w.label("feeding-table"),
		head:    []string{w.label("weight"), w.label("day"), w.label("feeds-a-day"), w.label("ml-feed"), w.label("ml-day"), w.label("source")},
		shares:  []float64{0.16, 0.1, 0.16, 0.16, 0.2, 0.22},
	}
	row := [][]lesson.Inline{words(w.label("grams", w.with("Weight", grams))), words(w.loc.Number(day)), words("–"), words("–"), words(w.orMore(f.PerDay, f.OrMore)), src}
	if f.Feeds > 0 {
		row[2], row[3] = words(w.loc.Number(f.Feeds)), words(w.orMore(f.PerFeed, f.OrMore))
	}
	t.rows = append(t.rows, row)
	out := []lesson.Block{t.block(), Text(w.label("day-of-birth", w.with("Day", 1)))}
	if f.IV {
		out = append([]lesson.Block{Bold(w.label("feeds-fluid"))}, out...)
	}
	return out, nil
}

func ownName(w voice) string {
	return w.label("feeds-own", locale.With("Ward", w.pack.Facility.Name.In(w.loc.Tag, w.pack.Source)),
		locale.With("Date", w.loc.Date(w.pack.Facility.Feeding.Dated.Time)))
}

// published cites a table or a page of the book that the published tables are in.
func published(w voice, place string) []lesson.Inline {
	if w.pack.Sources[mnp] == nil {
		return words(w.book() + w.comma() + w.ltr(place))
	}
	return w.from(mnp, place)
}

// book names that book.
func (w voice) book() string {
	if w.pack.Sources[mnp] == nil {
		return w.ltr("WHO, " + w.loc.Number(2003))
	}
	return w.called(mnp)
}

// table names a table of the book in a column whose head or caption names the book.
func (w voice) table(name string) []lesson.Inline {
	if w.pack.Sources[mnp] == nil {
		return words(w.ltr(name))
	}
	return []lesson.Inline{{Kind: lesson.Link, Scheme: "source", Target: mnp, Children: words(w.ltr(name))}}
}

// bandTable sets the published tables for babies with or without fluid.
func bandTable(w voice, caption string, iv bool) lesson.Block {
	t := grid{caption: w.label(caption) + " (" + w.book() + ")"}
	var of []ward.Band
	name := map[int]string{}
	for _, f := range ward.FeedTables {
		if f.IV == iv {
			of = append(of, f.Band)
			name[f.From] = f.Name
		}
	}
	days := len(of[0].PerFeed)
	for _, b := range sorted(of) {
		t.rows = append(t.rows, feedRows(w, b, days, w.table(name[b.From]))...)
	}
	feedHead(w, &t, days)
	return t.block()
}

// sorted puts the lightest babies first.
func sorted(bs []ward.Band) []ward.Band {
	return slices.SortedFunc(slices.Values(bs), func(a, b ward.Band) int { return cmp.Compare(a.From, b.From) })
}

// feedHead gives a table of volumes its head and its shares.
func feedHead(w voice, t *grid, days int) {
	t.head = []string{w.label("weight"), w.label("feeds-a-day"), w.label("amount")}
	t.shares = []float64{0.18, 0.1, 0.13}
	for d := 1; d <= days; d++ {
		t.head = append(t.head, w.label("day-number", w.with("Day", d)))
		t.shares = append(t.shares, 0.48/float64(days))
	}
	t.head, t.shares = append(t.head, w.label("source")), append(t.shares, 0.11)
}

// feedRows are the two rows of a band: ml a feed, and what that comes to in a day.
func feedRows(w voice, b ward.Band, days int, src []lesson.Inline) [][][]lesson.Inline {
	weight := w.label("grams-under", w.with("Weight", b.To+1))
	if b.From > 0 {
		weight = w.label("grams-range", w.with("Low", b.From), w.with("High", b.To))
	}
	feeds := w.loc.Number(b.Feeds)
	perFeed := [][]lesson.Inline{words(weight), words(feeds), words(w.label("ml-feed"))}
	perDay := [][]lesson.Inline{words(weight), words(feeds), words(w.label("ml-day"))}
	for d := 1; d <= days; d++ {
		if d > len(b.PerFeed) {
			perFeed, perDay = append(perFeed, words("–")), append(perDay, words("–"))
			continue
		}
		perFeed = append(perFeed, bold(w.loc.Number(b.PerFeed[d-1])))
		perDay = append(perDay, words(w.loc.Number(b.PerDay(d))))
	}
	return [][][]lesson.Inline{append(perFeed, src), append(perDay, src)}
}

// kilogramTable sets Table C-4 as published, and what it comes to for some weights of
// the babies that page F-26 sends to it.
func kilogramTable(w voice) lesson.Block {
	days := len(ward.PerKilogram)
	t := grid{caption: w.label("feeds-well") + w.comma() + w.label("grams-range", w.with("Low", ward.ByKilogramFrom), w.with("High", ward.ByKilogramTo)) + " (" + w.book() + ")"}
	feedHead(w, &t, days)
	t.head[2+ward.PerKilogramOpen] = w.label("day-number", locale.With("Day", w.plus(ward.PerKilogramOpen, true)))
	row := [][]lesson.Inline{words(w.label("grams-range", w.with("Low", ward.ByKilogramFrom), w.with("High", ward.ByKilogramTo))),
		words(w.loc.Number(ward.ByKilogramFeeds)), words(w.label("ml-kg-day"))}
	for d, ml := range ward.PerKilogram {
		row = append(row, bold(w.plus(ml, d+1 >= ward.PerKilogramOpen)))
	}
	t.rows = append(t.rows, append(row, w.table("C-4, F-26")))
	for _, g := range byKilogramShown {
		weight, feeds := words(w.label("grams", w.with("Weight", g))), words(w.loc.Number(ward.ByKilogramFeeds))
		perFeed, perDay := [][]lesson.Inline{weight, feeds, words(w.label("ml-feed"))}, [][]lesson.Inline{weight, feeds, words(w.label("ml-day"))}
		for d, ml := range ward.PerKilogram {
			feed, day := ward.ByKilogram(g, ml, ward.ByKilogramFeeds)
			open := d+1 >= ward.PerKilogramOpen
			perFeed, perDay = append(perFeed, bold(w.plus(feed, open))), append(perDay, words(w.plus(day, open)))
		}
		out := words(w.label("worked-out", locale.With("Name", w.ltr("C-4"))))
		t.rows = append(t.rows, append(perFeed, out), append(perDay, out))
	}
	return t.block()
}
