package check

import (
	"fmt"
	"hash/fnv"
	"io/fs"
	"math/rand/v2"
	"os"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"wardleaf/internal/finding"
	"wardleaf/internal/load"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// TestSeededErrors plants mistakes in the starter pack, one at a time, and counts how
// many are found as warnings or errors. The kinds are those that reviews of translated
// leaflets and handbooks find (a number changed, a "not" lost, a step left out, a wrong
// key in a quiz) and those that version control brings (a stale translation, a forged
// sign-off). The same seed plants the same mistakes.
//
// A mistake in a file counts as found when a finding is there that was not there before.
// "By sense" leaves out the rules that only notice that a block changed since it was
// last compared with its source, whatever the change.
func TestSeededErrors(t *testing.T) {
	if testing.Short() && os.Getenv("CI") != "true" {
		t.Skip("takes a minute")
	}
	root := os.DirFS("../../content")
	whole, found, err := load.Pack(root, "content")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range append(found, Run(whole, today, languages(t))...) {
		if f.Level == finding.Error {
			t.Errorf("the clean pack has an error: %s %s: %s", place(f), f.Rule, f.What)
		}
	}
	var jobs []plot
	for _, m := range whole.Modules {
		for _, lang := range whole.Languages {
			jobs = append(jobs, plot{root, whole, m, lang})
		}
	}
	results := make([]map[string]*score, len(jobs))
	var wg sync.WaitGroup
	next := make(chan int)
	catalog := languages(t)
	for range runtime.NumCPU() {
		wg.Go(func() {
			for i := range next {
				results[i] = jobs[i].run(func(p *pack.Pack) []finding.Finding { return Run(p, today, catalog) })
			}
		})
	}
	for i := range jobs {
		next <- i
	}
	close(next)
	wg.Wait()
	total := map[string]*score{}
	byLang, byBoth := map[string]*score{}, map[string]*score{}
	for i, r := range results {
		for kind, s := range r {
			add(total, kind, s)
			add(byLang, jobs[i].lang, s)
			add(byBoth, kind+" "+jobs[i].lang, s)
		}
	}
	all := &score{}
	t.Logf("%-28s %8s %8s %8s", "kind", "planted", "found", "by sense")
	for _, k := range damages {
		s := total[k.name]
		if s == nil || s.planted < 5 {
			t.Errorf("%s could hardly be planted", k.name)
			continue
		}
		all.planted, all.caught, all.sense = all.planted+s.planted, all.caught+s.caught, all.sense+s.sense
		t.Logf("%-28s %8d %8d %8d", k.name, s.planted, s.caught, s.sense)
		for _, m := range s.missed[:min(len(s.missed), 3)] {
			t.Logf("    missed: %s", m)
		}
	}
	for _, lang := range whole.Languages {
		s := byLang[lang]
		t.Logf("%-28s %8d %8d %8d", lang, s.planted, s.caught, s.sense)
	}
	t.Logf("by sense, of those planted: %s", strings.Join(whole.Languages, " "))
	for _, k := range damages {
		row := fmt.Sprintf("%-28s", k.name)
		for _, lang := range whole.Languages {
			if s := byBoth[k.name+" "+lang]; s != nil {
				row += fmt.Sprintf(" %2d/%2d", s.sense, s.planted)
			} else {
				row += "     -"
			}
		}
		t.Log(row)
	}
	t.Logf("%-28s %8d %8d %8d", "all", all.planted, all.caught, all.sense)
	if len(damages) < 30 || all.planted < 2000 {
		t.Errorf("%d kinds and %d mistakes are too few", len(damages), all.planted)
	}
	if 100*all.caught < 95*all.planted {
		t.Errorf("%d of %d mistakes were found; 95 of 100 are asked for", all.caught, all.planted)
	}
	if 100*all.sense < 85*all.planted {
		t.Errorf("%d of %d mistakes were found by sense; 85 of 100 are asked for", all.sense, all.planted)
	}
}

// A score counts the mistakes of one kind.
type score struct {
	planted, caught, sense int
	missed                 []string
}

func add(into map[string]*score, key string, s *score) {
	if into[key] == nil {
		into[key] = &score{}
	}
	i := into[key]
	i.planted, i.caught, i.sense = i.planted+s.planted, i.caught+s.caught, i.sense+s.sense
	i.missed = append(i.missed, s.missed...)
}

// A plot is one module in one language, in a pack of its own beside its source.
type plot struct {
	root   fs.FS
	whole  *pack.Pack
	module *pack.Module
	lang   string
}

// tries is how many mistakes of each kind are planted in a module and language.
const tries = 1

func (p plot) run(check func(*pack.Pack) []finding.Finding) map[string]*score {
	base := p.files()
	read := func(fsys fstest.MapFS) (*pack.Pack, []finding.Finding) {
		got, found, err := load.Pack(fsys, "pack")
		if err != nil {
			panic(err)
		}
		return got, append(found, check(got)...)
	}
	clean, found := read(base)
	before := tally(found)
	scores := map[string]*score{}
	for _, d := range damages {
		planted := map[string]bool{}
		for try := range tries {
			h := fnv.New64a()
			fmt.Fprint(h, p.module.ID, p.lang, d.name, try)
			s := &scene{plot: p, pack: clean, files: base, rng: rand.New(rand.NewPCG(h.Sum64(), 25112026))}
			name, text, what := d.plant(s)
			if name == "" || planted[what] || string(base[name].Data) == text {
				continue
			}
			planted[what] = true
			spoilt := fstest.MapFS{}
			for n, f := range base {
				spoilt[n] = f
			}
			spoilt[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
			_, found := read(spoilt)
			caught, sense := false, false
			for key, n := range tally(found) {
				if n > before[key] {
					caught = true
					rule, _, _ := strings.Cut(key, " ")
					sense = sense || !slices.Contains([]string{"translation-stale", "translation-changed", "sign-off-void"}, rule)
				}
			}
			if scores[d.name] == nil {
				scores[d.name] = &score{}
			}
			sc := scores[d.name]
			sc.planted++
			if caught {
				sc.caught++
			} else {
				sc.missed = append(sc.missed, fmt.Sprintf("%s/%s: %s", p.module.ID, p.lang, what))
			}
			if sense {
				sc.sense++
			}
		}
	}
	return scores
}

// tally counts warnings and errors by what they say and in which file.
func tally(fs []finding.Finding) map[string]int {
	n := map[string]int{}
	for _, f := range fs {
		if f.Level > finding.Note {
			n[f.Rule+" "+f.Place.File.Path+" "+f.What]++
		}
	}
	return n
}

// files are those of the module, in its language and the source, with a stub of every
// other module, so that links to them hold.
func (p plot) files() fstest.MapFS {
	out := fstest.MapFS{}
	put := func(name string) {
		if b, err := fs.ReadFile(p.root, name); err == nil {
			out[name] = &fstest.MapFile{Data: b, Mode: 0o644}
		}
	}
	for _, name := range []string{"pack.yaml", "facility.yaml", "numbers.yaml", "sources.yaml", "terms.yaml"} {
		put(name)
	}
	langs := []string{p.whole.Source}
	if p.lang != p.whole.Source {
		langs = append(langs, p.lang)
	} else {
		langs = append(langs, otherLanguage(p.whole)) // a mistake in the source is seen beside a translation
	}
	lines := strings.Split(string(out["pack.yaml"].Data), "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, "languages:") {
			lines[i] = "languages: [" + strings.Join(langs, ", ") + "]"
		}
	}
	out["pack.yaml"].Data = []byte(strings.Join(lines, "\n"))
	for _, m := range p.whole.Modules {
		put(m.ID + "/module.yaml")
		for _, lang := range langs {
			if m.ID == p.module.ID {
				put(m.ID + "/" + lang + ".md")
				put(m.ID + "/" + lang + ".basis")
				continue
			}
			out[m.ID+"/"+lang+".md"] = &fstest.MapFile{Data: []byte("# " + m.ID + "\n"), Mode: 0o644}
		}
		if m.ID == p.module.ID {
			entries, _ := fs.ReadDir(p.root, m.ID+"/figures")
			for _, e := range entries {
				put(path.Join(m.ID, "figures", e.Name()))
			}
		}
	}
	return out
}

func otherLanguage(p *pack.Pack) string {
	for _, l := range p.Languages {
		if l != p.Source {
			return l
		}
	}
	return p.Source
}

// units are the units of the module's lesson in the plot's language.
func (s *scene) units() []translate.Unit {
	return translate.Units(s.module().Lessons[s.lang])
}

func (s *scene) module() *pack.Module {
	for _, m := range s.pack.Modules {
		if m.ID == s.plot.module.ID {
			return m
		}
	}
	panic("the plot has its module")
}
