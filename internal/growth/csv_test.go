package growth

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

func read(t testing.TB, text string) ([]Row, []finding.Finding, *source.File) {
	f := source.New("baby.csv", []byte(text))
	var b Baby
	b.Birth = time.Date(2026, 9, 1, 0, 0, 0, 0, time.UTC)
	b.Weeks, b.Days, b.Sex = 30, 0, Boy
	rows, found := Read(f, b)
	return rows, found, f
}

func TestRead(t *testing.T) {
	const body = "2026-09-11,1605,,29.5\r\n2026-09-01,1500,41,\r\n"
	for name, text := range map[string]string{
		"plain":                 "date,weight-g,length-cm,head-cm\r\n" + body,
		"byte order mark":       "\ufeffdate,weight-g,length-cm,head-cm\r\n" + body,
		"line feeds alone":      strings.ReplaceAll("date,weight-g,length-cm,head-cm\r\n"+body, "\r", ""),
		"quoted":                "\"date\",\"weight-g\",\"length-cm\",\"head-cm\"\n\"2026-09-11\",\"1605\",,29.5\n2026-09-01,1500,41,",
		"other order, spaces":   "head-cm, Weight-g ,date,length-cm\n29.5,1605,2026-09-11,\n,1500,2026-09-01, 41\n",
		"empty lines and cells": "date,weight-g,length-cm,head-cm,\n\n2026-09-11,1605,,29.5,\n,,,\n2026-09-01,1500,41,\n",
	} {
		rows, found, _ := read(t, text)
		if len(found) > 0 || len(rows) != 2 {
			t.Errorf("%s: %d rows, %v", name, len(rows), found)
			continue
		}
		if r := rows[0]; r.Age != 210 || r.Values != [3]float64{1.5, 41, 0} {
			t.Errorf("%s: first row %+v", name, r)
		}
		if r := rows[1]; r.Age != 220 || r.Values != [3]float64{1.605, 0, 29.5} {
			t.Errorf("%s: second row %+v", name, r)
		}
	}
}

func TestReadFindings(t *testing.T) {
	const head = "date,weight-g,length-cm,head-cm\n"
	for _, tt := range []struct{ text, at, what, mend string }{
		{"", "1:1", "the file is empty", "date,weight-g"},
		{head, "1:1", "no row below the head", "one row"},
		{"date;weight-g\n2026-09-02;1500\n", "1:1", "not parted by commas", "commas"},
		{"date,wieght-g\n", "1:6", `the column "wieght-g" is not used`, "write weight-g"},
		{"date,weight-g,weight-g\n", "1:15", "stands here twice", "take one"},
		{"weight-g\n1500\n", "1:1", "no column date", "date,weight-g"},
		{"date\n2026-09-02\n", "1:1", "nothing that was measured", "begin the file"},
		{head + "2026-09-02,-1500,,\n", "2:12", "not above zero", "correct it"},
		{head + "2026-09-02,0,,\n", "2:12", "not above zero", "correct it"},
		{head + "2026-09-02,10000,,\n", "2:12", "cannot be at 30 weeks and 1 days", "record"},
		{head + "2026-09-02,1.5,,\n", "2:12", "cannot be", "write the weight in grams: 1500"},
		{head + "2026-09-02,,,2.9\n", "2:14", "cannot be", "record"},
		{head + "2026-08-31,1500,,\n", "2:1", "before the birth, 2026-09-01", "correct this date"},
		{head + "2026-09-02,1500,,\n2026-09-05,1510,,\n2026-09-02,1500,,\n", "4:1", "stands in row 2 already", "one row"},
		{head + "2027-09-02,9000,,\n", "2:1", "age is 82 weeks and 2 days", "another chart"},
		{head + "2026-09-02,heavy,,\n", "2:12", `"heavy" is not a number`, "point"},
		{head + "2026-09-02,NaN,,\n", "2:12", "not a number", "point"},
		{head + "2026-09-02,0x5DC,,\n", "2:12", "not a number", "point"},
		{head + "2026-09-02,\"1500,5\",,\n", "2:12", "not a number", "comma"},
		{head + "02.09.2026,1500,,\n", "2:1", "is not a date", "2026-11-25"},
		{head + "2026-02-30,1500,,\n", "2:1", "is not a date", "2026-11-25"},
		{head + "2026-09-02,1500,40,5,28\n", "2:22", "stands under no column", "point"},
		{head + ",1500,,\n", "2:1", "is not a date", "2026-11-25"},
		{head + "2026-09-02,,,\n", "2:1", "nothing was measured", "add a weight"},
		{head + "2026-09-02,\"1500,,\n", "", "well-formed", "quotation mark"},
		{head + "2026-09-02,15\xff00,,\n", "2:14", "not UTF-8", "UTF-8"},
		{"\ufeffdate,wight-g\n", "1:6", "is not used", "weight-g"},
	} {
		rows, found, _ := read(t, tt.text)
		if len(found) == 0 {
			t.Errorf("%q: nothing found, %d rows", tt.text, len(rows))
			continue
		}
		got := found[0]
		line, column := got.Place.File.Position(got.Place.Span.Start)
		if at := fmt.Sprintf("%d:%d", line, column); tt.at != "" && tt.what != "" && at != tt.at {
			t.Errorf("%q: at %s, want %s", tt.text, at, tt.at)
		}
		if !strings.Contains(got.What, tt.what) || !strings.Contains(got.Mend, tt.mend) || got.Why == "" || got.Level != finding.Error {
			t.Errorf("%q: %s: %s; %s", tt.text, got.Level, got.What, got.Mend)
		}
	}
	var long strings.Builder
	long.WriteString("date,weight-g\n")
	for i := range MostRows + 1 {
		fmt.Fprintf(&long, "2026-09-%02d,1500\n", 2+i%28)
	}
	_, found, _ := read(t, long.String())
	if !slices.ContainsFunc(found, func(f finding.Finding) bool { return strings.Contains(f.What, "more than 260 rows") }) {
		t.Errorf("too many rows: %v", found)
	}
	// far from usual is kept, with a warning
	rows, found, _ := read(t, "date,weight-g\n2026-09-02,450\n")
	if len(rows) != 1 || len(found) != 1 || found[0].Level != finding.Warning {
		t.Errorf("far from usual: %d rows, %v", len(rows), found)
	}
}

// FuzzRead reads any bytes. Laws: no panic; findings lie inside the file; rows are
// sorted, within the standards, and above zero; each has something measured.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"", "date,weight-g\n2026-09-02,1500\n", "\ufeffdate,weight-g,length-cm,head-cm\r\n2026-09-02,\"1500\",40.5,28\r\n", "date,weight-g\n\"2026\n-09-02\",1\n", ",,,\n\"\"\"", "date;weight-g\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		rows, found, file := read(t, text)
		for _, x := range found {
			if s := x.Place.Span; s.Start < 0 || s.End < s.Start || s.End > len(file.Bytes) {
				t.Errorf("%s lies at %v of %d", x.What, s, len(file.Bytes))
			}
		}
		for i, r := range rows {
			if !Holds(r.Age) || i > 0 && !r.Date.After(rows[i-1].Date) || r.Values == [3]float64{} {
				t.Errorf("row %+v", r)
			}
		}
	})
}
