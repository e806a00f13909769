// Package load reads a pack from a file system.
//
// It is the only reader of packs and the only importer of the Markdown and YAML
// libraries. What is wrong in the pack is a finding with its place; an error means
// that the folder itself could not be read.
//
// Start at Pack. The files behind it: file.go reads bytes, yaml.go makes a tree of
// a record, fields.go takes values out of it; markdown.go and inline.go make a
// lesson of CommonMark 0.31.2 with tables, task lists and heading classes.
//
// It is not a checker: it says only what keeps it from reading, and what must not be
// read at all (markup, addresses and paths that are not safe). What a pack should
// hold is for package check. It follows no symbolic link by itself, but the file
// system might: give it one that stays inside the pack, such as that of os.Root.
package load

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"syscall"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// Sizes above which a file is refused, in bytes.
const (
	maxYAML     = 256 << 10
	maxMarkdown = 1 << 20
	maxFigure   = 512 << 10
)

// Pack reads the pack at the root of fsys. Messages call it name.
// The pack is never nil when err is nil; what could not be read is missing from it.
func Pack(fsys fs.FS, name string) (*pack.Pack, []finding.Finding, error) {
	if err := readable(fsys, name); err != nil {
		return nil, nil, err
	}
	r := &reader{fsys: fsys, pack: &pack.Pack{
		Name:    name,
		Numbers: map[string]*pack.Number{},
		Sources: map[string]*pack.Source{},
		Terms:   map[string]*pack.Term{},
		Figures: map[string]*pack.Figure{},
	}}
	ids := r.packFile()
	r.numbers()
	r.sources()
	r.terms()
	r.facility()
	for _, id := range ids {
		r.module(id)
	}
	r.unlisted(ids)
	r.figures()
	r.unusedFigures(ids)
	finding.Sort(r.findings)
	return r.pack, r.findings, nil
}

// readable returns an error unless fsys is a folder whose contents can be listed.
func readable(fsys fs.FS, name string) error {
	info, err := fs.Stat(fsys, ".")
	switch {
	case errors.Is(err, syscall.ENOTDIR):
		return fmt.Errorf("%s: this is a file, not a folder; give the folder that holds pack.yaml", name)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such folder; give the folder that holds pack.yaml", name)
	case err != nil:
		return fmt.Errorf("%s: the folder cannot be read: %v; give the folder that holds pack.yaml", name, reason(err))
	case !info.IsDir():
		return fmt.Errorf("%s: this is a file, not a folder; give the folder that holds pack.yaml", name)
	}
	if _, err := fs.ReadDir(fsys, "."); err != nil {
		return fmt.Errorf("%s: the folder cannot be listed: %v; allow reading it", name, reason(err))
	}
	return nil
}

// reason is the cause inside an error of the file system, without its path.
func reason(err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err
	}
	return err
}

// A reader gathers one pack and what is wrong with it.
type reader struct {
	fsys     fs.FS
	pack     *pack.Pack
	findings []finding.Finding
	wanted   []wanted // figures that lessons refer to
}

// A subject is a file being read, and what its findings stop.
type subject struct {
	r            *reader
	file         *source.File
	lang, module string
}

// say adds a finding at a span of the subject's file. An error unless said otherwise.
func (s subject) say(rule string, at source.Span, what, why, mend string) {
	s.sayAt(finding.Error, rule, at, what, why, mend)
}

func (s subject) sayAt(level finding.Level, rule string, at source.Span, what, why, mend string) {
	s.r.findings = append(s.r.findings, finding.Finding{
		Rule: rule, Level: level, Place: finding.Place{File: s.file, Span: at},
		What: what, Why: why, Mend: mend, Lang: s.lang, Module: s.module,
	})
}

// relate adds another place to the finding that was said last.
func (s subject) relate(at source.Span, text string) {
	last := &s.r.findings[len(s.r.findings)-1]
	last.Related = append(last.Related, finding.Related{Place: finding.Place{File: s.file, Span: at}, Text: text})
}

// module reads one module's record and its lesson in every language of the pack.
func (r *reader) module(id pack.Ref) {
	if info, err := fs.Stat(r.fsys, id.Name); err != nil || !info.IsDir() {
		s := subject{r: r, file: r.pack.File, module: id.Name}
		s.say("file-missing", id.Span, fmt.Sprintf("the module %s has no folder", id.Name),
			"Everyone who opens the pack would find this lesson missing.",
			fmt.Sprintf("create the folder %s with module.yaml and %s.md in it, or take the line out", id.Name, r.pack.Source))
		return
	}
	m := r.record(id.Name)
	r.pack.Modules = append(r.pack.Modules, m)
	for _, lang := range r.pack.Languages {
		r.translation(m, lang)
	}
}

// translation reads a module's lesson in one language. What keeps the source
// language from being read stops every language.
func (r *reader) translation(m *pack.Module, lang string) {
	name := path.Join(m.ID, lang+".md")
	s := subject{r: r, lang: lang, module: m.ID}
	required := ""
	if lang == r.pack.Source {
		s.lang = ""
		required = "write the lesson in it; every translation is made from this file"
	} else if _, err := fs.Stat(r.fsys, name); errors.Is(err, fs.ErrNotExist) {
		s.file = source.New(name, nil)
		s.sayAt(finding.Warning, "translation-missing", source.Span{}, fmt.Sprintf("the lesson has no translation into %s; it is shown in the source language, and marked", lang),
			"Families who do not read the source language would hold a lesson that they cannot use.",
			fmt.Sprintf("have it translated: wardleaf handoff %[1]s %[2]s; or take %[1]s out of languages in pack.yaml", lang, m.ID))
		return
	}
	if !s.open(name, maxMarkdown, required) {
		return
	}
	s.lang = lang
	if l := s.lesson(); l != nil {
		m.Lessons[lang] = l
		if lang != r.pack.Source {
			m.Basis[lang] = r.basis(m.ID, lang)
		}
	}
}

// unlisted notes folders that look like modules but that pack.yaml does not name.
func (r *reader) unlisted(ids []pack.Ref) {
	if r.pack.File == nil {
		return
	}
	entries, _ := fs.ReadDir(r.fsys, ".")
	for _, e := range entries {
		if !e.IsDir() || slices.ContainsFunc(ids, func(id pack.Ref) bool { return id.Name == e.Name() }) {
			continue
		}
		name := path.Join(e.Name(), "module.yaml")
		if _, err := fs.Stat(r.fsys, name); err != nil {
			continue
		}
		s := subject{r: r, file: source.New(name, nil)}
		s.sayAt(finding.Warning, "module-unlisted", source.Span{}, "pack.yaml does not list this module",
			"It is left out of every page and every print.",
			fmt.Sprintf("add %s to modules in pack.yaml, or take the folder out of the pack", e.Name()))
	}
}
