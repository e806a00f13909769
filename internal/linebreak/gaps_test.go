package linebreak

import "testing"

// TestKnownGaps holds what UAX #14 (Unicode 15.0) asks for where this package
// does otherwise. The list may only shrink: a case that comes right fails, and
// then moves to TestOpportunities.
func TestKnownGaps(t *testing.T) {
	for _, c := range []struct{ rule, text, want string }{
		{"LB10, LB14: a mark after an opening bracket and a space", "( \u0301\u4E00", "( \u0301|\u4E00||"},
		{"LB15: more than one space between a quotation mark and an opening bracket", "\"  (a", "\"  (a||"},
		{"LB16: more than one space between a closing bracket and a non-starter", ")  \u3005", ")  \u3005||"},
		{"LB17: more than one space between two em dashes", "\u2014  \u2014", "\u2014  \u2014||"},
		{"LB20: a mark between an object and a negative number", "\uFFFC\u0301-5", "\uFFFC\u0301|-5||"},
		{"LB25: punctuation between a number and its sign", "5,)%", "5,)%||"},
		{"LB25: two marks of punctuation within a number", "5,/5", "5,/5||"},
		{"LB25: a mark between a bracket and a number", "$(\u03015", "$(\u03015||"},
		{"LB23a: a code point set aside for emoji, before a sign", "\U0001F8DE%", "\U0001F8DE%||"},
	} {
		if got := marked(c.text); got == c.want {
			t.Errorf("%s: %q is right now; move it to TestOpportunities", c.rule, got)
		} else {
			t.Logf("%s: %q, the standard wants %q", c.rule, got, c.want)
		}
	}
}
