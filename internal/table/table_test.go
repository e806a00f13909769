package table

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"wardleaf/internal/finding"
)

var options = Options{Need: []string{"date", "weight"}, Also: []string{"note"}, MostRows: 3, Why: "a test"}

// TestRead reads what RFC 4180, section 2, allows, and what table programs add to it.
func TestRead(t *testing.T) {
	for name, text := range map[string]string{
		"rule 1, CRLF":             "date,weight\r\n2026-11-25,1600\r\n",
		"rule 2, no last CRLF":     "date,weight\r\n2026-11-25,1600",
		"rule 5, quoted":           "\"date\",\"weight\"\r\n\"2026-11-25\",\"1600\"\r\n",
		"rule 6, comma and break":  "date,weight,note\r\n2026-11-25,1600,\"after a feed,\r\nwarm\"\r\n",
		"rule 7, quotes in quotes": "date,weight,note\r\n2026-11-25,1600,\"a \"\"new\"\" scale\"\r\n",
		"line feeds":               "date,weight\n2026-11-25,1600\n",
		"byte order mark":          "\ufeffdate,weight\n2026-11-25,1600\n",
		"capitals, spaces, order":  " Weight ,DATE\n1600, 2026-11-25\n",
		"empty lines and cells":    "date,weight,\n\n2026-11-25,1600,,\n,,\n",
	} {
		tab := Read("t.csv", []byte(text), options)
		if len(tab.Findings) > 0 || len(tab.Rows) != 1 {
			t.Errorf("%s: %d rows, %v", name, len(tab.Rows), tab.Findings)
			continue
		}
		if got, at := tab.Cell(tab.Rows[0], "weight"); got != "1600" || !bytes.HasPrefix(bytes.TrimLeft(tab.File.Bytes[at.Start:], `" `), []byte("1600")) {
			t.Errorf("%s: weight %q at %v", name, got, at)
		}
		if got, _ := tab.Cell(tab.Rows[0], "note"); tab.Has("note") != (got != "") {
			t.Errorf("%s: note %q", name, got)
		}
	}
}

func TestFindings(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "1:1 csv-syntax the file is empty"},
		{"date,weight\n", "1:1 csv-syntax there is no row"},
		{"date,weight\n2026-11-25,16\xff0\n", "2:14 csv-syntax the byte 0xFF is not UTF-8"},
		{"date,weight\n2026-11-25,16\x000\n", "2:14 csv-syntax the byte 0x00 is not UTF-8"},
		{"date;weight\n", "1:1 csv-column the values are not parted by commas"},
		{"date,weight,Date\n", "1:13 csv-column the column date stands here twice"},
		{"date,wieght\n2026-11-25,1600\n", "1:6 csv-column the column \"wieght\" is not used"},
		{"date\n2026-11-25\n", "1:1 csv-column there is no column weight"},
		{"date,weight\n2026-11-25,1,6\n", "2:14 csv-syntax the value \"6\" stands under no column"},
		{"date,weight\n2026-11-25,\"1600\n", "csv-syntax this is not well-formed CSV"},
		{"date,weight\n" + strings.Repeat("2026-11-25,1600\n", 4), "5:1 csv-syntax there are more than 3 rows"},
	} {
		tab := Read("t.csv", []byte(c.text), options)
		if len(tab.Findings) == 0 || !tab.Failed() {
			t.Errorf("%q: findings %v", c.text, tab.Findings)
			continue
		}
		f := tab.Findings[0]
		line, column := f.Place.File.Position(f.Place.Span.Start)
		if got := fmt.Sprintf("%d:%d %s %s", line, column, f.Rule, f.What); !strings.Contains(got, c.want) || f.Why == "" || f.Mend == "" {
			t.Errorf("%q: got %s", c.text, got)
		}
	}
	tab := Read("t.csv", []byte("date,weight,weather\n2026-11-25,1600,rain\n"), options)
	if len(tab.Findings) != 1 || tab.Findings[0].Level != finding.Warning || len(tab.Rows) != 1 {
		t.Errorf("a column that is not used: %v", tab.Findings)
	}
}

// FuzzRead reads any bytes. Laws: no panic; findings and cells lie inside the file.
func FuzzRead(f *testing.F) {
	f.Add([]byte("\ufeffdate,weight,note\r\n2026-11-25,\"16\"\"00\",\"a\n,b\"\r\n"))
	f.Add([]byte("date;weight\n"))
	f.Fuzz(func(t *testing.T, b []byte) {
		tab := Read("t.csv", b, options)
		for _, x := range tab.Findings {
			if s := x.Place.Span; s.Start < 0 || s.End < s.Start || s.End > len(tab.File.Bytes) {
				t.Errorf("%s lies at %v of %d", x.What, s, len(tab.File.Bytes))
			}
		}
		for _, r := range tab.Rows {
			for _, column := range []string{"date", "weight", "note"} {
				if _, s := tab.Cell(r, column); s.Start < 0 || s.End < s.Start || s.End > len(tab.File.Bytes) {
					t.Errorf("a %s lies at %v of %d", column, s, len(tab.File.Bytes))
				}
			}
		}
	})
}
