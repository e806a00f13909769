package exchange

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/finding"
	"wardleaf/internal/load"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// handed is a hand-back of a job after a translator has set some targets, by block, as
// tagged text. Blocks set are in state translated; a target of "=" confirms the one there.
func handed(t *testing.T, p *pack.Pack, j *Job, format string, targets map[string]string, force ...string) (*Result, []finding.Finding) {
	t.Helper()
	for i := range j.Modules {
		for k := range j.Modules[i].Items {
			it := &j.Modules[i].Items[k]
			text, set := targets[it.ID]
			if !set {
				continue
			}
			delete(targets, it.ID)
			it.State = "translated"
			if text != "=" {
				it.Target = parseTagged(text)
			}
		}
	}
	if len(targets) > 0 {
		t.Fatalf("not in the job: %v", targets)
	}
	for _, f := range formats {
		if f.name == format {
			r, fs := f.read(source.New(f.name, f.write(j)))
			if r == nil {
				t.Fatal(fs)
			}
			return Handback(p, r, force)
		}
	}
	t.Fatal(format)
	return nil, nil
}

// reread puts changes into a pack as if they had been written to its files.
func reread(t *testing.T, p *pack.Pack, res *Result) {
	t.Helper()
	for _, c := range res.Changes {
		module, name, _ := strings.Cut(c.Path, "/")
		lang, ext, _ := strings.Cut(name, ".")
		m := p.Modules[slices.IndexFunc(p.Modules, func(m *pack.Module) bool { return m.ID == module })]
		if ext == "md" {
			l, wrong := load.Lesson(module, lang, c.Data)
			if l == nil || len(wrong) > 0 {
				t.Fatal(wrong)
			}
			m.Lessons[lang] = l
			continue
		}
		b := &pack.Basis{File: source.New(c.Path, c.Data), Units: map[string]pack.BasisUnit{}}
		for line := range strings.Lines(string(c.Data)) {
			if id, digest, ok := strings.Cut(strings.TrimSpace(line), " "); ok && id != "#" {
				digest, own, _ := strings.Cut(digest, " ")
				b.Units[id] = pack.BasisUnit{Digest: digest, Own: own}
			}
		}
		m.Basis[lang] = b
	}
}

func english(t *testing.T, p *pack.Pack, old, new string) {
	t.Helper()
	m := p.Modules[0]
	b := m.Lessons["en"].File.Bytes
	if !bytes.Contains(b, []byte(old)) {
		t.Fatalf("the lesson does not hold %q", old)
	}
	l, wrong := load.Lesson(m.ID, "en", bytes.Replace(b, []byte(old), []byte(new), 1))
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	m.Lessons["en"] = l
}

func change(res *Result, path string) string {
	for _, c := range res.Changes {
		if c.Path == path {
			return string(c.Data)
		}
	}
	return ""
}

// TestOneBlock changes the bytes of one block and of one line of the basis, and nothing else.
func TestOneBlock(t *testing.T) {
	for _, f := range formats {
		p := packOf(t, damagedSource, map[string]string{"hi": damagedTarget})
		english(t, p, "Rest,\\\n   and smile.", "Rest,\\\n   smile, and *wait*.")
		j := job(p, "hi", false)
		if j.Count() != 1 {
			t.Fatalf("%d blocks", j.Count())
		}
		res, fs := handed(t, p, j, f.name, map[string]string{"steps.2.1": "आराम * करें,<1/> मुस्कुराएँ <2>रुकें</2>।"})
		if res == nil || len(fs) > 0 {
			t.Fatal(fs)
		}
		want := strings.Replace(damagedTarget, "आराम करें,\\\n   और मुस्कुराएँ।", "आराम \\* करें,\\\n   मुस्कुराएँ *रुकें*।", 1)
		if got := change(res, "wrapping/hi.md"); got != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
		if res.Changes[0].Path != "wrapping/hi.md" || res.Changes[1].Path != "wrapping/hi.basis" || len(res.Changes) != 2 {
			t.Errorf("the basis must be written last: %+v", res.Changes)
		}
		if m := res.Modules[0]; m.Taken != 1 || m.Confirmed+m.Left+m.Unfinished != 0 {
			t.Errorf("%+v", m)
		}
		old := string(p.Modules[0].Basis["hi"].File.Bytes)
		differ := 0
		for i, line := range strings.Split(change(res, "wrapping/hi.basis"), "\n") {
			if line != strings.Split(old, "\n")[i] {
				differ++
			}
		}
		if differ != 1 {
			t.Errorf("%d lines of the basis changed", differ)
		}
		reread(t, p, res)
		if n := job(p, "hi", false).Count(); n != 0 {
			t.Errorf("%d blocks are left to translate", n)
		}
		// The same file once more says and changes nothing.
		res, fs = handed(t, p, j, f.name, map[string]string{})
		if res == nil || len(fs) > 0 || len(res.Changes) > 0 {
			t.Errorf("again: %+v %+v", res, fs)
		}
	}
}

// TestConfirmed writes the basis and not a word.
func TestConfirmed(t *testing.T) {
	p := packOf(t, damagedSource, map[string]string{"hi": damagedTarget})
	english(t, p, "in.", "in well.")
	res, fs := handed(t, p, job(p, "hi", false), "job.xlf", map[string]string{"steps.1.1": "="})
	if res == nil || len(fs) > 0 || len(res.Changes) != 1 || res.Modules[0].Confirmed != 1 || res.Changes[0].Path != "wrapping/hi.basis" {
		t.Fatalf("%+v %+v", res, fs)
	}
	reread(t, p, res)
	if n := job(p, "hi", false).Count(); n != 0 {
		t.Errorf("%d blocks are left", n)
	}
	// What the source has gained is not confirmed away.
	english(t, p, "in well.", "in well for [at least 40 seconds](number:wash).")
	res, fs = handed(t, p, job(p, "hi", false), "job.xlf", map[string]string{"steps.1.1": "="})
	if res != nil || len(fs) != 1 || fs[0].Rule != TagLost {
		t.Errorf("%+v %+v", res, fs)
	}
}

// TestMeanwhile changes the pack between hand-off and hand-back.
func TestMeanwhile(t *testing.T) {
	for _, f := range formats {
		p := packOf(t, damagedSource, map[string]string{"hi": damagedTarget})
		j := job(p, "hi", true)
		targets := func() map[string]string {
			return map[string]string{"title": "बाँधना", "steps.heading": "चरण"}
		}
		// The source of a block has changed: that block stays, the other is taken.
		english(t, p, "# Wrapping", "# Wrapping well")
		res, fs := handed(t, p, j, f.name, targets())
		if res == nil || len(fs) != 1 || fs[0].Rule != Stale || fs[0].Level != finding.Warning {
			t.Fatalf("%+v", fs)
		}
		if got := change(res, "wrapping/hi.md"); got != strings.Replace(damagedTarget, "कदम", "चरण", 1) {
			t.Errorf("got\n%s", got)
		}
		// Somebody has changed the translation: that block stays unless it is forced.
		p = packOf(t, damagedSource, map[string]string{"hi": damagedTarget})
		j = job(p, "hi", true)
		p.Modules[0].Lessons["hi"], _ = load.Lesson("wrapping", "hi", []byte(strings.Replace(damagedTarget, "# पट्टी", "# लपेटना", 1)))
		res, fs = handed(t, p, j, f.name, targets())
		if res == nil || len(fs) != 1 || fs[0].Rule != Newer || !strings.Contains(fs[0].Mend, "--force wrapping/title") {
			t.Fatalf("%+v", fs)
		}
		if got := change(res, "wrapping/hi.md"); !strings.HasPrefix(got, "# लपेटना\n") || !strings.Contains(got, "चरण") {
			t.Errorf("got\n%s", got)
		}
		res, fs = handed(t, p, j, f.name, targets(), "wrapping/title")
		if res == nil || len(fs) != 0 || !strings.HasPrefix(change(res, "wrapping/hi.md"), "# बाँधना\n") {
			t.Errorf("%+v", fs)
		}
		if res, fs = handed(t, p, j, f.name, targets(), "wrapping/tile"); res != nil || len(fs) == 0 {
			t.Error("a block that is not in the file is forced")
		}
	}
}

// TestStepAdded puts a step into the source: only that step goes out, and the
// translation is built anew around it, in its own words.
func TestStepAdded(t *testing.T) {
	for _, f := range formats {
		p := packOf(t, damagedSource, map[string]string{"hi": damagedTarget})
		english(t, p, "2. Rest,", "2. Look at the face, **always**.\n3. Rest,")
		j := job(p, "hi", false)
		if j.Count() != 1 || j.Modules[0].Items[0].ID != "steps.2.1" || len(j.Modules[0].Items[0].Target) > 0 {
			t.Fatalf("goes out: %+v", j.Modules)
		}
		res, fs := handed(t, p, j, f.name, map[string]string{"steps.2.1": "चेहरा <1>हमेशा</1> देखें।"})
		if res == nil || len(fs) > 0 {
			t.Fatal(fs)
		}
		want := strings.Replace(damagedTarget, "2. आराम", "2. चेहरा **हमेशा** देखें।\n3. आराम", 1)
		if got := change(res, "wrapping/hi.md"); got != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
		reread(t, p, res)
		if n := job(p, "hi", false).Count(); n != 0 {
			t.Errorf("%d blocks are left", n)
		}
		// And takes it out again.
		english(t, p, "2. Look at the face, **always**.\n3. Rest,", "2. Rest, please,")
		res, fs = handed(t, p, job(p, "hi", false), f.name, map[string]string{"steps.2.1": "कृपया आराम करें,<1/>और मुस्कुराएँ।"})
		if res == nil || len(fs) > 0 || res.Modules[0].Dropped != 1 {
			t.Fatalf("%+v %+v", res, fs)
		}
		if got := change(res, "wrapping/hi.md"); strings.Contains(got, "चेहरा") || !strings.Contains(got, "2. कृपया") {
			t.Errorf("got\n%s", got)
		}
	}
}

// TestNewLesson makes a lesson only when every block of it is there.
func TestNewLesson(t *testing.T) {
	p := packOf(t, damagedSource, nil)
	some := map[string]string{"title": "शीर्षक", "lead.1": "<2>अभी</2> <1>40 सेकंड</1> धोएँ।", "steps.heading": "कदम"}
	res, fs := handed(t, p, job(p, "hi", false), "job.xlf", some)
	if res == nil || len(res.Changes) > 0 || len(fs) != 1 || fs[0].Rule != Partial || fs[0].Level != finding.Warning {
		t.Fatalf("%+v %+v", res, fs)
	}
	all := map[string]string{
		"title": "शीर्षक", "lead.1": "<2>अभी</2> <1>40 सेकंड</1> धोएँ।", "steps.heading": "कदम # 1",
		"steps.1.1": "1. पट्टी दबाएँ", "steps.2.1": "<1/>- मुस्कुराएँ",
	}
	res, fs = handed(t, p, job(p, "hi", false), "job.po", all)
	if res == nil || len(fs) > 0 || !res.Modules[0].Made {
		t.Fatalf("%+v %+v", res, fs)
	}
	want := "# शीर्षक\n\n**अभी** [40 सेकंड](number:wash) धोएँ।\n\n## कदम \\# 1 {.steps}\n\n1. 1\\. पट्टी दबाएँ\n2. \\\n   \\- मुस्कुराएँ\n"
	if got := change(res, "wrapping/hi.md"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// TestUpdated keeps every byte of a file but the digests of the blocks that were taken.
func TestUpdated(t *testing.T) {
	p := packOf(t, damagedSource, map[string]string{"hi": damagedTarget})
	j := job(p, "hi", true)
	j.Modules[0].Items[0].Target = parseTagged("नया")
	text := strings.Replace(string(j.XLIFF()), `<unit id="title"`, `<unit  tool:x='1' xmlns:tool="urn:example" id="title"`, 1)
	r, fs := ReadXLIFF(source.New("job.xlf", []byte(text)))
	if r == nil {
		t.Fatal(fs)
	}
	res, fs := Handback(p, r, nil)
	if res == nil {
		t.Fatal(fs)
	}
	old := j.Modules[0].Items[0].TargetDigest
	reread(t, p, res)
	now := job(p, "hi", true).Modules[0].Items[0].TargetDigest
	if got := string(res.Updated(r)); old == now || got != strings.Replace(text, old, now, 1) {
		t.Errorf("got\n%s", got)
	}
}

// TestTagged writes and reads words that look like tags.
func TestTagged(t *testing.T) {
	for _, words := range []string{"<1>", "&lt;1>", "&amp;lt;1>", "a<b", "<12/>", "</t3>", "<0>", "&amp;", "<1/", "</1/>"} {
		in := Tagged{{Kind: Words, Text: words}, {Kind: Open, Text: "1"}, {Kind: Words, Text: words}, {Kind: Close, Text: "1"}, {Kind: Lone, Text: "t2"}}
		if out := parseTagged(in.String()); fmt.Sprint(kinds(out)) != fmt.Sprint(kinds(in)) || out.String() != in.String() {
			t.Errorf("%q: %q became %+v", words, in.String(), out)
		}
	}
	for in, want := range map[string]string{
		"<1> a </1>b":        "<1>a</1> b",
		"  a  <2/>  b  ":     "a <2/> b",
		"a<1> <2> b</2></1>": "a <1><2>b</2></1>",
		"a <1> b</1>":        "a <1>b</1>",
		"<1> </1>":           "<1></1>",
		"a\u00a0 b\t\nc":     "a\u00a0 b c",
	} {
		if got := parseTagged(in).String(); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}

func kinds(t Tagged) []string {
	var out []string
	for _, r := range t {
		out = append(out, fmt.Sprint(r.Kind, r.Text))
	}
	return out
}
