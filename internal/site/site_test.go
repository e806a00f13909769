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
	"wardleaf/internal/pack"
	"wardleaf/internal/review"
	"wardleaf/internal/translate"
)

func read(t *testing.T, folder string) *pack.Pack {
	t.Helper()
	p, _, err := load.Pack(os.DirFS(folder), folder)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// build makes the site of a pack in every language that it has.
func build(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	return publish(t, read(t, folder))
}

// buildWith makes the site of the small pack after a change.
func buildWith(t *testing.T, change func(*pack.Pack)) map[string][]byte {
	t.Helper()
	p := read(t, "../../testdata/packs/small")
	change(p)
	return publish(t, p)
}

func publish(t *testing.T, p *pack.Pack) map[string][]byte {
	t.Helper()
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
	source, err := catalog.Locale(p.Source, p.Digits[p.Source])
	if err != nil {
		t.Fatal(err)
	}
	if files["index.html"], err = s.Start(p, source, all); err != nil {
		t.Fatal(err)
	}
	if files["reviewers.html"], err = s.Reviewers(p, source, review.NewMatrix(p, nil), all); err != nil {
		t.Fatal(err)
	}
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

// Every page: parsed by the HTML standard's algorithm (golang.org/x/net/html), it is
// as it was written, carries its language and direction, runs nothing, fetches
// nothing, and every link within the site leads to a page and a place that are there.
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
			sameAgain(t, name, data, doc)
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
				case "script":
					// Two sheets can be worked: one script of its own each, and its data.
					src, fetched := attr(n, "src")
					if !canBeWorked(name) || fetched {
						t.Errorf("%s: a script %s", name, src)
					}
				case "iframe", "object", "embed", "form", "img", "base", "link", "audio", "video", "image", "use":
					t.Errorf("%s: element %s", name, n.Data)
				case "html":
					lang, _ := attr(n, "lang")
					if lang == "" || strings.Contains(name, "/") && lang != path.Dir(name) {
						t.Errorf("%s: lang %q", name, lang)
					}
					if d, _ := attr(n, "dir"); (d == "rtl") != (lang == "ar" || lang == "ur") {
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
					if n.Data == "a" && (strings.HasPrefix(v, "tel:") || strings.HasPrefix(v, "https://")) {
						continue // nothing is fetched until a reader taps it
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
			policy := `content="default-src 'none'; style-src 'unsafe-inline'; img-src data:`
			if canBeWorked(name) {
				policy += `; script-src 'sha256-`
			} else {
				policy += `"`
			}
			if !bytes.Contains(files[name], []byte(policy)) {
				t.Errorf("%s: no content security policy", name)
			}
			if h1 != 1 {
				t.Errorf("%s: %d headings of level 1", name, h1)
			}
		}
	}
}

// sameAgain reports whether a page says in its tags what the parser makes of it: no
// element was closed or moved by its rules of repair, and written out and read again
// it is the same.
func sameAgain(t *testing.T, name string, data []byte, doc *html.Node) {
	t.Helper()
	var tags []string
	z := html.NewTokenizer(bytes.NewReader(data))
	for z.Next() != html.ErrorToken {
		if k := z.Token(); k.Type == html.StartTagToken || k.Type == html.SelfClosingTagToken {
			tags = append(tags, k.Data)
		}
	}
	var elements []string
	each(doc, func(n *html.Node) { elements = append(elements, strings.ToLower(n.Data)) })
	if !slices.Equal(tags, elements) {
		t.Errorf("%s: the parser had to repair the page", name)
	}
	var once, twice bytes.Buffer
	if err := html.Render(&once, doc); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	again, err := html.Parse(bytes.NewReader(once.Bytes()))
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if err := html.Render(&twice, again); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if !bytes.Equal(once.Bytes(), twice.Bytes()) {
		t.Errorf("%s: written out and read again it is another page", name)
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
	const evil = `</title></style><script>x</script>"'><b onclick=x>&`
	count := func(files map[string][]byte) (n int) {
		for name, data := range files {
			if !strings.HasSuffix(name, ".html") {
				continue
			}
			doc, err := html.Parse(bytes.NewReader(data))
			if err != nil {
				t.Fatal(err)
			}
			each(doc, func(e *html.Node) {
				n++
				if _, ok := attr(e, "onclick"); ok || e.Data == "script" && !canBeWorked(name) || e.Data == "b" {
					t.Errorf("%s: %s came out of text", name, e.Data)
				}
			})
		}
		return n
	}
	all := func(s pack.Localized) {
		for lang := range s {
			s[lang] = evil
		}
	}
	good := count(buildWith(t, func(p *pack.Pack) {
		for _, m := range p.Modules {
			m.Basis = nil
		}
	}))
	bad := count(buildWith(t, func(p *pack.Pack) {
		all(p.Title)
		all(p.Subtitle)
		all(p.Facility.Name)
		all(p.Facility.Protocol)
		all(p.Facility.Contacts[0].Label)
		p.Version = evil
		for _, s := range p.Sources {
			s.Title, s.Author, s.Identifier = evil, evil, evil
		}
		for _, m := range p.Modules {
			m.Record.Audience = []string{evil, "families"}
			m.Basis = nil // what was changed since is counted on the page for reviewers
			for _, l := range m.Lessons {
				l.Walk(func(b *lesson.Block) { b.Alt = evil })
				l.WalkInlines(func(in *lesson.Inline) {
					if in.Kind == lesson.Text {
						in.Text += evil
					}
				})
			}
		}
	}))
	if good != bad {
		t.Errorf("with text that looks like markup there are %d elements, without it %d", bad, good)
	}

	r := &renderer{}
	got := string(r.inlines([]lesson.Inline{{
		Kind: lesson.Link, Scheme: "https", Target: `//x.example/"><script>`, Children: []lesson.Inline{{Kind: lesson.CodeSpan, Text: "</code><i>"}},
	}}))
	if want := `<a href="https://x.example/&#34;&gt;&lt;script&gt;"><code>&lt;/code&gt;&lt;i&gt;</code></a>`; got != want {
		t.Errorf("an address from outside is %s, want %s", got, want)
	}
}

// What is not there is not linked, and bad shapes of a lesson do not stop a page.
func TestBadInput(t *testing.T) {
	odd := []lesson.Block{
		{Kind: lesson.Heading, Level: 6},
		{Kind: lesson.List, Ordered: true, Items: []lesson.Item{{}, {Blocks: []lesson.Block{{Kind: lesson.List}}}}},
		{Kind: lesson.List, Items: []lesson.Item{{Task: lesson.Ticked}}},
		{Kind: lesson.Quote}, {Kind: lesson.Table}, {Kind: lesson.Code}, {Kind: lesson.Figure, Source: "no/such.svg"},
		{Kind: lesson.Paragraph, Inlines: []lesson.Inline{
			{Kind: lesson.Link, Scheme: "source", Target: "nowhere"}, {Kind: lesson.Link, Scheme: "module", Target: "nowhere"},
			{Kind: lesson.Link, Scheme: "facility", Target: "nowhere"}, {Kind: lesson.Link, Scheme: "javascript", Target: "x"},
			{Kind: lesson.Image, Text: "alt", Target: "x"},
		}},
	}
	files := buildWith(t, func(p *pack.Pack) {
		p.Facility.Contacts = nil
		for _, l := range p.Modules[0].Lessons {
			l.Title, l.Lead = nil, odd
			l.Parts = nil
			for _, role := range append([]lesson.Role{lesson.Prose}, lesson.Roles...) {
				l.Parts = append(l.Parts, lesson.Part{Role: role, Blocks: odd})
			}
		}
		p.Modules[0].Record = pack.Record{}
	})
	page := string(files["en/holding.html"])
	for _, bad := range []string{"nowhere", "javascript", "<h6", "0001"} {
		if strings.Contains(page, bad) {
			t.Errorf("the page has %q", bad)
		}
	}
}

// canBeWorked reports whether a page has a script.
func canBeWorked(name string) bool {
	return slices.Contains([]string{"sheet-growth-chart.html", "sheet-cutting-plan.html"}, path.Base(name))
}
