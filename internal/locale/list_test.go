package locale

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"
)

// TestListsAndQuotes holds quotation marks and lists of up to five items against CLDR 48.2
// (main/*/delimiters.json and listPatterns.json, of the languages of languages.json).
func TestListsAndQuotes(t *testing.T) {
	b, err := os.ReadFile("testdata/misc.json")
	if err != nil {
		t.Fatal(err)
	}
	var cldr map[string]struct {
		QuotationStart, QuotationEnd string
		Unit                         map[string]string `json:"unit-short"`
	}
	if err := json.Unmarshal(b, &cldr); err != nil {
		t.Fatal(err)
	}
	c := withFacts(catalog(t))
	for tag := range c.facts {
		want, ok := cldr[tag]
		if !ok {
			t.Errorf("%s: CLDR says nothing", tag)
			continue
		}
		before, after, known := c.Quotes(tag)
		if !known || before != want.QuotationStart || after != want.QuotationEnd {
			t.Errorf("%s: quotation marks %q and %q, CLDR has %q and %q", tag, before, after, want.QuotationStart, want.QuotationEnd)
		}
		l, err := c.Locale(tag, "")
		if err != nil {
			t.Fatal(err)
		}
		var items []string
		for n := range 6 {
			if got, want := l.List(items), listed(want.Unit, items); got != want {
				t.Errorf("%s: list %q, CLDR makes it %q", tag, got, want)
			}
			items = append(items, fmt.Sprint(n+1))
		}
	}
	if _, _, known := c.Quotes("xx"); known {
		t.Error("quotation marks of an unknown language are known")
	}
}

// listed builds a list from the end, as UTS #35 says of list patterns.
func listed(pattern map[string]string, items []string) string {
	fill := func(p, a, b string) string { return strings.NewReplacer("{0}", a, "{1}", b).Replace(p) }
	n := len(items)
	switch n {
	case 0:
		return ""
	case 1:
		return items[0]
	case 2:
		return fill(pattern["2"], items[0], items[1])
	}
	out := fill(pattern["end"], items[n-2], items[n-1])
	for i := n - 3; i > 0; i-- {
		out = fill(pattern["middle"], items[i], out)
	}
	return fill(pattern["start"], items[0], out)
}
