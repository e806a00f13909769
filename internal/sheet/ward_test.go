package sheet

import (
	"os"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
	"wardleaf/internal/ward"
)

// starter is the starter pack and one of its languages.
func starter(t *testing.T, lang string) (*pack.Pack, *locale.Locale) {
	t.Helper()
	p, found, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil || len(found) > 0 {
		t.Fatal(err, found)
	}
	c, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	loc, err := c.Locale(lang, p.Digits[lang])
	if err != nil {
		t.Fatal(err)
	}
	return p, loc
}

// lines is a sheet as text: a line a paragraph or row, cells parted by bars.
func lines(c *Content) string {
	var out strings.Builder
	for _, pg := range c.Pages {
		for _, bl := range pg.Blocks {
			if bl.Caption != "" {
				out.WriteString("# " + bl.Caption + "\n")
			}
			if bl.Kind == lesson.Paragraph {
				out.WriteString(lesson.Plain(bl.Inlines) + "\n")
			}
			for _, it := range bl.Items {
				for _, b := range it.Blocks {
					out.WriteString("- " + lesson.Plain(b.Inlines) + "\n")
				}
			}
			for _, r := range bl.Rows {
				var cells []string
				for _, cell := range r.Cells {
					cells = append(cells, lesson.Plain(cell))
				}
				out.WriteString(strings.Join(cells, " | ") + "\n")
			}
		}
	}
	return out.String()
}

func make1(t *testing.T, s *Sheet, p *pack.Pack, loc *locale.Locale, inputs map[string]string) (*Content, error) {
	t.Helper()
	return s.Make(Job{Locale: loc, Pack: p, Room: A4, Inputs: inputs})
}

func has(t *testing.T, got string, want ...string) {
	t.Helper()
	for _, w := range want {
		if !strings.Contains(got, w) {
			t.Errorf("%q is not in\n%s", w, got)
		}
	}
}

// Rows as WHO, Managing newborn problems (2003), publishes them; ml a day is worked out.
func TestFeedingTable(t *testing.T) {
	p, loc := starter(t, "en")
	has(t, lines(feedingTable.Blank(loc, p, A4)),
		"1250 to 1490 g | 8 | ml a feed | 10 | 15 | 18 | 22 | 26 | 28 | 30 | F-4\n",
		"1250 to 1490 g | 8 | ml a day | 80 | 120 | 144 | 176 | 208 | 224 | 240 | F-4\n",
		"1500 to 1749 g | 8 | ml a feed | 12 | 18 | 22 | 26 | 30 | 33 | 35 | F-3\n",
		"1500 to 1749 g | 8 | ml a day | 96 | 144 | 176 | 208 | 240 | 264 | 280 | F-3\n",
		"1750 to 2500 g | 8 | ml/kg a day | 60 | 80 | 100 | 120 | 140 | 150 | 160+ | C-4, F-26\n",
		"2000 g | 8 | ml a feed | 15 | 20 | 25 | 30 | 35 | 38 | 40+ | from C-4\n",
		"2000 g | 8 | ml a day | 120 | 160 | 200 | 240 | 280 | 304 | 320+ | from C-4\n",
		"under 1250 g | 12 | ml a feed | 0 | 0 | 3 | 5 | 8 | 11 | 15 | F-5\n",
		"1750 to 2500 g | 8 | ml a feed | 0 | 6 | 14 | 22 | 30 | 35 | 38 | F-6\n",
		"1500 to 1749 g | 8 | ml a feed | 0 | 6 | 13 | 20 | 24 | 33 | 35 | F-7\n",
		"1250 to 1490 g | 8 | ml a feed | 0 | 6 | 9 | 16 | 20 | 28 | 30 | F-8\n",
		"Day 1 is the day of birth.", "For trained health workers", "For staff only",
		"up to 180 ml/kg a day. If the gain is under 15 g/kg a day over 3 days: up to 200 ml/kg a day. (WHO, 2003, F-30)")

	in := lines(&Content{Pages: []Page{{Blocks: feedingTable.In(loc, p)}}})
	if strings.Contains(in, "F-5") {
		t.Error("a lesson shows the tables for babies with fluid")
	}
}

func TestOneFeed(t *testing.T) {
	p, loc := starter(t, "en")
	c, err := make1(t, feedingTable, p, loc, map[string]string{"weight": "1600", "day": "3"})
	if err != nil {
		t.Fatal(err)
	}
	has(t, lines(c), "1600 g | 3 | 8 | 22 | 176 | WHO, 2003, F-3\n")
	c, err = make1(t, feedingTable, p, loc, map[string]string{"weight": "1100", "day": "3", "fluid": "yes"})
	if err != nil {
		t.Fatal(err)
	}
	has(t, lines(c), "For staff only", "1100 g | 3 | 12 | 3 | 36 | WHO, 2003, F-5\n")
	for _, c := range []struct{ weight, day, fluid, want string }{
		{"1495", "3", "", "no published table covers 1495 g"},
		{"1100", "3", "", "Table F-5 covers this weight with it"},
		{"1600", "8", "", "ends with day 7"},
		{"1600", "", "", "--day is"}, {"", "3", "", "--weight is"}, {"1.6", "3", "", "whole grams"}, {"1600", "3", "maybe", "yes or no"},
	} {
		_, err := make1(t, feedingTable, p, loc, map[string]string{"weight": c.weight, "day": c.day, "fluid": c.fluid})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// A ward's own table takes the place of the published ones and is named as the source.
func TestOwnFeedingTable(t *testing.T) {
	p, loc := starter(t, "en")
	p.Facility.Feeding = &pack.FeedingTable{Bands: []ward.Band{{From: 1500, To: 1999, Feeds: 8, PerFeed: []int{11, 13}}, {From: 1000, To: 1499, Feeds: 12, PerFeed: []int{4, 5, 6}}}}
	got := lines(feedingTable.Blank(loc, p, A4))
	has(t, got, "1000 to 1499 g | 12 | ml a feed | 4 | 5 | 6 | Sample Newborn Ward\n", "1500 to 1999 g | 8 | ml a day | 88 | 104 | – | Sample Newborn Ward\n", "The table of Sample Newborn Ward, dated ")
	for _, published := range []string{"F-3", "C-4", "F-30", "WHO"} {
		if strings.Contains(got, published) {
			t.Errorf("%s stands beside the ward's own table", published)
		}
	}
	c, err := make1(t, feedingTable, p, loc, map[string]string{"weight": "1600", "day": "2"})
	if err != nil {
		t.Fatal(err)
	}
	has(t, lines(c), "1600 g | 2 | 8 | 13 | 104 | The table of Sample Newborn Ward")
	if _, err := make1(t, feedingTable, p, loc, map[string]string{"weight": "2100", "day": "2"}); err == nil {
		t.Error("2100 g is in no band")
	}
}

// Pages C-53, F-26 and F-30 of the same book, and common practice, by numbers.yaml.
func TestWeightRecord(t *testing.T) {
	p, loc := starter(t, "en")
	has(t, lines(weightRecord.Blank(loc, p, A4)),
		" | Born under 1.5 kg | Born at 1.5 to 2.5 kg | Source\n",
		"Early loss, at most (%) | 15 | 10 | WHO, 2003, C-53\n", "in the first (days) | 7 to 10 | 4 to 5 | WHO, 2003, C-53\n",
		"Birth weight is usually back by (day) | 14 | 14 | WHO, 2003, F-30\n",
		"Then a gain of (g a day) | 20 to 30 | 30 to 35 | WHO, 2003, C-53\n", "Then a gain of (g a week) | 150 to 200 | 200 to 250 | WHO, 2003, C-53\n",
		"at least (g/kg a day) | 15 | 15 | WHO, 2003, C-53, F-26\n",
		"(g a day) | 25 to 30 | 25 to 30 | common practice\n", "(g a month) | 900 to 1000 | 900 to 1000 | common practice\n",
		"two-point average method", "A birth weight under 2.5 kg is low. (WHO, 2003, Table C-1)")
	c, err := make1(t, weightRecord, p, loc, map[string]string{"birth-weight": "1600"})
	if err != nil {
		t.Fatal(err)
	}
	has(t, lines(c), "Below 1440 g the loss is past 10 %.", "1 to 5 | 1440 or more | WHO, 2003, C-53\n", "14 | 1600 or more | WHO, 2003, F-30\n", "21 | 1810 to 1845 | WHO, 2003, C-53\n")
	for _, birth := range []string{"2501", "399", "-5", "0", "1.6"} {
		if _, err := make1(t, weightRecord, p, loc, map[string]string{"birth-weight": birth}); err == nil {
			t.Errorf("a birth weight of %s is taken", birth)
		}
	}
	f := source.New("w.csv", []byte("date,weight\n2026-11-01,1600\n2026-11-05,1430\n2026-11-12,1490\n2026-11-16,1560\n"))
	c, err = weightRecord.Make(Job{Locale: loc, Pack: p, Room: A4, Files: map[string]*source.File{"csv": f}})
	if err != nil || len(c.Findings) > 0 {
		t.Fatal(err, c.Findings)
	}
	has(t, lines(c),
		"5 | 5 November 2026 | 1430 | −170 | −42.5 |  | 10.7 | loss past 10 %\n",           // 170/1600 is 10.625 %, rounded up
		"12 | 12 November 2026 | 1490 | 60 | 8.6 | 5.8 | 6.9 | gain under 15 g/kg a day\n", // 60/7/1.460 = 5.87
		"16 | 16 November 2026 | 1560 | 70 | 17.5 | 11.4 | 2.5 | birth weight not back by day 14 gain under 15 g/kg a day\n")
	p.Numbers = map[string]*pack.Number{}
	if _, err := make1(t, weightRecord, p, loc, map[string]string{"birth-weight": "1600"}); err == nil || !strings.Contains(err.Error(), "small-loss") {
		t.Errorf("without numbers: %v", err)
	}
}

func TestContactLog(t *testing.T) {
	p, loc := starter(t, "en")
	blank := lines(contactLog.Blank(loc, p, A4))
	has(t, blank, "Hour | Day 1 | Day 2 | Day 3 | Day 4 | Day 5 | Day 6 | Day 7\n", "00:00 | ", "23:00 | ", "In all | ",
		"at least 8 hours a day, and close to 24. (WHO and partners, 2023)")
	if n := strings.Count(blank, ":00 | "); n != 24 {
		t.Errorf("%d hours", n)
	}
	f := source.New("log.csv", []byte("date,start,end\n2026-11-20,06:10,08:40\n2026-11-20,10:00,13:15\n2026-11-20,22:00,2026-11-21 05:30\n2026-11-21,10:00,12:30\n"))
	c, err := contactLog.Make(Job{Locale: loc, Pack: p, Room: A4, Files: map[string]*source.File{"csv": f}})
	if err != nil || len(c.Findings) > 0 {
		t.Fatal(err, c.Findings)
	}
	has(t, lines(c), "1 | 20 November 2026 | 3 | 7:45 | below 8\n", "2 | 21 November 2026 | 2 | 8:00 | 8 or more\n")
}

// The rows of the tally are the signs of the lesson, all of them, in its words.
func TestSignTallyAgreesWithTheLesson(t *testing.T) {
	for _, lang := range []string{"en", "hi", "ar"} {
		p, loc := starter(t, lang)
		got := lines(signTally.Blank(loc, p, A4))
		n := 0
		for _, m := range p.Modules {
			if m.ID != "warning-signs" {
				continue
			}
			for _, b := range m.Lessons[lang].Part(lesson.WarningSigns).Blocks {
				for _, it := range b.Items {
					n++
					said := lesson.Plain(it.Blocks[0].Inlines)
					sign, _, _ := strings.Cut(said, ":")
					has(t, got, "\n"+sign+" | ")
				}
			}
		}
		if rows := strings.Count(got, "\n") - 3; n < 10 || rows != n+3 { // staff, how and head; time, temperature and breaths
			t.Errorf("%s: %d rows for %d signs", lang, rows, n)
		}
	}
}

// Digits are those of the language everywhere but in the names of tables and pages.
func TestWardDigits(t *testing.T) {
	for lang, want := range map[string][]string{
		"hi": {"१५०० से १७४९ ग्राम | ८ | हर बार, मिली | १२ | १८ | २२ | २६ | ३० | ३३ | ३५ | F-3", "१५० से २०० | २०० से २५०", "२३:०० | "},
		"ar": {"من ١٥٠٠ إلى ١٧٤٩ غ | ٨ | مل في الرضعة | ١٢ | ١٨ | ٢٢ | ٢٦ | ٣٠ | ٣٣ | ٣٥ | \u2066F-3\u2069", "من ١٥٠ إلى ٢٠٠ | من ٢٠٠ إلى ٢٥٠", "٢٣:٠٠\u2069 | "},
	} {
		p, loc := starter(t, lang)
		got := ""
		for _, s := range []*Sheet{feedingTable, weightRecord, contactLog, signTally} {
			got += lines(s.Blank(loc, p, A4))
		}
		has(t, got, want...)
		for _, name := range []string{"F-30", "F-26", "C-53", "Table C-1", "F-11", "F-12", "F-3", "F-4", "F-5", "F-6", "F-7", "F-8", "C-4"} {
			got = strings.ReplaceAll(got, name, "")
		}
		if i := strings.IndexAny(got, "0123456789"); i >= 0 {
			t.Errorf("%s: a digit of English at %.80q", lang, got[i:])
		}
	}
}

// An empty pack has blank sheets, too.
func TestWardSheetsOfAnEmptyPack(t *testing.T) {
	_, loc := starter(t, "en")
	for _, s := range []*Sheet{feedingTable, weightRecord, contactLog, signTally} {
		if c := s.Blank(loc, &pack.Pack{Source: "en"}, A4); len(c.Pages) == 0 {
			t.Errorf("%s has no page", s.Name)
		}
	}
}
