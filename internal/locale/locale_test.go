package locale

import (
	"encoding/json"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
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
	for tag := range c.labels {
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

func TestRightToLeft(t *testing.T) {
	c := catalog(t)
	for tag, want := range map[string]bool{"en": false, "hi": false, "ar": true, "ur": true, "am": false} {
		l, err := withFacts(c).Locale(tag, "")
		if err != nil {
			t.Fatal(err)
		}
		if l.RTL != want {
			t.Errorf("%s: RTL %v", tag, l.RTL)
		}
	}
}
