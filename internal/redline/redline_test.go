package redline_test

import (
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"wardleaf/internal/check"
	"wardleaf/internal/finding"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/redline"
)

// files are the small pack.
func files(t *testing.T) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	root := os.DirFS("../../testdata/packs/small")
	err := fs.WalkDir(root, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := fs.ReadFile(root, path)
		out[path] = &fstest.MapFile{Data: b}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// edit replaces a text of a file, or writes the file when old is empty.
func edit(t *testing.T, f fstest.MapFS, name, old, now string) {
	t.Helper()
	if old == "" {
		f[name] = &fstest.MapFile{Data: []byte(now)}
		return
	}
	s := string(f[name].Data)
	if !strings.Contains(s, old) {
		t.Fatalf("%s does not hold %q", name, old)
	}
	f[name] = &fstest.MapFile{Data: []byte(strings.Replace(s, old, now, 1))}
}

func side(t *testing.T, f fstest.MapFS) redline.Side {
	t.Helper()
	p, found, err := load.Pack(f, "small")
	if err != nil {
		t.Fatal(err)
	}
	s := redline.Side{Pack: p, Unread: map[string]bool{}}
	for _, x := range found {
		if x.Level == finding.Error && !strings.HasSuffix(x.Rule, "-missing") {
			s.Unread[x.Place.File.Path] = true
		}
	}
	return s
}

// told is a change on one line.
func told(lang string, c *redline.Change) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %s", c.File, c.Kind)
	if c.Place.Number > 0 {
		fmt.Fprintf(&b, " at %s %d.%d", c.Place.Role, c.Place.Number, c.Place.Option)
	}
	if c.Kind == redline.Moved {
		fmt.Fprintf(&b, " from %d.%d", c.From.Number, c.From.Option)
	}
	if c.Place.Key != "" {
		b.WriteString(" " + c.Place.Key)
	}
	for _, r := range c.Words {
		switch r.Op {
		case redline.Struck:
			b.WriteString(" -" + r.Text)
		case redline.Added:
			b.WriteString(" +" + r.Text)
		}
	}
	fmt.Fprintf(&b, " %v", c.Topics)
	for _, m := range c.Marks {
		fmt.Fprintf(&b, " %s:%s>%s", m.Topic, m.Was, m.Now)
	}
	if len(c.Unfollowed) > 0 {
		fmt.Fprintf(&b, " not in %s", strings.Join(c.Unfollowed, ","))
	}
	if c.Alone {
		b.WriteString(" alone")
	}
	if len(c.Used) > 0 {
		fmt.Fprintf(&b, " used in %s", strings.Join(c.Used, ","))
	}
	return b.String()
}

func all(r *redline.Redline) []string {
	var out []string
	for i := range r.Pack {
		out = append(out, told("", &r.Pack[i]))
	}
	for _, m := range r.Modules {
		for i := range m.Record {
			out = append(out, told("", &m.Record[i]))
		}
		for _, l := range m.Lessons {
			for i := range l.Changes {
				out = append(out, told(l.Lang, &l.Changes[i]))
			}
		}
	}
	return out
}

const (
	en, ar, record = "holding/en.md", "holding/ar.md", "holding/module.yaml"
	step1          = "1. Hold the baby upright, in [skin-to-skin contact](term:skin-to-skin).\n\n   ![Hold the baby upright on your chest](figures/hold.svg)\n"
	step2          = "2. Keep the baby at [36.5 to 37.5\u00a0°C](number:normal-temperature) ([WHO, 2003](source:mnp-2003)).\n"
)

// What a reviewer must be told, case by case.
func TestCompare(t *testing.T) {
	type change struct{ file, old, now string }
	for _, k := range []struct {
		name    string
		changes []change
		want    []string
	}{
		{"nothing", nil, nil},
		{"lines broken anew", []change{{en, "with a trained health worker, who decides.", "with a trained\n  health worker, who decides."}}, nil},
		{"a word of prose", []change{{en, "Hold your baby close.", "Hold your baby near."}},
			[]string{"holding/en.md changed -close +near [] not in ar"}},
		{"a number", []change{{en, "36.5 to 37.5", "36.0 to 37.5"}},
			[]string{"holding/en.md changed at steps 2.0 -36.5 +36.0 [number] number:36.5>36.0 not in ar"}},
		{"a range turned round", []change{{en, "36.5 to 37.5", "37.5 to 36.5"}},
			[]string{"holding/en.md changed at steps 2.0 -36.5 +37.5 -37.5 +36.5 [number] number:36.5, 37.5, 2003>37.5, 36.5, 2003 not in ar"}},
		{"a number in its own digits, in a translation alone", []change{{ar, "٣٦٫٥", "٣٦٫٠"}},
			[]string{"holding/ar.md changed at steps 2.0 -٣٦٫٥ +٣٦٫٠ [number] number:٣٦٫٥>٣٦٫٠ alone"}},
		{"a link to another number", []change{{en, "number:normal-temperature", "number:other"}},
			[]string{"holding/en.md changed at steps 2.0 [number] number:number:normal-temperature>number:other not in ar"}},
		{"another link", []change{{en, "term:skin-to-skin", "term:other"}},
			[]string{"holding/en.md changed at steps 1.0 [critical-step link] link:term:skin-to-skin>term:other not in ar"}},
		{"a caution taken out", []change{{en, "- At a warning sign call [the ward phone](facility:ward-phone) now.\n", ""}},
			[]string{"holding/en.md removed at caution 2.0 -At a warning sign call the ward phone now. [caution] not in ar"}},
		{"a caution added", []change{{en, "- At a warning", "- Never sleep like this.\n- At a warning"}},
			[]string{"holding/en.md added at caution 2.0 +Never sleep like this. [negation caution] not in ar"}},
		{"the mark of the caution lost", []change{{en, " {.caution}", ""}},
			[]string{"holding/en.md changed [caution part] part:caution> not in ar"}},
		{"a negation in a reason", []change{{en, "> Upright keeps the airway open.", "> Lying flat does not keep the airway open."}},
			[]string{"holding/en.md changed at quiz 1.0 -Upright keeps +Lying flat does not keep [negation] not in ar"}},
		{"a critical step turned round", []change{{en, "Hold the baby upright, in", "Do not hold the baby upright, in"}},
			[]string{"holding/en.md changed at steps 1.0 -Hold +Do not hold [negation critical-step] not in ar"}},
		{"a step taken out and two put in", []change{{en, step1 + "\n" + step2, "1. Wash your hands.\n2. Sit.\n3. " + step2[3:]}}, []string{
			"holding/en.md removed at steps 1.0 -Hold the baby upright, in skin-to-skin contact. [critical-step] not in ar",
			"holding/en.md removed at steps 1.0 -Hold the baby upright on your chest [critical-step figure] not in ar",
			"holding/en.md added at steps 1.0 +Wash your hands. [critical-step] not in ar",
			"holding/en.md added at steps 2.0 +Sit. [] not in ar",
		}},
		{"the right answer moved", []change{{en, "- [x] Upright\n   - [ ] Lying flat", "- [ ] Upright\n   - [x] Lying flat"}}, []string{
			"holding/en.md changed at quiz 1.1 [right-answer] right-answer:yes> not in ar",
			"holding/en.md changed at quiz 1.2 [right-answer] right-answer:>yes not in ar",
		}},
		{"answers swapped", []change{{en, "- [x] Upright\n   - [ ] Lying flat", "- [ ] Lying flat\n   - [x] Upright"}},
			[]string{"holding/en.md moved at quiz 1.2 from 1.1 [right-answer] not in ar"}},
		{"steps swapped, the record left as it was", []change{{en, step1 + "\n" + step2, "1. " + step2[3:] + "2. " + step1[3:]}}, []string{
			"holding/en.md moved at steps 1.0 from 2.0 [critical-step] critical-step:>yes not in ar",
			"holding/en.md changed at steps 2.0 [critical-step] critical-step:yes> not in ar",
		}},
		{"steps that are numbered no more", []change{{en, step1 + "\n" + step2, "- " + step1[3:] + "\n- " + step2[3:]}}, []string{
			"holding/en.md changed at steps 1.0 [critical-step part] critical-step:yes> part:step>item not in ar",
			"holding/en.md changed at steps 2.0 [part] part:step>item not in ar",
		}},
		{"another critical step", []change{{record, "critical-steps: [1]", "critical-steps: [2]"}}, []string{
			"holding/module.yaml changed critical-steps -1 +2 [critical-step record]",
			"holding/en.md changed at steps 1.0 [critical-step] critical-step:yes>",
			"holding/en.md changed at steps 2.0 [critical-step] critical-step:>yes",
			"holding/ar.md changed at steps 1.0 [critical-step] critical-step:yes>",
			"holding/ar.md changed at steps 2.0 [critical-step] critical-step:>yes",
		}},
		{"a warning sign", []change{{en, "**Blue lips**: call", "**Blue lips** or face: call"}},
			[]string{"holding/en.md changed at warning-signs 1.0 + or face [warning-sign] not in ar"}},
		{"bold type lost", []change{{en, "**Blue lips**", "Blue lips"}},
			[]string{"holding/en.md changed at warning-signs 1.0 [warning-sign emphasis] emphasis:Blue lips> not in ar"}},
		{"a picture drawn anew", []change{{"holding/figures/hold.svg", "</svg>", `<path d="M1 1L2 2" fill="none" stroke="#000" stroke-width="1"/></svg>`}}, []string{
			"holding/en.md changed at steps 1.0 [critical-step figure] figure:holding/figures/hold.svg>holding/figures/hold.svg",
			"holding/ar.md changed at steps 1.0 [critical-step figure] figure:holding/figures/hold.svg>holding/figures/hold.svg",
		}},
		{"the amount of a number", []change{{"numbers.yaml", "36.5", "36.0"}},
			[]string{"numbers.yaml changed normal-temperature: low -36.5 +36.0 [number record] number:36.5>36.0 used in holding"}},
		{"the ward's own milk", []change{{"facility.yaml", "name:", "feeding-table:\n  dated: 2026-03-01\n  bands: [{from: 1500, to: 1749, feeds-a-day: 8, ml-per-feed: [12, 18]}]\nname:"}},
			[]string{"facility.yaml added feeding-table +dated 2026-03-01; 1500 to 1749 g feeds-a-day 8, ml-per-feed 12, 18 [number record]"}},
		{"what a caution must say", []change{{"pack.yaml", "modules: [holding]", "modules: [holding]\ncaution-points: {local-protocol: {en: [local protocol]}}"}},
			[]string{"pack.yaml added caution-points: local-protocol en +local protocol [caution record]"}},
		{"a warning silenced", []change{{"pack.yaml", "modules: [holding]", "modules: [holding]\nsilenced: [{rule: sentence-long, reason: agreed, until: 2027-01-01}]"}},
			[]string{"pack.yaml added silenced +sentence-long until 2027-01-01: agreed [record]"}},
		{"review dates", []change{{record, "due: 2027-11-25", "due: 2028-11-25"}},
			[]string{"holding/module.yaml changed due -2027 +2028 [record]"}},
		{"a translation gone", []change{{"pack.yaml", "languages: [en, ar]", "languages: [en]"}},
			[]string{"pack.yaml changed languages -, ar [record]", "holding/ar.md removed [whole]"}},
		{"a file that is no text", []change{{ar, "", "caf\xe9"}}, []string{"holding/ar.md unread [whole]"}},
		{"numbers that are no YAML", []change{{"numbers.yaml", "", "a: [b"}}, []string{"numbers.yaml unread [whole]"}},
	} {
		f := files(t)
		before := side(t, f)
		for _, c := range k.changes {
			edit(t, f, c.file, c.old, c.now)
		}
		r := redline.Compare(before, side(t, f), negations(t))
		if got := all(r); !slices.Equal(got, k.want) {
			t.Errorf("%s:\n  %s\nwant\n  %s", k.name, strings.Join(got, "\n  "), strings.Join(k.want, "\n  "))
		}
		if r.Empty() != (len(k.want) == 0) {
			t.Errorf("%s: empty is %v", k.name, r.Empty())
		}
	}
}

// Both ways, a pack and itself: nothing. And old to new finds as much as new to old.
func TestCompareLaws(t *testing.T) {
	content, _, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil {
		t.Fatal(err)
	}
	whole := redline.Side{Pack: content}
	if r := redline.Compare(whole, whole, negations(t)); !r.Empty() {
		t.Errorf("the starter pack differs from itself: %v", all(r))
	}
	small := side(t, files(t))
	there, back := redline.Compare(small, whole, negations(t)), redline.Compare(whole, small, negations(t))
	if len(all(there)) != len(all(back)) {
		t.Errorf("%d changes there, %d back", len(all(there)), len(all(back)))
	}
}

// negations counts them by what the program knows of languages.
func negations(t testing.TB) func(lang, text string) (int, bool) {
	t.Helper()
	c, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	return check.Negations(c)
}
