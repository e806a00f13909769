package site

import (
	"testing"

	"wardleaf/internal/lesson"
)

func TestSplitSign(t *testing.T) {
	text := func(s string) lesson.Inline { return lesson.Inline{Kind: lesson.Text, Text: s} }
	bold := func(s string) lesson.Inline {
		return lesson.Inline{Kind: lesson.Strong, Children: []lesson.Inline{text(s)}}
	}
	tests := []struct {
		name     string
		item     []lesson.Inline
		when, do string
	}{
		{"bold sign", []lesson.Inline{bold("Blue lips"), text(": call now.")}, "Blue lips:", "call now."},
		{"more before the colon", []lesson.Inline{bold("Cold"), text(", under 36 ("), text("WHO"), text("): warm: now")}, "Cold, under 36 (WHO):", "warm: now"},
		{"no bold start", []lesson.Inline{text("Blue: call now.")}, "", "Blue: call now."},
		{"no colon", []lesson.Inline{bold("Blue lips"), text(" call now.")}, "", "Blue lips call now."},
		{"colon within the bold", []lesson.Inline{bold("Blue:"), text(" call now.")}, "", "Blue: call now."},
		{"bold alone", []lesson.Inline{bold("Blue lips")}, "", "Blue lips"},
		{"empty", nil, "", ""},
	}
	for _, tt := range tests {
		before := lesson.Plain(tt.item)
		when, do := splitSign([]lesson.Block{{Kind: lesson.Paragraph, Inlines: tt.item}})
		if got := lesson.Plain(when); got != tt.when {
			t.Errorf("%s: sign %q, want %q", tt.name, got, tt.when)
		}
		if got := lesson.Plain(do[0].Inlines); got != tt.do {
			t.Errorf("%s: what to do is %q, want %q", tt.name, got, tt.do)
		}
		if lesson.Plain(tt.item) != before {
			t.Errorf("%s: the lesson was changed", tt.name)
		}
	}
	if when, do := splitSign(nil); when != nil || do != nil {
		t.Errorf("an item without blocks: %v, %v", when, do)
	}
}
