// Package assemble is the whole pipeline in one place: read this first.
//
// A pack is loaded and checked; each language is joined, set and written on its
// own; what is sound is published whole. Findings never become Go errors, and Go
// errors are only for broken surroundings, such as a disk that cannot be written.
package assemble

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"sync"
	"time"

	"wardleaf/internal/check"
	"wardleaf/internal/finding"
	"wardleaf/internal/font"
	"wardleaf/internal/impose"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/pdf"
	"wardleaf/internal/piece"
	"wardleaf/internal/publish"
	"wardleaf/internal/review"
	"wardleaf/internal/sheet"
	"wardleaf/internal/site"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// Options say what to assemble. Assets are the program's own files.
type Options struct {
	Pack     fs.FS
	Name     string         // how messages call the pack
	Out      string         // folder to publish to; empty lays out and checks, and writes nothing
	Langs    []string       // subset of the pack's languages; empty means all
	Pieces   []string       // subset of the pieces; empty means all
	Paper    measure.Size   // of pieces that are used flat; zero is A4
	Tile     measure.Size   // when set, wall pieces are also laid over sheets of this size
	Black    bool           // black ink alone
	Distance measure.Length // how far off wall checklists and flip charts are read
	Today    time.Time
	Strict   bool // any warning or error stops everything
	Jobs     int  // pieces worked on at once
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
	Prints        int // PDF files
	Pages, Sheets int // of the booklet
	Bytes         int // of all its files
	Signed, Final bool
}

// Run assembles a pack.
func Run(o Options) (*Report, error) {
	if o.Paper == (measure.Size{}) {
		o.Paper = measure.A4
	}
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
	if err := o.known(p); err != nil {
		return nil, err
	}
	r.Findings = append(r.Findings, check.Run(p, o.Today, catalog)...)
	r.Findings = append(r.Findings, unknownLanguages(p, catalog)...)
	check.Silence(p, r.Findings, o.Today)
	langs := selected(p, o.Langs)
	if stops(r.Findings, "") || o.Strict && finding.Count(r.Findings, finding.Warning) > 0 {
		finding.Sort(r.Findings)
		return r, nil
	}

	w := &works{pack: p, catalog: catalog, paper: o.Paper.Name()}
	faces, err := font.Load(o.Assets.Fonts)
	if err != nil {
		return nil, err
	}
	w.fonts = typeset.NewFonts(faces)
	var sound []string
	for _, l := range langs {
		if !stops(r.Findings, l) {
			sound = append(sound, l)
		}
	}
	files := map[string][]byte{}
	var made []*edition
	editions, err := w.all(o, sound)
	if err != nil {
		return nil, err
	}
	for i, e := range editions {
		r.Findings = append(r.Findings, e.findings...)
		if !stops(e.findings, sound[i]) {
			made = append(made, e)
		}
	}
	check.Silence(p, r.Findings, o.Today)
	if len(o.Langs)+len(o.Pieces) == 0 {
		r.Findings = append(r.Findings, check.Unused(p, r.Findings, o.Today)...)
	}
	r.Findings = once(r.Findings) // a lesson that has fallen back is checked in two languages
	if len(o.Langs) > 0 {         // what is found in other languages is for those who work on them
		r.Findings = slices.DeleteFunc(r.Findings, func(f finding.Finding) bool {
			return f.Lang != "" && f.Lang != p.Source && !slices.Contains(langs, f.Lang)
		})
	}
	if o.Out == "" || len(made) == 0 || o.Strict && len(made) < len(langs) {
		return r, nil
	}
	return r, w.publish(o, r, langs, made, files)
}

// known refuses languages and pieces that there are none of.
func (o Options) known(p *pack.Pack) error {
	for _, l := range o.Langs {
		if !slices.Contains(p.Languages, l) {
			return fmt.Errorf("the pack has no language %q; it has %s", l, strings.Join(p.Languages, ", "))
		}
	}
	var names []string
	for _, pc := range piece.List {
		if !slices.Contains(names, pc.Name) {
			names = append(names, pc.Name)
		}
		if pc.Folded != "" {
			names = append(names, pc.Folded)
		}
	}
	for _, name := range o.Pieces {
		if !slices.Contains(names, name) {
			return fmt.Errorf("there is no piece %q; there are %s", name, strings.Join(names, ", "))
		}
	}
	return nil
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
	fonts   *typeset.Fonts
	paper   string // name of the paper
}

// edition is one language on its way through the works.
type edition struct {
	*translate.Edition
	prints   []print
	findings []finding.Finding
}

// print is one PDF of an edition.
type print struct {
	piece  string
	module string // empty when it is one for the pack
	pages  int
	sheets int // of paper, when it is folded
	data   []byte
}

// order is one piece to be made.
type order struct {
	edition *edition
	piece   piece.Piece
	module  *translate.Module
	prints  []print
	found   []finding.Finding
	err     error
}

// all makes every piece of every language, several at once. Editions come back in
// the order of langs and prints in the order of the pieces, however many worked on them.
func (w *works) all(o Options, langs []string) ([]*edition, error) {
	var editions []*edition
	var orders []*order
	for _, l := range langs {
		loc, err := w.catalog.For(l, w.pack.Digits[l], w.pack.Calendars[l])
		if err != nil {
			return nil, err
		}
		e := &edition{Edition: translate.Join(w.pack, loc)}
		if source, err := w.catalog.For(w.pack.Source, w.pack.Digits[w.pack.Source], w.pack.Calendars[w.pack.Source]); err == nil {
			e.SourceName = source.Name
			e.FallBack(source)
		}
		editions = append(editions, e)
		for _, p := range piece.List {
			if len(o.Pieces) > 0 && !slices.Contains(o.Pieces, p.Name) && !slices.Contains(o.Pieces, p.Folded) {
				continue
			}
			asked := slices.Contains(o.Pieces, p.Name) && sheet.Find(p.Name) != nil
			if p.Wanted != nil && !p.Wanted(w.pack) && !asked {
				continue
			}
			if !p.Each {
				orders = append(orders, &order{edition: e, piece: p})
				continue
			}
			for i := range e.Modules {
				orders = append(orders, &order{edition: e, piece: p, module: &e.Modules[i]})
			}
		}
	}
	var mu sync.Mutex
	var wg sync.WaitGroup
	queue := make(chan *order)
	done := 0
	for range max(o.Jobs, 1) {
		wg.Go(func() {
			for r := range queue {
				r.err = w.make(o, r)
				mu.Lock()
				done++
				if o.Progress != nil {
					o.Progress(done, len(orders), r.edition.Locale.Name)
				}
				mu.Unlock()
			}
		})
	}
	for _, r := range orders {
		queue <- r
	}
	close(queue)
	wg.Wait()
	for _, r := range orders {
		if r.err != nil {
			return nil, r.err
		}
		r.edition.prints = append(r.edition.prints, r.prints...)
		r.edition.findings = append(r.edition.findings, r.found...)
	}
	for _, e := range editions {
		e.findings = once(e.findings)
	}
	return editions, nil
}

// once leaves out findings that several pieces have in common.
func once(fs []finding.Finding) []finding.Finding {
	finding.Sort(fs)
	return slices.CompactFunc(fs, func(a, b finding.Finding) bool {
		return a.Rule == b.Rule && a.What == b.What && a.Place == b.Place
	})
}

// make lays out one piece, checks its pages and writes it.
func (w *works) make(o Options, r *order) error {
	job := &piece.Job{Edition: r.edition.Edition, Module: r.module, Fonts: w.fonts, Paper: o.Paper, Distance: o.Distance}
	if r.module != nil {
		job.Mark = job.Edition.Mark(r.module)
		if r.module.Fallback {
			job.Edition, job.Module = job.Edition.InSource(r.module)
		}
	}
	res, err := r.piece.Make(job)
	if err != nil {
		return err
	}
	r.found = check.Glyphs(w.pack, r.edition.Locale.Tag, res.Missing)
	laid := check.Laid{Piece: r.piece.Name, Lang: r.edition.Locale.Tag, Document: res.Document}
	if r.module != nil {
		laid.Module = r.module.ID
	}
	r.found = append(r.found, check.LaidOut(w.pack, laid)...)
	if res.TooLong != nil {
		r.found = append(r.found, check.TooLong(r.piece.Name, res.TooLong)...)
	}
	if r.piece.Folded != "" {
		r.found = append(r.found, check.Sheets(w.pack, r.edition.Locale.Tag, (len(res.Document.Pages)+3)/4)...)
	}
	if o.Out == "" || stops(r.found, r.edition.Locale.Tag) {
		return nil
	}
	module := ""
	if r.module != nil {
		module = r.module.ID
	}
	add := func(name string, d *page.Document, sheets int) error {
		var b bytes.Buffer
		if err := pdf.Write(&b, d); err != nil {
			return err
		}
		pages := len(d.Pages)
		if sheets > 0 {
			pages = len(res.Document.Pages)
		}
		r.prints = append(r.prints, print{name, module, pages, sheets, b.Bytes()})
		return nil
	}
	if o.Black {
		page.Black(res.Document)
	}
	if r.piece.Folded != "" {
		sheets := impose.Booklet(res.Document)
		if err := add(r.piece.Folded, sheets, len(sheets.Pages)/2); err != nil {
			return err
		}
	}
	if r.piece.Tiled != "" && o.Tile.Width > 0 {
		if err := add(r.piece.Tiled, impose.Tiled(res.Document, o.Tile), 0); err != nil {
			return err
		}
	}
	return add(r.piece.Name, res.Document, 0)
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
		loc, err := w.catalog.For(l, w.pack.Digits[l], w.pack.Calendars[l])
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
			Tag: e.Locale.Tag, Name: e.Locale.Name, Modules: len(e.Modules), Prints: len(e.prints),
			Signed: translate.Signed(e.Modules), Final: translate.Final(e.Modules),
		}
		for _, p := range e.prints {
			if p.sheets > 0 {
				m.Pages, m.Sheets = p.pages, p.sheets
			}
		}
		for _, data := range got {
			m.Bytes += len(data)
		}
		r.Made = append(r.Made, m)
	}
	source, err := w.catalog.For(w.pack.Source, w.pack.Digits[w.pack.Source], w.pack.Calendars[w.pack.Source])
	if err != nil {
		return err
	}
	if files["index.html"], err = s.Start(w.pack, source, shown); err != nil {
		return err
	}
	if files["reviewers.html"], err = s.Reviewers(w.pack, source, review.NewMatrix(w.pack, r.Findings), shown); err != nil {
		return err
	}
	r.Files = len(files) + 1 // the manifest
	r.Published = true
	return publish.Folder(o.Out, files, publish.Manifest{Pack: w.pack.Title.In(w.pack.Source, w.pack.Source), Version: w.pack.Version, Kept: r.Kept})
}

// files are those of one language: its site and its pieces.
func (w *works) files(s *site.Site, e *edition, shown []site.Lang) (map[string][]byte, error) {
	var pdfs []site.PDF
	data := map[string][]byte{}
	for _, p := range e.prints {
		path := "print/" + p.piece + ".pdf"
		if p.module != "" {
			path = "print/" + p.piece + "-" + p.module + ".pdf"
		}
		data[e.Locale.Tag+"/"+path] = p.data
		pdfs = append(pdfs, site.PDF{Path: path, Piece: p.piece, Module: p.module, Paper: w.paper, Pages: p.pages, Sheets: p.sheets, Bytes: len(p.data)})
	}
	files, err := s.Edition(e.Edition, shown, pdfs)
	if err != nil {
		return nil, err
	}
	maps.Copy(files, data)
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
