package pdf

import (
	"encoding/xml"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// TestStructure checks what ISO 14289-1:2014 (PDF/UA-1) asks of a file, as far as a
// program can, clause by clause, and that the tree and the pages agree with each
// other (ISO 32000-1, 14.7.4).
func TestStructure(t *testing.T) {
	o := readObjects(t, write(t, sample(t)))
	catalog := o.catalog()
	for _, want := range []struct {
		clause string
		path   []string
		value  any
	}{
		{"7.1 marked", []string{"/MarkInfo", "/Marked"}, true},
		{"7.1 title shown", []string{"/ViewerPreferences", "/DisplayDocTitle"}, true},
		{"7.2 language", []string{"/Lang"}, "u:en"},
		{"7.1 structure", []string{"/StructTreeRoot", "/Type"}, "/StructTreeRoot"},
	} {
		if got := o.get(catalog, want.path...); got != want.value {
			t.Errorf("%s: %v, want %v", want.clause, got, want.value)
		}
	}
	if o.get(catalog, "/MarkInfo", "/Suspects") != nil {
		t.Error("7.1: Suspects is set")
	}
	metadata := o.stream(t, catalog.(map[string]any)["/Metadata"])
	if err := xml.Unmarshal([]byte(metadata), new(struct{})); err != nil {
		t.Errorf("clause 5, metadata: %v", err)
	}
	for _, want := range []string{
		"<pdfuaid:part>1</pdfuaid:part>", "Skin to skin &amp; &lt;warm&gt; – कंगारू 😀</rdf:li>", "<rdf:li>en</rdf:li>", "<xmp:CreateDate>2026-11-25T08:00:00Z<",
	} {
		if !strings.Contains(metadata, want) {
			t.Errorf("clause 5, metadata: no %s in\n%s", want, metadata)
		}
	}

	parents := map[int]any{} // the parent tree
	nums := o.get(catalog, "/StructTreeRoot", "/ParentTree", "/Nums").([]any)
	for i := 0; i < len(nums); i += 2 {
		parents[int(nums[i].(float64))] = nums[i+1]
	}
	owned := map[string]any{} // "page mcid" or "annotation" to the element that names it
	collect(t, o, o.get(catalog, "/StructTreeRoot").(map[string]any)["/K"], catalog.(map[string]any)["/StructTreeRoot"], owned)

	annotations := 0
	for i, ref := range o.pages() {
		if tabs := o.get(ref, "/Tabs"); tabs != "/S" {
			t.Errorf("7.18.3 page %d: tab order %v", i+1, tabs)
		}
		key := int(o.get(ref, "/StructParents").(float64))
		list := o.get(parents[key]).([]any)
		content := o.stream(t, o.get(ref).(map[string]any)["/Contents"])
		if n := marked(t, content); n != len(list) {
			t.Errorf("page %d has %d stretches of content, its parent tree %d", i+1, n, len(list))
		}
		for mcid, element := range list {
			place := fmt.Sprint(ref, " ", mcid)
			if owned[place] != element {
				t.Errorf("page %d, content %d: the parent tree says %v, the elements %v", i+1, mcid, element, owned[place])
			}
			delete(owned, place)
		}
		annots, _ := o.get(ref, "/Annots").([]any)
		for _, a := range annots {
			annotations++
			element := parents[int(o.get(a, "/StructParent").(float64))]
			if element == nil || owned[a.(string)] != element || o.get(element, "/S") != "/Link" {
				t.Errorf("7.18.5: annotation %v belongs to %v in the parent tree, to %v in the elements", a, element, owned[a.(string)])
			}
			delete(owned, a.(string))
			if o.get(a, "/Contents") == nil {
				t.Errorf("7.18.5: annotation %v has no Contents", a)
			}
		}
	}
	if len(owned) > 0 || annotations != 2 {
		t.Errorf("elements name content that no page has: %v; %d annotations", owned, annotations)
	}
}

// collect walks the elements and notes what each names.
func collect(t *testing.T, o objects, element, parent any, owned map[string]any) {
	if o.get(element).(map[string]any)["/P"] != parent {
		t.Errorf("element %v does not name its parent %v", element, parent)
	}
	role, attributes := o.get(element, "/S"), o.get(element, "/A")
	switch role {
	case "/Figure":
		if o.get(element, "/Alt") == nil {
			t.Error("7.3: a figure has no alternative text")
		}
		if got := fmt.Sprint(o.get(attributes, "/BBox")); got != "[40 275.276 140 375.276]" {
			t.Errorf("figure box %v", got)
		}
	case "/TH":
		if o.get(attributes, "/Scope") != "/Column" {
			t.Error("7.5: a header cell has no scope")
		}
	}
	kids, _ := o.get(element, "/K").([]any)
	for _, k := range kids {
		page := o.get(element).(map[string]any)["/Pg"]
		switch k := k.(type) {
		case string:
			collect(t, o, k, element, owned)
		case float64:
			owned[fmt.Sprint(page, " ", k)] = element
		case map[string]any:
			if k["/Type"] == "/OBJR" {
				owned[k["/Obj"].(string)] = element
			} else {
				owned[fmt.Sprint(k["/Pg"], " ", k["/MCID"])] = element
			}
		}
	}
}

var markedContent = regexp.MustCompile(`^/\w+<</MCID (\d+)>>BDC$|^/Artifact BMC$`)

// marked checks that everything painted lies in marked content (7.1), that stretches
// do not nest, and that they are numbered from 0 on. It returns how many there are.
func marked(t *testing.T, content string) int {
	n, open := 0, false
	for line := range strings.SplitSeq(content, "\n") {
		fields := strings.Fields(line)
		if len(fields) == 0 {
			continue
		}
		switch m := markedContent.FindStringSubmatch(line); {
		case m != nil:
			if open {
				t.Errorf("%s inside marked content", line)
			}
			open = true
			if m[1] != "" {
				if m[1] != fmt.Sprint(n) {
					t.Errorf("%s: want %d", line, n)
				}
				n++
			}
		case line == "EMC":
			if !open {
				t.Error("EMC with nothing to end")
			}
			open = false
		case regexp.MustCompile(`(\bf\*?|\bS|\bB\*?|TJ)$`).MatchString(line):
			if !open {
				t.Errorf("painted outside marked content: %s", line)
			}
		}
	}
	if open {
		t.Error("marked content is left open")
	}
	return n
}

// TestReadingOrder has poppler read the structure: a link inside a paragraph, and a
// paragraph over two pages.
func TestReadingOrder(t *testing.T) {
	got := run(t, write(t, sample(t)), "pdfinfo", "-struct-text", "FILE")
	var said []string
	for line := range strings.SplitSeq(got, "\n") {
		if line = strings.TrimSpace(line); strings.HasPrefix(line, `"`) {
			said = append(said, line)
		}
	}
	want := []string{
		`"Keep your baby warm: AVATAR To"`,
		`"Hold your baby skin to skin all day and all night; see "`, `"the guide"`, `"and ask a health worker. "`,
		`"क्षत्रिय कंगारू स्तनपान, माँ का दूध "`, `""`,
		`"This paragraph goes on "`, `"over the page. "`,
		`"1."`, `"Wash your hands"`, `"Age"`, `"Feeds"`, `"1 day"`, `"8–12"`, `"Back"`,
	}
	if len(said) != len(want)+1 || strings.Join(said[:len(want)], "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(said, "\n"), strings.Join(want, "\n"))
	}
	// Poppler leaves Arabic in visual order, for it does not look at this:
	o := readObjects(t, write(t, sample(t)))
	found := false
	for _, object := range o {
		if v, _ := object["value"].(map[string]any); v["/ActualText"] == "u:الرضاعة 8 مرات (أو أكثر)" && v["/Lang"] == "u:ar" {
			found = true
		}
	}
	if !found {
		t.Error("no element holds the Arabic text in logical order")
	}
}

// TestStretches has items of one tag that follow each other share a stretch.
func TestStretches(t *testing.T) {
	latin := loadFace(t, "NotoSans-Regular")
	d := setLines([]stretch{{latin, "one", false}, {latin, "two", false}}, []stretch{{latin, "three", false}}, []stretch{{latin, "four", false}})
	d.Lang, d.Tags = "en", &page.Tag{Role: "Document"}
	a, b := d.Tags.Add("P"), d.Tags.Add("P")
	for i, tag := range []*page.Tag{a, a, b, nil} {
		d.Pages[0].Items[i].(*page.GlyphRun).Tag = tag
	}
	d.Pages[0].Items = append(d.Pages[0].Items, &page.Box{Width: 1, Height: 1})
	o := readObjects(t, write(t, d))
	content := o.stream(t, o.get(o.pages()[0]).(map[string]any)["/Contents"])
	var got []string
	for line := range strings.SplitSeq(content, "\n") {
		if strings.HasSuffix(line, "BDC") || strings.HasSuffix(line, "MC") || strings.HasSuffix(line, "TJ") || strings.HasSuffix(line, " f") {
			got = append(got, line[strings.LastIndexAny(line, "] ")+1:])
		}
	}
	if want := "0>>BDC TJ TJ EMC 1>>BDC TJ EMC BMC TJ f EMC"; strings.Join(got, " ") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, " "), want)
	}
}

// TestUntagged leaves no trace of tags in a document without a structure tree.
func TestUntagged(t *testing.T) {
	d := sample(t)
	d.Tags = nil
	o := readObjects(t, write(t, d))
	for _, key := range []string{"/MarkInfo", "/StructTreeRoot"} {
		if o.get(o.catalog(), key) != nil {
			t.Errorf("the catalog has %s", key)
		}
	}
	for _, p := range o.pages() {
		if content := o.stream(t, o.get(p).(map[string]any)["/Contents"]); strings.Contains(content, "EMC") {
			t.Error("there is marked content")
		}
	}
	if strings.Contains(o.stream(t, o.catalog().(map[string]any)["/Metadata"]), "<pdfuaid:part>") {
		t.Error("the metadata speaks of PDF/UA")
	}
}

// TestGroup puts a tagged page on a sheet: links and the boxes of figures move with it.
func TestGroup(t *testing.T) {
	places := func(d *page.Document) string {
		o := readObjects(t, write(t, d))
		var box, rect any
		for _, object := range o {
			v, _ := object["value"].(map[string]any)
			if v["/S"] == "/Figure" {
				box = o.get(v, "/A", "/BBox")
			}
			if v["/Subtype"] == "/Link" && v["/Dest"] == nil {
				rect = v["/Rect"]
			}
		}
		return fmt.Sprint(box, rect)
	}
	d := sample(t)
	if got, want := places(d), "[40 275.276 140 375.276] [152.222 485.876 212.222 497.876]"; got != want {
		t.Errorf("alone: %s, want %s", got, want)
	}
	d.Pages[0].Items = []page.Item{&page.Group{X: measure.Pt(100), Y: measure.Pt(-50), Items: d.Pages[0].Items}}
	if got, want := places(d), "[140 325.276 240 425.276] [252.222 535.876 312.222 547.876]"; got != want {
		t.Errorf("in a group: %s, want %s", got, want)
	}
}
