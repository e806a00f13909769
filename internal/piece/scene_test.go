package piece

import (
	"fmt"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
)

// TestScenes: p is a step with a picture, w one in words, c one in words that must
// never be missed. Each scene is written as what is seen, a colon, what is talked about.
func TestScenes(t *testing.T) {
	for steps, want := range map[string]string{
		"ppp":          "1:1 2:2 3:3",
		"wp":           "2:12",
		"wwp":          "3:123",
		"wwwp":         "123:123 4:4",
		"pw":           "1:12",
		"pwww":         "1:1 234:234",
		"cp":           "1:1 2:2",
		"wcp":          "12:12 3:3",
		"pc":           "1:1 2:2",
		"w":            "1:1",
		"wwwwww":       "123:123 456:456",
		"wwwww":        "123:123 45:45",
		"":             "",
		"cpppwpcpcppp": "1:1 2:2 3:3 4:4 6:56 7:7 8:8 9:9 A:A B:B C:C",
	} {
		b := lesson.Block{Kind: lesson.List, Ordered: true, Start: 1}
		for _, s := range steps {
			it := lesson.Item{Blocks: []lesson.Block{{Kind: lesson.Paragraph}}}
			if s == 'p' {
				it.Blocks = append(it.Blocks, lesson.Block{Kind: lesson.Figure})
			}
			b.Items = append(b.Items, it)
		}
		p := &lesson.Part{Role: lesson.Steps, Blocks: []lesson.Block{b}}
		var got []string
		for _, sc := range scenes(p, func(n int) bool { return steps[n-1] == 'c' }) {
			s := ""
			for _, x := range sc.shown {
				s += fmt.Sprintf("%X", x.Number)
			}
			s += ":"
			for _, x := range sc.talked {
				s += fmt.Sprintf("%X", x.Number)
			}
			got = append(got, s)
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%s: got %s, want %s", steps, s, want)
		}
	}
}

func TestUncite(t *testing.T) {
	word := func(s string) lesson.Inline { return lesson.Inline{Kind: lesson.Text, Text: s} }
	source := func(s string) lesson.Inline {
		return lesson.Inline{Kind: lesson.Link, Scheme: "source", Children: text(s)}
	}
	for _, k := range []struct {
		in   []lesson.Inline
		want string
	}{
		{[]lesson.Inline{word("Rub the back ("), source("WHO, 2003"), word(").")}, "Rub the back."},
		{[]lesson.Inline{word("Go ("), source("WHO, 2003"), word("; "), source("WHO, 2019"), word("): now ("), source("WHO"), word(")")}, "Go: now"},
		{[]lesson.Inline{word("اذهبوا ("), source("أ"), word("؛ "), source("ب"), word(").")}, "اذهبوا."},
		{[]lesson.Inline{word("As "), source("WHO, 2003"), word(" says (twice)")}, "As WHO, 2003 says (twice)"},
		{[]lesson.Inline{word("Go (see "), source("WHO, 2003"), word(")")}, "Go (see WHO, 2003)"},
		{[]lesson.Inline{word("Go ("), source("WHO, 2003"), word(", common practice)")}, "Go (WHO, 2003, common practice)"},
		{[]lesson.Inline{source("WHO, 2003")}, "WHO, 2003"},
		{[]lesson.Inline{word("Go ("), source("WHO, 2003")}, "Go (WHO, 2003"},
		{nil, ""},
	} {
		before := lesson.Plain(k.in)
		if got := lesson.Plain(uncite(k.in)); got != k.want {
			t.Errorf("got %q, want %q", got, k.want)
		}
		if lesson.Plain(k.in) != before {
			t.Errorf("%q was changed", before)
		}
	}
}
