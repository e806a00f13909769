package ward

import (
	"fmt"
	"strings"
	"testing"
)

// published is Tables F-3 to F-8 of WHO, Managing newborn problems (2003), typed a
// second time, row by row, as "table: first day to seventh, ml a feed".
var published = map[string][7]int{
	"F-3": {12, 18, 22, 26, 30, 33, 35}, // 1.5-1.749 kg, no major illness, every 3 h
	"F-4": {10, 15, 18, 22, 26, 28, 30}, // 1.25-1.49 kg, no major illness, every 3 h
	"F-5": {0, 0, 3, 5, 8, 11, 15},      // under 1.25 kg, with IV fluid, every 2 h
	"F-6": {0, 6, 14, 22, 30, 35, 38},   // 1.75-2.5 kg, sick, with IV fluid, every 3 h
	"F-7": {0, 6, 13, 20, 24, 33, 35},   // 1.5-1.749 kg, sick, with IV fluid, every 3 h
	"F-8": {0, 6, 9, 16, 20, 28, 30},    // 1.25-1.49 kg, sick, with IV fluid, every 3 h
}

func TestPublishedTables(t *testing.T) {
	inside := map[string]struct {
		grams, hours int
		iv           bool
	}{
		"F-3": {1600, 3, false}, "F-4": {1300, 3, false}, "F-5": {1000, 2, true},
		"F-6": {2000, 3, true}, "F-7": {1600, 3, true}, "F-8": {1300, 3, true},
	}
	if len(FeedTables) != len(published) {
		t.Errorf("%d tables, want %d", len(FeedTables), len(published))
	}
	for name, days := range published {
		in := inside[name]
		for i, ml := range days {
			f, err := Published(in.grams, i+1, in.iv)
			want := Feed{Table: name, Day: i + 1, Feeds: 24 / in.hours, PerFeed: ml, PerDay: ml * 24 / in.hours, IV: in.iv}
			if err != nil || f != want {
				t.Errorf("Table %s day %d: got %+v, %v; want %+v", name, i+1, f, err, want)
			}
		}
	}
	// Table C-4, page C-22: 60, 80, 100, 120, 140, 150 and, from day 7, 160 or more ml a kg.
	for i, perKg := range []int{60, 80, 100, 120, 140, 150, 160, 160, 160} {
		f, err := Published(3000, i+1, false)
		want := Feed{Table: "C-4", Day: i + 1, PerKg: perKg, PerDay: 3 * perKg, OrMore: i+1 >= 7}
		if err != nil || f != want {
			t.Errorf("Table C-4 day %d: got %+v, %v; want %+v", i+1, f, err, want)
		}
	}
}

// Worked by hand from the tables; 180 ml a kg is page F-30's, 150 an example.
func TestWorkedExamples(t *testing.T) {
	f, err := Published(1600, 3, false) // Table F-3: 22 ml x 8 = 176 ml, which is 110 ml a kg
	if err != nil || f.Table != "F-3" || f.PerFeed != 22 || f.Feeds != 8 || f.PerDay != 176 || f.PerDay*1000/1600 != 110 {
		t.Errorf("1.6 kg on day 3: got %+v, %v", f, err)
	}
	f, err = Published(2000, 2, false) // Table C-4: 160 ml = 20 ml x 8
	if err != nil || f.Table != "C-4" || f.PerDay != 160 || f.PerFeed != 20 || f.Feeds != 8 {
		t.Errorf("2.0 kg on day 2: got %+v, %v", f, err)
	}
	for _, c := range []struct{ grams, perKg, feeds, perFeed, perDay int }{
		{1600, 180, 8, 36, 288}, {1600, 180, 12, 24, 288},
		{1600, 150, 12, 20, 240}, {1600, 150, 8, 30, 240},
		{1600, FullPerKilogram, 8, 36, 288}, {1600, MostPerKilogram, 8, 40, 320},
	} {
		if feed, day := ByKilogram(c.grams, c.perKg, c.feeds); feed != c.perFeed || day != c.perDay || PerDay(c.grams, c.perKg) != c.perDay {
			t.Errorf("%d g on %d ml a kg in %d feeds: got %d ml a feed, %d a day", c.grams, c.perKg, c.feeds, feed, day)
		}
	}
}

// What stands between the published bands is covered by none of them.
func TestBandEdges(t *testing.T) {
	for _, c := range []struct {
		grams int
		iv    bool
		table string // empty: refused
	}{
		{1249, false, ""}, {1250, false, "F-4"}, {1490, false, "F-4"},
		{1491, false, ""}, {1499, false, ""}, // published to 1.49 and from 1.5 kg
		{1500, false, "F-3"}, {1749, false, "F-3"}, {1750, false, "C-4"}, {2500, false, "C-4"}, {2501, false, "C-4"},
		{400, true, "F-5"}, {1249, true, "F-5"}, {1250, true, "F-8"}, {1490, true, "F-8"}, {1491, true, ""}, {1499, true, ""},
		{1500, true, "F-7"}, {1749, true, "F-7"}, {1750, true, "F-6"}, {2500, true, "F-6"}, {2501, true, ""},
		{399, true, ""}, {0, false, ""}, {-1600, false, ""}, {6001, false, ""}, {16000, false, ""},
	} {
		f, err := Published(c.grams, 3, c.iv)
		if f.Table != c.table || (err != nil) != (c.table == "") {
			t.Errorf("%d g, fluid %v: got table %q, %v; want %q", c.grams, c.iv, f.Table, err, c.table)
		}
	}
	for day, ok := range map[int]bool{-1: false, 0: false, 1: true, 7: true, 8: false, 9999: false} {
		if _, err := Published(1600, day, false); (err == nil) != ok {
			t.Errorf("day %d: %v", day, err)
		}
	}
	if _, err := Published(1100, 3, false); err == nil || !strings.Contains(err.Error(), "Table F-5") {
		t.Errorf("the refusal does not name the table for babies with fluid: %v", err)
	}
}

// Laws: a day's milk is ml a feed times feeds; feeds never fall with weight nor with day.
func TestFeedLaws(t *testing.T) {
	for _, iv := range []bool{false, true} {
		for day := 1; day <= 7; day++ {
			last := map[string]int{}
			lightest := 0
			for g := LeastWeight; g <= MostWeight; g++ {
				f, err := Published(g, day, iv)
				if err != nil {
					continue
				}
				if f.Feeds > 0 && f.PerDay != f.PerFeed*f.Feeds {
					t.Fatalf("%d g day %d: %d x %d is not %d", g, day, f.PerFeed, f.Feeds, f.PerDay)
				}
				// Rounded to whole feeds up to 2.5 kg, and to a whole day above.
				row := fmt.Sprint(f.Table, f.Feeds)
				if f.PerDay < last[row] || f.Table != "C-4" && f.PerFeed < lightest && f.Feeds == 8 {
					t.Fatalf("%d g day %d: less milk than for a lighter baby", g, day)
				}
				if f.PerDay > g*MostPerKilogram/1000 && g >= 900 { // Table F-5 has no lower end
					t.Fatalf("%d g day %d: %d ml is more than 200 ml a kg", g, day, f.PerDay)
				}
				last[row] = f.PerDay
				if f.Feeds == 8 {
					lightest = f.PerFeed
				}
				if day > 1 {
					if before, _ := Published(g, day-1, iv); before.PerDay > f.PerDay {
						t.Fatalf("%d g: less milk on day %d than the day before", g, day)
					}
				}
			}
		}
	}
}

// A ward's own table is read as it is written, and no further.
func TestOwn(t *testing.T) {
	bands := []Band{{1000, 1499, 12, []int{4, 6, 8}}, {1500, 1999, 8, []int{12, 15}}}
	for _, c := range []struct{ grams, day, perFeed, perDay int }{
		{1000, 1, 4, 48}, {1499, 3, 8, 96}, {1500, 2, 15, 120}, {1999, 1, 12, 96},
		{999, 1, 0, 0}, {2000, 1, 0, 0}, {1500, 3, 0, 0}, {1000, 4, 0, 0}, {1000, 0, 0, 0},
	} {
		f, err := Own(bands, c.grams, c.day)
		if f.PerFeed != c.perFeed || f.PerDay != c.perDay || (err != nil) != (c.perDay == 0) {
			t.Errorf("%d g day %d: got %+v, %v", c.grams, c.day, f, err)
		}
	}
}
