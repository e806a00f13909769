package exchange

import (
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"
	"unicode"

	"wardleaf/internal/finding"
	"wardleaf/internal/load"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
	"wardleaf/internal/translate"
)

// packOf is a pack with one module, "wrapping", in English, and in the languages of
// lessons. A basis that says that each follows the source is put beside them.
func packOf(t testing.TB, english string, lessons map[string]string) *pack.Pack {
	t.Helper()
	fsys := fstest.MapFS{
		"pack.yaml":            {Data: []byte("title: {en: Test}\nversion: \"1\"\nsource-language: en\nlanguages: [en, hi, ar]\nmodules: [wrapping]\n")},
		"facility.yaml":        {Data: []byte("name: {en: Ward}\n")},
		"numbers.yaml":         {Data: []byte("warm:\n  about: armpit\n  low: 36.5\n  high: 37.5\n  unit: °C\n  source: manual\n  place: page 1\n  status: published\nwash:\n  amount: 40\n  unit: seconds\n  compare: at-least\n  status: common-practice\n")},
		"sources.yaml":         {Data: []byte("manual:\n  author: Author\n  title: Manual\n  year: 2003\n")},
		"terms.yaml":           {Data: []byte("wrap:\n  about: a cloth\n  en: wrap\n  hi: पट्टी\n")},
		"wrapping/module.yaml": {Data: []byte("minutes: 10\ncritical-steps: [1]\naudience: [families]\n")},
		"wrapping/en.md":       {Data: []byte(english)},
	}
	for lang, text := range lessons {
		fsys["wrapping/"+lang+".md"] = &fstest.MapFile{Data: []byte(text)}
	}
	p, _, err := load.Pack(fsys, "pack")
	if err != nil {
		t.Fatal(err)
	}
	for lang := range lessons {
		follow(p, lang)
	}
	return p
}

// follow records that the translations follow the source as it stands.
func follow(p *pack.Pack, lang string) {
	for _, m := range p.Modules {
		if m.Lessons[lang] == nil || m.Lessons[p.Source] == nil {
			continue
		}
		b := &pack.Basis{Units: map[string]pack.BasisUnit{}, File: source.New(m.ID+"/"+lang+".basis", nil)}
		pairing := translate.Paired(p, m, lang)
		for _, pair := range pairing.Followed() {
			if pair.Target != nil {
				b.Units[pair.Source.ID] = pack.BasisUnit{Digest: pair.Digest, Own: translate.UnitDigest(*pair.Target)}
			}
		}
		b.File.Bytes = translate.BasisFile(pairing.Followed())
		m.Basis[lang] = b
	}
}

var day = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

func job(p *pack.Pack, lang string, all bool) *Job {
	return Handoff(Order{Pack: p, Lang: lang, Modules: p.Modules, All: all, Day: day})
}

// formats are the two formats, written and read.
var formats = []struct {
	name  string
	write func(*Job) []byte
	read  func(*source.File) (*Return, []finding.Finding)
}{
	{"job.xlf", (*Job).XLIFF, ReadXLIFF},
	{"job.po", (*Job).PO, ReadPO},
}

// back reads a file and hands it back.
func back(t testing.TB, p *pack.Pack, name string, b []byte) (*Return, *Result, []finding.Finding) {
	t.Helper()
	read := ReadXLIFF
	if strings.HasSuffix(name, ".po") {
		read = ReadPO
	}
	r, fs := read(source.New(name, b))
	if r == nil {
		return nil, nil, fs
	}
	res, fs := Handback(p, r, nil)
	return r, res, fs
}

// untouched holds a job to two laws: what is handed back as it went out changes no
// byte of the pack, and every target comes back as it went.
func untouched(t testing.TB, p *pack.Pack, j *Job) {
	t.Helper()
	for _, f := range formats {
		if j.Count() == 0 {
			continue
		}
		b := f.write(j)
		r, res, fs := back(t, p, f.name, b)
		if res == nil || len(fs) > 0 {
			t.Fatalf("%s: %+v\n%s", f.name, fs, b)
		}
		for _, c := range res.Changes {
			t.Errorf("%s: %s would change:\n%s\n%s", f.name, c.Path, c.Data, b)
		}
		i := 0
		for _, m := range j.Modules {
			for _, it := range m.Items {
				u := r.Units[i]
				i++
				if u.Module != m.ID || u.ID != it.ID || !u.Source.Same(it.Source) || !u.Target.Same(it.Target) || u.SourceDigest != it.SourceDigest || u.TargetDigest != it.TargetDigest {
					t.Errorf("%s: went out as\n%+v\ncame back as\n%+v", f.name, it, u)
				}
			}
		}
	}
}

func TestUntouchedStarter(t *testing.T) {
	p, fs, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil || len(fs) > 0 {
		t.Fatal(err, fs)
	}
	for _, lang := range []string{"hi", "ar"} {
		j := job(p, lang, true)
		if j.Count() < 500 {
			t.Errorf("%s: only %d blocks", lang, j.Count())
		}
		untouched(t, p, j)
	}
}

// copied sets every target of a job to its source, and says that it is done.
func copied(j *Job) {
	for i := range j.Modules {
		for k := range j.Modules[i].Items {
			it := &j.Modules[i].Items[k]
			it.Target, it.State = it.Source, "translated"
		}
	}
}

// remade holds a lesson to a law: translated into itself, it comes back as a lesson
// of another language that says the same block by block.
func remade(t testing.TB, p *pack.Pack) {
	t.Helper()
	for _, f := range formats {
		j := job(p, "ar", false)
		if j.Count() == 0 {
			return
		}
		copied(j)
		b := f.write(j)
		_, res, fs := back(t, p, f.name, b)
		if res == nil {
			if !slices.ContainsFunc(fs, func(f finding.Finding) bool { return f.Rule != BadText }) {
				continue // said, and nothing written
			}
			t.Fatalf("%s: %+v\n%s", f.name, fs, b)
		}
		for _, m := range p.Modules {
			i := slices.IndexFunc(res.Changes, func(c Change) bool { return c.Path == m.ID+"/ar.md" })
			if i < 0 {
				t.Fatalf("%s: no lesson was made: %+v", f.name, fs)
			}
			l, wrong := load.Lesson(m.ID, "ar", res.Changes[i].Data)
			if len(wrong) > 0 {
				t.Fatal(wrong)
			}
			old, now := translate.Units(m.Lessons["en"]), translate.Units(l)
			if len(old) != len(now) {
				t.Fatalf("%d blocks became %d\n%s", len(old), len(now), res.Changes[i].Data)
			}
			for k := range old {
				c := newCoded(translate.Pair{Source: old[k], Target: &now[k]}, m.Lessons["en"], l)
				a, b := said(trimBreaks(c.source, c.codes), c.codes), said(trimBreaks(c.target, c.codes), c.codes)
				if a != b || old[k].ID != now[k].ID {
					t.Errorf("%s: %q became %q", old[k].ID, a, b)
				}
			}
		}
	}
}

func TestStarterRemade(t *testing.T) {
	p, _, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range p.Modules {
		delete(m.Lessons, "ar")
		delete(m.Basis, "ar")
	}
	remade(t, p)
}

// hard is a lesson with every kind of block and inline, and words that look like marks.
const hard = `# Wrapping \*safely\* & \#1 {.x}

1\. is no list; \- nor is this, 2 > 1, a_b_c \_d\_, \[x\], \<b>, \&amp; and C:\\d, <1> and &lt;1&gt; &amp;lt;2>, !\[no]

- [ ] Hold [at least 40 seconds](number:wash "x"), ![small](figures/a.svg) **now**, *soft* ` + "`code`" + `,\
  then [36.5 to 37.5 °C](<number:warm>) ([manual](source:manual))!
- <https://example.org/a?b=c> [empty]() [ref][r] ***both*** **a *b* c**

## Steps {.steps}

1. Wash

   ![The \[hand\] *there*](figures/b.svg "t")

   > quoted\
   > lines

| a \| b | **c** |
|---|---|
| [wrap](term:wrap) | |

[r]: https://example.org/r
`

func TestHardLesson(t *testing.T) {
	p := packOf(t, hard, map[string]string{"hi": hard})
	untouched(t, p, job(p, "hi", true))
	remade(t, packOf(t, hard, nil))
	crlf := strings.ReplaceAll(hard, "\n", "\r\n")
	remade(t, packOf(t, crlf, nil))
	j := job(p, "hi", true)
	notes := ""
	for _, it := range j.Modules[0].Items {
		for _, n := range it.Notes {
			notes += it.ID + " " + n.Category + ": " + n.Text + "\n"
		}
	}
	for _, want := range []string{
		"steps.1.1 context: This step must never be missed",
		"number wash: at least 40 seconds", "number warm: 36.5 to 37.5 °C", `term wrap: "wrap", approved translation "पट्टी"`,
	} {
		if !strings.Contains(notes, want) {
			t.Errorf("no note says %q:\n%s", want, notes)
		}
	}
}

// FuzzRoundTrip takes any two texts as a lesson and its translation, and holds them
// to the laws of untouched and remade.
func FuzzRoundTrip(f *testing.F) {
	f.Add(hard, hard)
	f.Add("# A\n\nb **c** [d](number:wash)\n", "# A\n\n**ग** [घ](number:wash) *च*\n")
	f.Add("- [ ] a\n- b\\\n  c\n", "- [x] a\n- b  \n  c\n")
	f.Fuzz(func(t *testing.T, english, hindi string) {
		for _, s := range []string{english, hindi} {
			if strings.ContainsFunc(s, func(r rune) bool { return !xmlChar(r) || r == unicode.ReplacementChar }) {
				return
			}
		}
		p := packOf(t, english, map[string]string{"hi": hindi})
		if p.Modules[0].Lessons["en"] == nil {
			return
		}
		untouched(t, p, job(p, "hi", true))
		delete(p.Modules[0].Basis, "hi")
		untouched(t, p, job(p, "hi", true))
		remade(t, p)
	})
}
