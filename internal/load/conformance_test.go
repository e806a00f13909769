package load

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"html"
	"os"
	"regexp"
	"strings"
	"testing"

	rendered "github.com/yuin/goldmark/renderer/html"
)

// An example of the CommonMark 0.31.2 specification.
type example struct {
	Markdown, HTML, Section string
	Example                 int
}

func commonMark(t testing.TB) []example {
	t.Helper()
	f, err := os.Open("../../testdata/conformance/commonmark-0.31.2.json.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	var out []example
	if err := json.NewDecoder(z).Decode(&out); err != nil {
		t.Fatal(err)
	}
	if len(out) != 652 {
		t.Fatalf("%d examples, want all 652", len(out))
	}
	return out
}

// departures lists the examples that lessons read differently, and why. It may only shrink.
var departures = map[int]string{}

// TestCommonMark renders every example of the specification with the parser of lessons.
func TestCommonMark(t *testing.T) {
	md := newMarkdown()
	md.Renderer().AddOptions(rendered.WithXHTML(), rendered.WithUnsafe())
	for _, ex := range commonMark(t) {
		var out bytes.Buffer
		if err := md.Convert([]byte(ex.Markdown), &out); err != nil {
			t.Errorf("example %d: %v", ex.Example, err)
		}
		same := out.String() == ex.HTML
		if why, known := departures[ex.Example]; known == same {
			t.Errorf("example %d (%s): departure listed: %v (%s)\nmarkdown %q\nwant %q\ngot  %q",
				ex.Example, ex.Section, known, why, ex.Markdown, ex.HTML, out.String())
		}
	}
}

// TestLessonText compares the words that a lesson holds with those
// of the specification's HTML, for every example without raw HTML, and checks the
// laws of spans on each.
func TestLessonText(t *testing.T) {
	checked := 0
	for _, ex := range commonMark(t) {
		if strings.ContainsRune(ex.Markdown, 0) {
			continue // refused before it is parsed
		}
		l, found := read(ex.Markdown)
		if l == nil || has(found, "raw-html") || has(found, "file-too-complex") {
			continue
		}
		checked++
		if err := checkSpans(l); err != nil {
			t.Errorf("example %d (%s) %q: %v", ex.Example, ex.Section, ex.Markdown, err)
		}
		if got, want := squeeze(words(l)), squeeze(strip(ex.HTML)); got != want {
			t.Errorf("example %d (%s) %q:\ngot  %q\nwant %q", ex.Example, ex.Section, ex.Markdown, got, want)
		}
	}
	if checked < 500 {
		t.Errorf("only %d examples could be compared", checked)
	}
}

var tag = regexp.MustCompile(`<(/?)(p|h[1-6]|li|ul|ol|blockquote|pre|hr|br|td|th|tr|table|thead|tbody)\b[^>]*>|<[^>]*>`)

// strip takes the tags out of HTML; those of blocks leave a blank.
func strip(s string) string {
	s = tag.ReplaceAllStringFunc(s, func(m string) string {
		if tag.FindStringSubmatch(m)[2] != "" {
			return " "
		}
		return ""
	})
	return html.UnescapeString(s)
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), " ") }
