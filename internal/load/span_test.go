package load

import (
	"fmt"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/source"
)

// TestSpans gives, for every kind of node, the bytes that it was read from: one line
// a node, indented by what it lies in.
func TestSpans(t *testing.T) {
	tests := []struct{ name, markdown, want string }{
		{"title", "# कंगारू *माँ* {.x}\n", `
title "# कंगारू *माँ* {.x}"
 text "कंगारू "
 emphasis "*माँ*"
  text "माँ"`},
		{"underlined title", "One *two*\nthree\n=====\n", `
title "One *two*\nthree"
 text "One "
 emphasis "*two*"
  text "two"
 text ""
 text "three"`},
		{"part", "## Steps {.steps}   \n\n### Deep ###\n", `
part "## Steps {.steps}"
 text "Steps"
heading "### Deep ###"
 text "Deep"`},
		{"underlined part", "Steps {.steps}\n-----\n\na\n", `
part "Steps {.steps}"
 text "Steps"
paragraph "a"
 text "a"`},
		{"paragraph", "  one\n  two  \n  three\\\nfour &amp; \\*  \n", `
paragraph "one\n  two  \n  three\\\nfour &amp; \\*"
 text "one"
 text "two"
 break "\n"
 text "three"
 break "\n"
 text "four &amp; \\*"`},
		{"strong and emphasis", "a **b *c* d** ***e*** _f_ __g__ *h**i*\n", `
paragraph "a **b *c* d** ***e*** _f_ __g__ *h**i*"
 text "a "
 strong "**b *c* d**"
  text "b "
  emphasis "*c*"
   text "c"
  text " d"
 text " "
 emphasis "***e***"
  strong "**e**"
   text "e"
 text " "
 emphasis "_f_"
  text "f"
 text " "
 strong "__g__"
  text "g"
 text " "
 emphasis "*h**i*"
  text "h**i"`},
		{"code span", "a `` b`c `` d\n", "\nparagraph \"a `` b`c `` d\"\n text \"a \"\n code \"`` b`c ``\"\n text \" d\""},
		{"inline links", "[a](term:b) [](term:c) [d [e]](<term:f> 'g (h)') [i](term:j \"k\\\"l\") [m](\n  term:n\n  (o)\n) p\n", `
paragraph "[a](term:b) [](term:c) [d [e]](<term:f> 'g (h)') [i](term:j \"k\\\"l\") [m](\n  term:n\n  (o)\n) p"
 link "[a](term:b)"
  text "a"
 text " "
 link "[](term:c)"
 text " "
 link "[d [e]](<term:f> 'g (h)')"
  text "d [e]"
 text " "
 link "[i](term:j \"k\\\"l\")"
  text "i"
 text " "
 link "[m](\n  term:n\n  (o)\n)"
  text "m"
 text " p"`},
		{"reference links", "[a] [b][a] [a][]\n\n[a]: term:c\n", `
paragraph "[a] [b][a] [a][]"
 link "[a]"
  text "a"
 text " "
 link "[b][a]"
  text "b"
 text " "
 link "[a][]"
  text "a"`},
		{"addresses", "<https://a.example> <b@c.example>\n", `
paragraph "<https://a.example> <b@c.example>"
 link "<https://a.example>"
  text "https://a.example"
 text " "
 link "<b@c.example>"
  text "b@c.example"`},
		{"images", "a ![b *c*](d.svg) e\n\n ![f](g.svg \"h\")\n", `
paragraph "a ![b *c*](d.svg) e"
 text "a "
 image "![b *c*](d.svg)"
 text " e"
figure "![f](g.svg \"h\")"`},
		{"lists", "1. a\n\n   b\n2. - [ ] c\n   - [x] d\n-\n- e\n", `
list "1. a\n\n   b\n2. - [ ] c\n   - [x] d"
 item "1. a\n\n   b"
  paragraph "a"
   text "a"
  paragraph "b"
   text "b"
 item "2. - [ ] c\n   - [x] d"
  list "- [ ] c\n   - [x] d"
   item "- [ ] c"
    paragraph "[ ] c"
     text "c"
   item "- [x] d"
    paragraph "[x] d"
     text "d"
list "-\n- e"
 item "-"
 item "- e"
  paragraph "e"
   text "e"`},
		{"quotes", "> a\n> > b\nlazy\n\n>\n", `
quote "> a\n> > b\nlazy"
 paragraph "a"
  text "a"
 quote "> b\nlazy"
  paragraph "b\nlazy"
   text "b"
   text "lazy"
quote ">"`},
		{"code blocks", "    a\n\n    b\n\n```x\nc\n```\n\n~~~\nd", `
codeblock "a\n\n    b"
 text "a\n\n    b"
codeblock "` + "```x\\nc\\n```" + `"
 text "` + "```x\\nc\\n```" + `"
codeblock "~~~\nd"
 text "~~~\nd"`},
		{"rule", "a\n\n* * *  \n", `
paragraph "a"
 text "a"
rule "* * *"`},
		{"table", "| a | *b* |\n|---|:-:|\n| c |\n", `
table "| a | *b* |\n|---|:-:|\n| c |"
 row "| a | *b* |"
  text "a"
  emphasis "*b*"
   text "b"
 row "| c |"
  text "c"`},
		{"tabs", "- a\n\t- b\n\t\t> > q\n\t\t>\n\n\t\t```\n\t\tc\n\t\t```\n\n\t# h\n\n\t---\n\n* >\n* c\n\t >\n* d\n", `
list "- a\n\t- b\n\t\t> > q\n\t\t>\n\n\t\t` + "```\\n\\t\\tc\\n\\t\\t```" + `\n\n\t# h\n\n\t---"
 item "- a\n\t- b\n\t\t> > q\n\t\t>\n\n\t\t` + "```\\n\\t\\tc\\n\\t\\t```" + `\n\n\t# h\n\n\t---"
  paragraph "a"
   text "a"
  list "- b\n\t\t> > q\n\t\t>\n\n\t\t` + "```\\n\\t\\tc\\n\\t\\t```" + `"
   item "- b\n\t\t> > q\n\t\t>\n\n\t\t` + "```\\n\\t\\tc\\n\\t\\t```" + `"
    paragraph "b"
     text "b"
    quote "> > q"
     quote "> q"
      paragraph "q"
       text "q"
    codeblock "` + "```\\n\\t\\tc\\n\\t\\t```" + `"
     text "` + "```\\n\\t\\tc\\n\\t\\t```" + `"
  heading "# h"
   text "h"
  rule "---"
list "* >\n* c\n\t >\n* d"
 item "* >"
  quote ">"
 item "* c\n\t >"
  paragraph "c"
   text "c"
  quote ">"
 item "* d"
  paragraph "d"
   text "d"`},
		{"windows line ends", "# a\r\n\r\nb\r\nc\r\n", `
title "# a"
 text "a"
paragraph "b\r\nc"
 text "b"
 text "c"`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			l, _ := read(test.markdown)
			if err := checkSpans(l); err != nil {
				t.Error(err)
			}
			if got, want := outline(l), strings.TrimPrefix(test.want, "\n"); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// outline prints every node of a lesson with the bytes of its span.
func outline(l *lesson.Lesson) string {
	var b strings.Builder
	line := func(depth int, what string, s source.Span) {
		fmt.Fprintf(&b, "%s%s %q\n", strings.Repeat(" ", depth), what, l.File.Bytes[s.Start:s.End])
	}
	var inlines func([]lesson.Inline, int)
	inlines = func(ins []lesson.Inline, depth int) {
		for _, in := range ins {
			line(depth, [...]string{"text", "strong", "emphasis", "code", "link", "image", "break"}[in.Kind], in.Span)
			inlines(in.Children, depth+1)
		}
	}
	var blocks func([]lesson.Block, int)
	blocks = func(bs []lesson.Block, depth int) {
		for _, x := range bs {
			line(depth, [...]string{"paragraph", "heading", "list", "quote", "table", "figure", "codeblock", "rule"}[x.Kind], x.Span)
			inlines(x.Inlines, depth+1)
			blocks(x.Blocks, depth+1)
			for _, it := range x.Items {
				line(depth+1, "item", it.Span)
				blocks(it.Blocks, depth+2)
			}
			for _, r := range x.Rows {
				line(depth+1, "row", r.Span)
				for _, c := range r.Cells {
					inlines(c, depth+2)
				}
			}
		}
	}
	if l.Title != nil {
		line(0, "title", l.Span)
		inlines(l.Title, 1)
	}
	blocks(l.Lead, 0)
	for _, p := range l.Parts {
		line(0, "part", p.Span)
		inlines(p.Heading, 1)
		blocks(p.Blocks, 0)
	}
	return strings.TrimSuffix(b.String(), "\n")
}
