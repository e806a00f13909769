package ward

import (
	"fmt"
	"strings"
)

// A Band is one row of a feeding table: what each feed holds for babies of a weight.
type Band struct {
	From, To int   // g, both included; From is 0 when the row has no lower end
	Feeds    int   // in 24 hours
	PerFeed  []int // ml; day 1 first
}

// PerDay is the milk of a day, from 1.
func (b Band) PerDay(day int) int { return b.PerFeed[day-1] * b.Feeds }

// Holds reports whether the row is for a weight.
func (b Band) Holds(grams int) bool { return b.From <= grams && grams <= b.To }

// A FeedTable is one published table of a single row.
type FeedTable struct {
	Name string // as published
	IV   bool   // for babies who have intravenous fluid, too: a matter for staff alone
	Band
}

// FeedTables are Tables F-3 to F-8 of WHO, Managing newborn problems (2003), in ml a
// feed; every 3 hours is 8 feeds a day and every 2 hours is 12. Weights are published
// in kilograms, "1.25-1.49" and "1.5-1.749": nothing is said of 1.491 to 1.499 kg,
// and nothing is said of them here.
var FeedTables = []FeedTable{
	{"F-3", false, Band{1500, 1749, 8, []int{12, 18, 22, 26, 30, 33, 35}}},
	{"F-4", false, Band{1250, 1490, 8, []int{10, 15, 18, 22, 26, 28, 30}}},
	{"F-5", true, Band{0, 1249, 12, []int{0, 0, 3, 5, 8, 11, 15}}},
	{"F-6", true, Band{1750, 2500, 8, []int{0, 6, 14, 22, 30, 35, 38}}},
	{"F-7", true, Band{1500, 1749, 8, []int{0, 6, 13, 20, 24, 33, 35}}},
	{"F-8", true, Band{1250, 1490, 8, []int{0, 6, 9, 16, 20, 28, 30}}},
}

// PerKilogram is Table C-4 (page C-22) of the same book: all feeds and fluids in ml
// for each kg and day; day 1 first. It is for babies who are not small; page F-26
// sends babies of 1.75 to 2.5 kg without major illness to it.
var PerKilogram = []int{60, 80, 100, 120, 140, 150, 160}

// PerKilogramOpen is the day from which Table C-4 gives a lower end alone: "7+, 160+".
const PerKilogramOpen = 7

// The small babies that page F-26 sends to Table C-4, in g, and their feeds in 24
// hours (page F-25: every 3 hours).
const (
	ByKilogramFrom  = 1750
	ByKilogramTo    = 2500
	ByKilogramFeeds = 8
)

// What page F-30 says of the time after day 7 on full milk, in ml for each kg and
// day: more by a step each day up to Full; up to Most when the gain is too low.
const (
	StepPerKilogram = 20
	FullPerKilogram = 180
	MostPerKilogram = 200
	StepGain        = 15 // g for each kg and day: a gain below it is too low
	StepDays        = 3  // days that the gain is counted over
)

// Weights that a scale for babies may show; others are slips of the pen. In g.
const (
	LeastWeight = 400
	MostWeight  = 6000
)

// A Feed is what a table gives one baby on one day.
type Feed struct {
	Table   string
	Day     int
	PerKg   int // ml for each kg and day, where the table says that; else 0
	Feeds   int // in 24 hours; 0 where the table does not say
	PerFeed int // ml; 0 where the table does not say feeds
	PerDay  int // ml
	OrMore  bool
	IV      bool
}

// PerDay is the milk of a day for a baby of a weight, in ml, rounded to the nearest.
func PerDay(grams, perKg int) int { return (grams*perKg + 500) / 1000 }

// ByKilogram is what an amount for each kg and day comes to: the day's milk in whole
// ml a feed, to the nearest, and what these feeds add up to.
func ByKilogram(grams, perKg, feeds int) (perFeed, perDay int) {
	perFeed = (2*grams*perKg + 1000*feeds) / (2000 * feeds)
	return perFeed, perFeed * feeds
}

// Published finds what the published tables give a baby on a day. The error says what
// the tables do cover.
func Published(grams, day int, iv bool) (Feed, error) {
	if err := plausible(grams, day); err != nil {
		return Feed{}, err
	}
	if !iv && grams >= ByKilogramFrom {
		n := min(day, len(PerKilogram))
		f := Feed{Table: "C-4", Day: day, PerKg: PerKilogram[n-1], OrMore: day >= PerKilogramOpen}
		if grams <= ByKilogramTo {
			f.Feeds = ByKilogramFeeds
			f.PerFeed, f.PerDay = ByKilogram(grams, f.PerKg, f.Feeds)
		} else {
			f.PerDay = PerDay(grams, f.PerKg)
		}
		return f, nil
	}
	other := ""
	for _, t := range FeedTables {
		if !t.Holds(grams) {
			continue
		}
		if t.IV != iv {
			other = t.Name
			continue
		}
		if day > len(t.PerFeed) {
			return Feed{}, fmt.Errorf("Table %s ends with day %d; from then on page F-30 has a health worker raise full milk step by step: no amount is given for day %d", t.Name, len(t.PerFeed), day)
		}
		return Feed{Table: t.Name, Day: day, Feeds: t.Feeds, PerFeed: t.PerFeed[day-1], PerDay: t.PerDay(day), IV: t.IV}, nil
	}
	return Feed{}, fmt.Errorf("no published table covers %d g %s%s; they cover %s", grams, kind(iv), instead(other, iv), covered(iv))
}

// Own finds what a ward's own table gives a baby on a day.
func Own(bands []Band, grams, day int) (Feed, error) {
	if err := plausible(grams, day); err != nil {
		return Feed{}, err
	}
	var spans []string
	for _, b := range bands {
		if !b.Holds(grams) {
			spans = append(spans, fmt.Sprintf("%d to %d g", b.From, b.To))
			continue
		}
		if day > len(b.PerFeed) {
			return Feed{}, fmt.Errorf("the ward's table for %d to %d g ends with day %d: it gives no amount for day %d", b.From, b.To, len(b.PerFeed), day)
		}
		return Feed{Day: day, Feeds: b.Feeds, PerFeed: b.PerFeed[day-1], PerDay: b.PerDay(day)}, nil
	}
	return Feed{}, fmt.Errorf("the ward's table does not cover %d g; it covers %s", grams, strings.Join(spans, ", "))
}

func plausible(grams, day int) error {
	switch {
	case grams < LeastWeight || grams > MostWeight:
		return fmt.Errorf("a weight of %d g is not one a baby in the ward has; give whole grams from %d to %d", grams, LeastWeight, MostWeight)
	case day < 1:
		return fmt.Errorf("there is no day %d; the day of birth is day 1", day)
	}
	return nil
}

func kind(iv bool) string {
	if iv {
		return "with intravenous fluid"
	}
	return "without intravenous fluid"
}

func instead(table string, iv bool) string {
	switch {
	case table == "":
		return ""
	case iv:
		return fmt.Sprintf(" (Table %s covers this weight without it)", table)
	}
	return fmt.Sprintf(" (Table %s covers this weight with it, for staff alone)", table)
}

// covered lists the weights of the published tables, lightest first.
func covered(iv bool) string {
	if iv {
		return "under 1250 g, 1250 to 1490 g, 1500 to 1749 g and 1750 to 2500 g"
	}
	return "1250 to 1490 g, 1500 to 1749 g, and 1750 g or more"
}
