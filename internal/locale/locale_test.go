package locale

import (
	"encoding/json"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

const folder = "../../locales"

func catalog(t *testing.T) *Catalog {
	t.Helper()
	c, err := Load(os.DirFS(folder))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Every language says everything the source language says, with the same placeholders.
func TestLabelsComplete(t *testing.T) {
	c := catalog(t)
	read := func(tag string) map[string]any {
		b, err := os.ReadFile(folder + "/" + tag + ".json")
		if err != nil {
			t.Fatal(err)
		}
		var m map[string]any
		if err := json.Unmarshal(b, &m); err != nil {
			t.Fatal(err)
		}
		return m
	}
	placeholder := regexp.MustCompile(`\{\{\.\w+\}\}`)
	places := func(v any) []string {
		text, ok := v.(string)
		if !ok {
			text = v.(map[string]any)["other"].(string)
		}
		p := placeholder.FindAllString(text, -1)
		slices.Sort(p)
		return p
	}
	english := read("en")
	for tag := range c.facts {
		labels := read(tag)
		for id, want := range english {
			got, ok := labels[id]
			if !ok {
				t.Errorf("%s: label %s is missing", tag, id)
				continue
			}
			if !slices.Equal(places(got), places(want)) {
				t.Errorf("%s: label %s has placeholders %v, the source has %v", tag, id, places(got), places(want))
			}
		}
		for id := range labels {
			if _, ok := english[id]; !ok {
				t.Errorf("%s: label %s is not in the source language", tag, id)
			}
		}
	}
}

func TestDigits(t *testing.T) {
	c := catalog(t)
	for _, k := range []struct{ tag, digits, want string }{
		{"en", "latn", "page 1234567890"},
		{"hi", "deva", "page १२३४५६७८९०"},
		{"ar", "arab", "page ١٢٣٤٥٦٧٨٩٠"},
		{"ar", "arabext", "page ۱۲۳۴۵۶۷۸۹۰"},
	} {
		l, err := c.Locale(k.tag, k.digits)
		if err != nil {
			t.Fatal(err)
		}
		if got := l.Digits("page 1234567890"); got != k.want {
			t.Errorf("%s %s: %q, want %q", k.tag, k.digits, got, k.want)
		}
	}
	if _, err := c.Locale("hi", "roman"); err == nil || !strings.Contains(err.Error(), "deva") {
		t.Errorf("an unknown numbering system must be refused with the known ones, got %v", err)
	}
}

// TestDates compares with ICU, as Node.js carries it, for every day of 2024.
func TestDates(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("node is missing")
		}
		t.Skip("node is not installed")
	}
	c := catalog(t)
	script := `const [tag] = process.argv.slice(1);
const f = new Intl.DateTimeFormat(tag, {day: "numeric", month: "long", year: "numeric", timeZone: "UTC"});
for (let d = new Date(Date.UTC(2024, 0, 1)); d.getUTCFullYear() == 2024; d.setUTCDate(d.getUTCDate() + 1)) console.log(f.format(d));`
	for _, k := range []struct{ tag, digits, icu string }{
		{"en", "latn", "en-GB-u-nu-latn"}, {"hi", "deva", "hi-u-nu-deva"}, {"ar", "arab", "ar-u-nu-arab"},
	} {
		out, err := exec.Command(node, "-e", script, k.icu).Output()
		if err != nil {
			t.Fatal(err)
		}
		l, err := c.Locale(k.tag, k.digits)
		if err != nil {
			t.Fatal(err)
		}
		day := time.Date(2024, 1, 1, 0, 0, 0, 0, time.UTC)
		for want := range strings.Lines(string(out)) {
			want = strings.TrimSpace(want)
			if got := l.Date(day); got != want {
				t.Fatalf("%s: %s is %q, ICU has %q", k.tag, day.Format(time.DateOnly), got, want)
			}
			day = day.AddDate(0, 0, 1)
		}
		if day.Year() != 2025 {
			t.Fatalf("%s: compared up to %s", k.tag, day.Format(time.DateOnly))
		}
	}
}

func TestRightToLeft(t *testing.T) {
	c := catalog(t)
	for tag, want := range map[string]bool{"en": false, "hi": false, "ar": true} {
		l, err := c.Locale(tag, "")
		if err != nil {
			t.Fatal(err)
		}
		if l.RTL != want {
			t.Errorf("%s: RTL %v", tag, l.RTL)
		}
	}
}
