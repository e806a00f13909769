package lesson

import (
	"testing"
)

func TestSplitSign(t *testing.T) {
	text := func(s string) Inline { return Inline{Kind: Text, Text: s} }
	bold := func(s string) Inline {
		return Inline{Kind: Strong, Children: []Inline{text(s)}}
	}
	tests := []struct {
		name     string
		item     []Inline
		when, do string
	}{
		{"bold sign", []Inline{bold("Blue lips"), text(": call now.")}, "Blue lips:", "call now."},
		{"more before the colon", []Inline{bold("Cold"), text(", under 36 ("), text("WHO"), text("): warm: now")}, "Cold, under 36 (WHO):", "warm: now"},
		{"no bold start", []Inline{text("Blue: call now.")}, "", "Blue: call now."},
		{"no colon", []Inline{bold("Blue lips"), text(" call now.")}, "", "Blue lips call now."},
		{"colon within the bold", []Inline{bold("Blue:"), text(" call now.")}, "", "Blue: call now."},
		{"bold alone", []Inline{bold("Blue lips")}, "", "Blue lips"},
		{"empty", nil, "", ""},
	}
	for _, tt := range tests {
		before := Plain(tt.item)
		when, do := SplitSign([]Block{{Kind: Paragraph, Inlines: tt.item}})
		if got := Plain(when); got != tt.when {
			t.Errorf("%s: sign %q, want %q", tt.name, got, tt.when)
		}
		if got := Plain(do[0].Inlines); got != tt.do {
			t.Errorf("%s: what to do is %q, want %q", tt.name, got, tt.do)
		}
		if Plain(tt.item) != before {
			t.Errorf("%s: the lesson was changed", tt.name)
		}
	}
	if when, do := SplitSign(nil); when != nil || do != nil {
		t.Errorf("an item without blocks: %v, %v", when, do)
	}
}
