package site

import (
	"bytes"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/translate"
)

// build makes the site of a pack in every language that it has.
func build(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	p, _, err := load.Pack(os.DirFS(folder), folder)
	if err != nil {
		t.Fatal(err)
	}
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := New(os.DirFS("../../templates"))
	if err != nil {
		t.Fatal(err)
	}
	var all []Lang
	for _, l := range p.Languages {
		loc, err := catalog.Locale(l, p.Digits[l])
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, Lang{l, loc.Name, loc.RTL})
	}
	files := map[string][]byte{}
	for _, l := range p.Languages {
		loc, _ := catalog.Locale(l, p.Digits[l])
		pdfs := []PDF{{Path: "print/booklet.pdf", Piece: "booklet", Pages: 8, Sheets: 2, Bytes: 1000}}
		got, err := s.Edition(translate.Join(p, loc), all, pdfs)
		if err != nil {
			t.Fatal(err)
		}
		for name, data := range got {
			files[name] = data
		}
		files[l+"/print/booklet.pdf"] = nil
	}
	start, err := s.Start(p, all)
	if err != nil {
		t.Fatal(err)
	}
	files["index.html"] = start
	return files
}

func each(n *html.Node, fn func(*html.Node)) {
	if n.Type == html.ElementNode {
		fn(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		each(c, fn)
	}
}

func attr(n *html.Node, key string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val, true
		}
	}
	return "", false
}

// Every page: parsed by the HTML standard's algorithm (golang.org/x/net/html), it
// carries its language and direction, runs nothing, fetches nothing, and every link
// within the site leads to a page and a place that are there.
func TestPages(t *testing.T) {
	for _, folder := range []string{"../../content", "../../testdata/packs/small"} {
		files := build(t, folder)
		ids := map[string][]string{}
		docs := map[string]*html.Node{}
		for name, data := range files {
			if !strings.HasSuffix(name, ".html") {
				continue
			}
			doc, err := html.Parse(bytes.NewReader(data))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			docs[name] = doc
			each(doc, func(n *html.Node) {
				if id, ok := attr(n, "id"); ok {
					if slices.Contains(ids[name], id) {
						t.Errorf("%s: id %q stands twice", name, id)
					}
					ids[name] = append(ids[name], id)
				}
			})
		}
		for name, doc := range docs {
			level, h1 := 0, 0
			each(doc, func(n *html.Node) {
				switch n.Data {
				case "script", "iframe", "object", "embed", "form", "img", "base":
					t.Errorf("%s: element %s", name, n.Data)
				case "html":
					lang, _ := attr(n, "lang")
					if lang == "" || strings.Contains(name, "/") && lang != path.Dir(name) {
						t.Errorf("%s: lang %q", name, lang)
					}
					if d, _ := attr(n, "dir"); lang == "ar" && d != "rtl" {
						t.Errorf("%s: dir %q", name, d)
					}
				case "h1", "h2", "h3", "h4":
					l := int(n.Data[1] - '0')
					if l == 1 {
						h1++
					}
					if l > level+1 {
						t.Errorf("%s: %s after level %d", name, n.Data, level)
					}
					level = l
				case "svg":
					if role, _ := attr(n, "role"); role != "img" {
						t.Errorf("%s: a picture without alternative text", name)
					}
				}
				for _, a := range n.Attr {
					if strings.HasPrefix(a.Key, "on") {
						t.Errorf("%s: attribute %s", name, a.Key)
					}
				}
				for _, key := range []string{"src", "href", "aria-labelledby"} {
					v, ok := attr(n, key)
					if !ok {
						continue
					}
					if key == "aria-labelledby" {
						if !slices.Contains(ids[name], v) {
							t.Errorf("%s: labelled by %q, which is not there", name, v)
						}
						continue
					}
					if strings.HasPrefix(v, "tel:") {
						continue
					}
					file, place, _ := strings.Cut(v, "#")
					target := name
					if file != "" {
						target = path.Join(path.Dir(name), file)
					}
					if _, ok := files[target]; !ok {
						t.Errorf("%s: %q leads nowhere", name, v)
					} else if place != "" && !slices.Contains(ids[target], place) {
						t.Errorf("%s: %q leads to no place of %s", name, v, target)
					}
				}
			})
			if h1 != 1 {
				t.Errorf("%s: %d headings of level 1", name, h1)
			}
		}
	}
}

// What is for trainers stands on their page and on no page that families read.
func TestTrainerNotesStayApart(t *testing.T) {
	for name, data := range build(t, "../../testdata/packs/small") {
		has := bytes.Contains(data, []byte("Bring a doll.")) || bytes.Contains(data, []byte("أحضروا دمية"))
		if want := path.Base(name) == "trainer.html"; has != want {
			t.Errorf("%s: trainer notes %v", name, has)
		}
	}
}

// The caution comes first, before anything else of the lesson.
func TestCautionFirst(t *testing.T) {
	for name, data := range build(t, "../../content") {
		if !bytes.Contains(data, []byte("<section")) {
			continue
		}
		first := data[bytes.Index(data, []byte("<section")):]
		if !bytes.HasPrefix(first, []byte(`<section class="caution"`)) {
			t.Errorf("%s: the first section is %s", name, first[:60])
		}
	}
}

// Text of a pack is never markup, and an address it gives cannot break out of its attribute.
func TestEscaping(t *testing.T) {
	r := &renderer{}
	got := string(r.inlines([]lesson.Inline{
		{Kind: lesson.Text, Text: `<b onclick="x">&`},
		{Kind: lesson.Link, Scheme: "https", Target: `//x.example/"><script>`, Children: []lesson.Inline{{Kind: lesson.CodeSpan, Text: "</code><i>"}}},
	}))
	doc, err := html.Parse(strings.NewReader(got))
	if err != nil {
		t.Fatal(err)
	}
	each(doc, func(n *html.Node) {
		if !slices.Contains([]string{"html", "head", "body", "a", "code"}, n.Data) {
			t.Errorf("element %s came out of text: %s", n.Data, got)
		}
	})
}
