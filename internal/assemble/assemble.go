// Package assemble is the whole pipeline in one place: read this first.
//
// A pack is loaded and checked; each language is joined, set and written on its
// own; what is sound is published whole. Findings never become Go errors, and Go
// errors are only for broken surroundings, such as a disk that cannot be written.
package assemble

import (
	"bytes"
	"io/fs"
	"maps"
	"slices"
	"sync"
	"time"

	"wardleaf/internal/check"
	"wardleaf/internal/finding"
	"wardleaf/internal/font"
	"wardleaf/internal/impose"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/pdf"
	"wardleaf/internal/piece"
	"wardleaf/internal/publish"
	"wardleaf/internal/site"
	"wardleaf/internal/translate"
)

// Options say what to assemble. Assets are the program's own files.
type Options struct {
	Pack     fs.FS
	Name     string   // how messages call the pack
	Out      string   // folder to publish to; empty publishes nothing
	Langs    []string // subset of the pack's languages; empty means all
	Today    time.Time
	Strict   bool // any warning or error stops everything
	Jobs     int  // languages worked on at once; at least 1
	Assets   Assets
	Progress func(done, all int, what string) // may be nil; called from one goroutine at a time
}

// Assets are the program's own files.
type Assets struct{ Locales, Templates, Fonts fs.FS }

// A Report says what a run found and made.
type Report struct {
	Pack      *pack.Pack // nil when it could not be read
	Findings  []finding.Finding
	Made      []Language
	Kept      []string // languages with errors whose earlier output was kept
	Left      []string // languages with errors that had no earlier output
	Published bool
	Files     int
}

// A Language says what was made in one language.
type Language struct {
	Tag, Name     string
	Modules       int
	Pages, Sheets int // of the booklet
	Bytes         int // of all its files
	Signed, Final bool
}

// Run assembles a pack.
func Run(o Options) (*Report, error) {
	catalog, err := locale.Load(o.Assets.Locales)
	if err != nil {
		return nil, err
	}
	p, findings, err := load.Pack(o.Pack, o.Name)
	if err != nil {
		return nil, err
	}
	r := &Report{Pack: p, Findings: findings}
	if p == nil {
		return r, nil
	}
	r.Findings = append(r.Findings, check.Run(p, o.Today)...)
	r.Findings = append(r.Findings, unknownLanguages(p, catalog)...)
	langs := selected(p, o.Langs)
	if stops(r.Findings, "") || o.Strict && finding.Count(r.Findings, finding.Note) < len(r.Findings) {
		finding.Sort(r.Findings)
		return r, nil
	}

	w := &works{pack: p, catalog: catalog}
	if w.fonts, err = font.Load(o.Assets.Fonts); err != nil {
		return nil, err
	}
	var sound []string
	for _, l := range langs {
		if !stops(r.Findings, l) {
			sound = append(sound, l)
		}
	}
	files := map[string][]byte{}
	var made []*edition
	for i, e := range w.all(o, sound) {
		if e.err != nil {
			return nil, e.err
		}
		r.Findings = append(r.Findings, e.findings...)
		if !stops(e.findings, sound[i]) {
			made = append(made, e)
		}
	}
	finding.Sort(r.Findings)
	if len(made) == 0 || o.Strict && len(made) < len(langs) {
		return r, nil
	}
	return r, w.publish(o, r, langs, made, files)
}

// stops reports whether findings keep a language from being made.
// With lang "" it reports whether they keep everything from being made.
func stops(fs []finding.Finding, lang string) bool {
	return slices.ContainsFunc(fs, func(f finding.Finding) bool {
		return f.Level == finding.Error && f.Lang == lang
	})
}

func selected(p *pack.Pack, only []string) []string {
	if len(only) == 0 {
		return p.Languages
	}
	var out []string
	for _, l := range p.Languages {
		if slices.Contains(only, l) {
			out = append(out, l)
		}
	}
	return out
}

// works holds what every language shares. All of it is safe for several goroutines.
type works struct {
	pack    *pack.Pack
	catalog *locale.Catalog
	fonts   *font.Library
}

// edition is one language on its way through the works.
type edition struct {
	*translate.Edition
	booklet, pages []byte // PDF: imposed, and in reading order
	count, sheets  int    // pages of the booklet, and sheets to print it on
	findings       []finding.Finding
	err            error
}

// all sets and writes every language, several at once, in the order of langs.
func (w *works) all(o Options, langs []string) []*edition {
	out := make([]*edition, len(langs))
	var mu sync.Mutex
	var wg sync.WaitGroup
	done := 0
	slots := make(chan struct{}, max(o.Jobs, 1))
	for i, l := range langs {
		wg.Go(func() {
			slots <- struct{}{}
			defer func() { <-slots }()
			e := &edition{}
			e.err = w.set(e, l)
			out[i] = e
			mu.Lock()
			defer mu.Unlock()
			done++
			if o.Progress != nil {
				o.Progress(done, len(langs), l)
			}
		})
	}
	wg.Wait()
	return out
}

// set joins one language, lays out its pieces, checks them as pages and writes them.
func (w *works) set(e *edition, lang string) error {
	loc, err := w.catalog.Locale(lang, w.pack.Digits[lang])
	if err != nil {
		return err
	}
	e.Edition = translate.Join(w.pack, loc)
	b, err := piece.Booklet(e.Edition, w.fonts)
	if err != nil {
		return err
	}
	e.findings = check.Glyphs(w.pack, lang, b.Missing)
	if stops(e.findings, lang) {
		return nil
	}
	sheets := impose.Booklet(b.Document)
	e.count, e.sheets = len(b.Document.Pages), len(sheets.Pages)/2
	var reading, folding bytes.Buffer
	if err := pdf.Write(&reading, b.Document); err != nil {
		return err
	}
	if err := pdf.Write(&folding, sheets); err != nil {
		return err
	}
	e.pages, e.booklet = reading.Bytes(), folding.Bytes()
	return nil
}

// publish makes the site of the languages made, adds what is kept of the others, and writes it all.
func (w *works) publish(o Options, r *Report, langs []string, made []*edition, files map[string][]byte) error {
	var shown []site.Lang
	for _, l := range langs {
		if e := find(made, l); e != nil {
			shown = append(shown, site.Lang{Tag: l, Name: e.Locale.Name, RTL: e.Locale.RTL})
			continue
		}
		old, err := publish.Previous(o.Out, l)
		if err != nil {
			return err
		}
		if len(old) == 0 {
			r.Left = append(r.Left, l)
			continue
		}
		r.Kept = append(r.Kept, l)
		maps.Copy(files, old)
		loc, err := w.catalog.Locale(l, w.pack.Digits[l])
		if err != nil {
			return err
		}
		shown = append(shown, site.Lang{Tag: l, Name: loc.Name, RTL: loc.RTL})
	}
	s, err := site.New(o.Assets.Templates)
	if err != nil {
		return err
	}
	for _, e := range made {
		got, err := w.files(s, e, shown)
		if err != nil {
			return err
		}
		maps.Copy(files, got)
		m := Language{
			Tag: e.Locale.Tag, Name: e.Locale.Name, Modules: len(e.Modules),
			Pages: e.count, Sheets: e.sheets, Signed: translate.Signed(e.Modules), Final: translate.Final(e.Modules),
		}
		for _, data := range got {
			m.Bytes += len(data)
		}
		r.Made = append(r.Made, m)
	}
	if files["index.html"], err = s.Start(w.pack, shown); err != nil {
		return err
	}
	r.Files = len(files) + 1
	if o.Out == "" {
		return nil
	}
	r.Published = true
	return publish.Folder(o.Out, files, publish.Manifest{Pack: w.pack.Title.In(w.pack.Source, w.pack.Source), Version: w.pack.Version, Kept: r.Kept})
}

// files are those of one language: its site and its pieces.
func (w *works) files(s *site.Site, e *edition, shown []site.Lang) (map[string][]byte, error) {
	loc := e.Locale
	files, err := s.Edition(e.Edition, shown, []site.PDF{
		{Path: "print/booklet.pdf", Title: loc.Label("booklet-fold"), How: loc.Label("booklet-fold-how"), Pages: e.count, Sheets: e.sheets, Bytes: len(e.booklet)},
		{Path: "print/booklet-pages.pdf", Title: loc.Label("booklet-pages"), How: loc.Label("booklet-pages-how"), Pages: e.count, Bytes: len(e.pages)},
	})
	if err != nil {
		return nil, err
	}
	files[loc.Tag+"/print/booklet.pdf"] = e.booklet
	files[loc.Tag+"/print/booklet-pages.pdf"] = e.pages
	return files, nil
}

func find(made []*edition, lang string) *edition {
	for _, e := range made {
		if e.Locale.Tag == lang {
			return e
		}
	}
	return nil
}
