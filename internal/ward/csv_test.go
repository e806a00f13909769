package ward

import (
	"fmt"
	"strings"
	"testing"

	"wardleaf/internal/finding"
)

func TestReadWeights(t *testing.T) {
	ws, fs := ReadWeights("w.csv", []byte("\ufeffdate,weight\r\n2026-11-01,1600\r\n2026-11-04,1500\r\n"))
	if len(fs) > 0 || len(ws) != 2 || ws[1].Grams != 1500 || ws[1].Date.Day() != 4 {
		t.Errorf("got %v, %v", ws, fs)
	}
	ws, fs = ReadWeights("w.csv", []byte("date,weight-g,length-cm\n2026-11-01,1600,41.5\n"))
	if len(fs) > 0 || len(ws) != 1 || ws[0].Grams != 1600 {
		t.Errorf("the file of a growth chart: got %v, %v", ws, fs)
	}
	for _, c := range []struct{ name, csv, want string }{
		{"kilograms", "date,weight\n2026-11-01,1.6\n", `2:12 csv-value "1.6" is not a weight`},
		{"unit", "date,weight\n2026-11-01,1600 g\n", "2:12 csv-value is not a weight"},
		{"a digit lost", "date,weight\n2026-11-01,160\n", "2:12 csv-value is not a weight"},
		{"twice", "date,weight\n2026-11-01,1600\n2026-11-01,1590\n", "3:1 csv-value has a weight already"},
		{"upside down", "date,weight\n2026-11-02,1600\n2026-11-01,1590\n", "3:1 csv-value before that of the row above"},
		{"a slip in the year", "date,weight\n2025-11-02,1600\n2026-12-31,1590\n", "3:1 csv-value more than 400 days"},
		{"columns", "date,wieght\n2026-11-01,1600\n", "1:1 csv-column no column weight"},
		{"too large", "date,weight\n" + strings.Repeat("2026-11-01,1600\n", 70_000), "1:1 csv-syntax larger than 1024 KiB"},
		{"too many rows", "date,weight\n" + strings.Repeat("2026-11-01,1600\n", 5001), "5002:1 csv-syntax more than 5000 rows"},
	} {
		ws, fs := ReadWeights("w.csv", []byte(c.csv))
		said := ""
		for _, f := range fs {
			line, column := f.Place.File.Position(f.Place.Span.Start)
			said += fmt.Sprintf("%d:%d %s %s\n", line, column, f.Rule, f.What)
		}
		place, what, _ := strings.Cut(c.want, " ")
		rule, what, _ := strings.Cut(what, " ")
		if !strings.Contains(said, place+" "+rule) || !strings.Contains(said, what) || ws != nil {
			t.Errorf("%s: got %.300q, want %q", c.name, said, c.want)
		}
	}
}

// FuzzWeights reads any bytes as a record of weights. Laws: no panic; findings lie
// inside the file; weighings come in order, and none beside an error.
func FuzzWeights(f *testing.F) {
	f.Add([]byte("date,weight\n2026-11-01,1600\n2026-11-04,1500\n"))
	f.Add([]byte("\ufeffdate,weight\r\n\"2026-11-01\",\"16\"\"00\"\r\n"))
	f.Add([]byte("weight,date\n\n1600,2026-11-01,3\n\"a\nb\",x\n"))
	f.Fuzz(func(t *testing.T, b []byte) {
		ws, fs := ReadWeights("w.csv", b)
		laws(t, fs, len(ws))
		for i := 1; i < len(ws); i++ {
			if !ws[i].Date.After(ws[i-1].Date) {
				t.Errorf("weighing %d is not after the one before", i)
			}
		}
		who2003.Read(ws)
	})
}

// FuzzSessions reads any bytes as a log of sessions. Laws: no panic; findings lie
// inside the file; no session overlaps the next, and none stands beside an error; no
// day has more than 24 hours.
func FuzzSessions(f *testing.F) {
	f.Add([]byte("date,start,end\n2026-11-20,06:10,08:40\n2026-11-20,22:00,2026-11-21 05:30\n"))
	f.Add([]byte("start,end\n2026-11-20T22:00,2026-11-21T24:00\n"))
	f.Add([]byte("date,start,end,note\n2026-11-20,\"06:10\",08:40,\"a\n,b\"\n"))
	f.Fuzz(func(t *testing.T, b []byte) {
		ss, fs := ReadSessions("s.csv", b)
		laws(t, fs, len(ss))
		for i := 1; i < len(ss); i++ {
			if ss[i].Start.Before(ss[i-1].End) {
				t.Errorf("session %d overlaps the one before", i)
			}
		}
		for _, d := range Days(ss) {
			if d.Minutes > 24*60 {
				t.Errorf("%v has %d minutes", d.Date, d.Minutes)
			}
		}
	})
}

func laws(t *testing.T, fs []finding.Finding, read int) {
	t.Helper()
	for _, f := range fs {
		s := f.Place.Span
		if s.Start < 0 || s.End < s.Start || s.End > len(f.Place.File.Bytes) || f.What == "" || f.Why == "" || f.Mend == "" {
			t.Errorf("finding %+v", f)
		}
		if f.Level == finding.Error && read > 0 {
			t.Error("half a record was read")
		}
	}
}
