package locale

import (
	"testing"
	"time"
)

// TestEthiopic compares every day from 1950 to 2099 with ICU, as Node.js carries it.
func TestEthiopic(t *testing.T) {
	var days []string
	icu(t, &days, `() => {
		const f = new Intl.DateTimeFormat("am-u-ca-ethiopic-nu-latn", {day: "numeric", month: "long", year: "numeric", timeZone: "UTC"});
		const out = [];
		for (let d = Date.UTC(1950, 0, 1); d < Date.UTC(2100, 0, 1); d += 864e5) {
			const p = Object.fromEntries(f.formatToParts(d).map(x => [x.type, x.value]));
			out.push(p.day + " " + p.month + " " + p.year);
		}
		return out;
	}`)
	am, err := withFacts(catalog(t)).Locale("am", "")
	if err != nil {
		t.Fatal(err)
	}
	day := time.Date(1950, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, want := range days {
		if got := am.ethiopicDate(day); got != want {
			t.Fatalf("%s: got %s, want %s", day.Format(time.DateOnly), got, want)
		}
		day = day.AddDate(0, 0, 1)
	}
	if len(days) < 54700 {
		t.Errorf("only %d days", len(days))
	}
}

func TestBeside(t *testing.T) {
	c := withFacts(catalog(t))
	am, err := c.Locale("am", "")
	if err != nil {
		t.Fatal(err)
	}
	both, err := am.Beside("ethiopic")
	if err != nil {
		t.Fatal(err)
	}
	day := time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
	if got := both.Date(day); got != "25 ኖቬምበር 2026 (16 ኅዳር 2019)" {
		t.Errorf("got %s", got)
	}
	if got := am.Date(day); got != "25 ኖቬምበር 2026" {
		t.Errorf("got %s", got)
	}
	for lang, calendar := range map[string]string{"am": "persian", "hi": "ethiopic"} {
		l, err := c.Locale(lang, "")
		if err != nil {
			t.Fatal(err)
		}
		if _, err := l.Beside(calendar); err == nil {
			t.Errorf("%s in %s is let through", calendar, lang)
		}
	}
}
