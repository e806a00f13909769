package ward

import (
	"fmt"
	"math/rand"
	"strings"
	"testing"
	"time"
)

// The worked case: 06:10-08:40 is 2:30, 10:00-13:15 is 3:15, 22:00-05:30 is 2:00
// today and 5:30 tomorrow. Today is 7:45, below 8 hours; unsplit it would read 13:15.
func TestWorkedHours(t *testing.T) {
	for name, csv := range map[string]string{
		"date column": "date,start,end\n2026-11-20,06:10,08:40\n2026-11-20,10:00,13:15\n2026-11-20,22:00,2026-11-21 05:30\n",
		"dated times": "\ufeffstart,end\r\n2026-11-20T22:00,2026-11-21T05:30\r\n2026-11-20 06:10,2026-11-20 08:40\r\n\"2026-11-20 10:00\",2026-11-20 13:15\r\n",
		"two rows":    "Date,Start,End,giver\n2026-11-20,06:10,08:40,mother\n2026-11-20,10:00,13:15,father\n2026-11-20,22:00,24:00,mother\n2026-11-21,00:00,05:30,mother\n",
	} {
		ss, fs := ReadSessions("log.csv", []byte(csv))
		if len(fs) > 0 {
			t.Errorf("%s: %v", name, fs)
		}
		days := Days(ss)
		if len(days) != 2 || days[0].Minutes != 7*60+45 || days[1].Minutes != 5*60+30 || days[0].Sessions != 3 || days[1].Sessions != 1 {
			t.Errorf("%s: got %+v", name, days)
		}
		if days[0].Minutes >= 8*60 {
			t.Errorf("%s: the day is not below 8 hours", name)
		}
	}
}

func TestSessionFindings(t *testing.T) {
	for _, c := range []struct{ name, csv, want string }{
		{"overlap", "date,start,end\n2026-11-20,06:10,08:40\n2026-11-20,08:39,09:00\n", "3:12 csv-overlap begins before another"},
		{"same twice", "date,start,end\n2026-11-20,06:10,08:40\n2026-11-20,06:10,08:40\n", "3:12 csv-overlap begins before"},
		{"inside an earlier one", "date,start,end\n2026-11-20,06:00,12:00\n2026-11-20,13:00,14:00\n2026-11-20,09:00,10:00\n", "4:12 csv-overlap begins before"},
		{"over midnight", "start,end\n2026-11-20 22:00,2026-11-21 05:30\n2026-11-21 05:00,2026-11-21 06:00\n", "3:1 csv-overlap begins before"},
		{"no length", "date,start,end\n2026-11-20,06:10,06:10\n", "2:18 csv-value ends when it starts"},
		{"end first", "date,start,end\n2026-11-20,22:00,05:30\n", "2:18 csv-value ends before it starts"},
		{"longer than a day", "date,start,end\n2026-11-20,22:00,2026-12-21 05:30\n", "2:18 csv-value longer than 24"},
		{"25 o'clock", "date,start,end\n2026-11-20,25:00,06:00\n", `2:12 csv-value "25:00" is not a time`},
		{"start at 24:00", "date,start,end\n2026-11-20,24:00,2026-11-21 02:00\n", "2:12 csv-value another date"},
		{"one digit", "date,start,end\n2026-11-20,6:10,08:40\n", `2:12 csv-value "6:10"`},
		{"other digits", "date,start,end\n2026-11-20,٠٦:١٠,08:40\n", `2:12 csv-value is not a time`},
		{"no such day", "date,start,end\n2026-02-30,06:10,08:40\n", `2:1 csv-value "2026-02-30" is not a date`},
		{"day first", "date,start,end\n20/11/2026,06:10,08:40\n", "2:1 csv-value is not a date"},
		{"no date", "start,end\n06:10,2026-11-20 08:40\n", `2:1 csv-value has no date`},
		{"cell missing", "date,start,end\n2026-11-20,06:10\n", `2:1 csv-value is not a time`},
		{"cell too many", "date,start,end\n2026-11-20,06:10,08:40,x\n", "2:24 csv-syntax under no column"},
		{"column missing", "date,start\n2026-11-20,06:10\n", "1:1 csv-column no column end"},
		{"column twice", "date,start,end,end\n2026-11-20,06:10,08:40,09:00\n", "1:16 csv-column twice"},
		{"column unknown", "date,start,end,weather\n2026-11-20,06:10,08:40,x\n", "1:16 csv-column is not used"},
		{"column misspelt", "date,start,end,gver\n2026-11-20,06:10,08:40,x\n", "1:16 csv-column is not used"},
		{"semicolons", "date;start;end\n2026-11-20;06:10;08:40\n", "1:1 csv-column not parted by commas"},
		{"quote", "date,start,end\n2026-11-20,\"06:10,08:40\n", "csv-syntax well-formed"},
		{"empty", "", "1:1 csv-syntax empty"},
		{"head alone", "date,start,end\n", "1:1 csv-syntax no row"},
		{"not UTF-8", "date,start,end\n2026-11-20,06:10,08:4\xff\n", "2:22 csv-syntax 0xFF"},
		{"two years", "date,start,end\n2024-11-20,06:10,08:40\n2026-11-20,06:10,08:40\n", "3:12 csv-value more than 400 days"},
	} {
		ss, fs := ReadSessions("log.csv", []byte(c.csv))
		if len(fs) != 1 {
			t.Errorf("%s: %d findings: %v", c.name, len(fs), fs)
			continue
		}
		f := fs[0]
		line, column := f.Place.File.Position(f.Place.Span.Start)
		got := fmt.Sprintf("%d:%d %s %s", line, column, f.Rule, f.What)
		place, words, _ := strings.Cut(c.want, " ")
		if !strings.Contains(place, ":") {
			place, words = "", c.want
		}
		rule, what, _ := strings.Cut(words, " ")
		if !strings.HasPrefix(got, place) || f.Rule != rule || !strings.Contains(f.What, what) {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
		if (ss == nil) != (f.Level > 0 && c.name != "column unknown") {
			t.Errorf("%s: sessions %v beside %v", c.name, ss, f.Level)
		}
	}
}

// Laws: no day has more than 24 hours, the days follow each other, and their minutes
// add up to those of the sessions.
func TestDaysLaws(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 300 {
		at := time.Date(2026, 2, 27, 0, 0, 0, 0, time.UTC)
		var ss []Session
		sum := 0
		for range r.Intn(40) {
			at = at.Add(time.Duration(r.Intn(900)) * time.Minute)
			s := Session{at, at.Add(time.Duration(1+r.Intn(1440)) * time.Minute)}
			sum += int(s.End.Sub(s.Start).Minutes())
			at = s.End
			ss = append(ss, s)
		}
		for i, d := range Days(ss) {
			sum -= d.Minutes
			if d.Minutes > 24*60 || i > 0 && !d.Date.Equal(Days(ss)[i-1].Date.AddDate(0, 0, 1)) {
				t.Fatalf("day %d: %+v", i, d)
			}
		}
		if sum != 0 {
			t.Fatalf("%d minutes lost", sum)
		}
	}
}
