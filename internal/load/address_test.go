package load

import "testing"

func TestAddress(t *testing.T) {
	tests := []struct {
		written, scheme, rest string
		ok                    bool
	}{
		{"https://example.org/a?b=c:d", "https", "//example.org/a?b=c:d", true},
		{"HTTPS://example.org", "https", "//example.org", true},
		{"mailto:a@example.org", "mailto", "a@example.org", true},
		{"tel:+15550100", "tel", "+15550100", true},
		{"number:daily-gain", "number", "daily-gain", true},
		{"sheet:growth-chart", "sheet", "growth-chart", true},
		{"figures/a.svg", "", "figures/a.svg", true},
		{"figures/a%20b.svg", "", "figures/a%20b.svg", true},
		{"../feeding/en.md", "", "../feeding/en.md", true},
		{"#steps", "", "#steps", true},
		{"a/b:c", "", "a/b:c", true},
		{"http://example.org", "", "", false},
		{"javascript:x", "", "", false},
		{"JavaScript:x", "", "", false},
		{"javascript&colon;x", "", "", false},
		{"javascript&#58;x", "", "", false},
		{"javascript&#x3a;x", "", "", false},
		{`javascript\:x`, "", "", false},
		{"java&Tab;script:x", "", "", false},
		{"java&NewLine;script:x", "", "", false},
		{"java\u200bscript:x", "", "", false},
		{"\u0001javascript:x", "", "", false},
		{"java%73cript:x", "", "", false},
		{"javascript%3Ax", "", "", false},
		{"javascript%253Ax", "", "", false},
		{"htt&Tab;ps://example.org", "", "", false},
		{"https%3A//example.org", "", "", false},
		{"vbscript:x", "", "", false},
		{"file:///etc/passwd", "", "", false},
		{"data:image/svg+xml;base64,AA", "", "", false},
		{"//example.org", "", "", false},
		{"/%2Fexample.org", "", "", false},
		{`\\example.org`, "", "", false},
		{`/\example.org`, "", "", false},
		{"%5C%5Cexample.org", "", "", false},
	}
	for _, test := range tests {
		scheme, rest, ok := split([]byte(test.written))
		if ok != test.ok || ok && (scheme != test.scheme || rest != test.rest) {
			t.Errorf("%q: got %q %q %v", test.written, scheme, rest, ok)
		}
	}
}

func TestReference(t *testing.T) {
	for in, want := range map[string]string{
		"&amp;": "&", "&ouml;x": "ö", "&semi;": ";", "&#35;": "#", "&#x22;": `"`, "&#0;": "\uFFFD", "&#xD800;": "\uFFFD",
		"&#128;": "\u0080", "&notit;": "&", "&amp": "&", "&;": "&", "&#;": "&", "&#x;": "&", "&#12345678;": "&", "&ThisIsNotDefined;": "&",
	} {
		if got, _ := reference([]byte(in)); got != want {
			t.Errorf("%s: got %q, want %q", in, got, want)
		}
	}
}
