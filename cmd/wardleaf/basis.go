package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
	"wardleaf/internal/pack"
	"wardleaf/internal/publish"
	"wardleaf/internal/translate"
)

func basisCommand(s *settings) *cobra.Command {
	return &cobra.Command{
		Use:   "basis LANG [MODULE ...]",
		Short: "Record that a translation follows the source as it stands now",
		Long: `Basis records, block by block, which words of the source language a translation was
made from, in a file beside it (MODULE/LANG.basis). When the source is changed later,
check says which blocks of the translation are behind it, and handoff sends only those.

Run it only when somebody has compared the translation with the source. It refuses a
translation that is not built like its source, and then records nothing.`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			p, modules, err := s.translated(c, args[0], args[1:], "record")
			if err != nil {
				return err
			}
			return recordBasis(c, s, p, args[0], modules)
		},
	}
}

// translated reads the pack that can be written to, and chooses modules of it in a
// language other than the source; an empty lang is any, and all modules. doing says what else would have been done.
func (s *settings) translated(c *cobra.Command, lang string, only []string, doing string) (*pack.Pack, []*pack.Module, error) {
	fsys, name, err := openPack(s.pack)
	if err != nil {
		return nil, nil, err
	}
	if s.pack == "" && name == starterName {
		return nil, nil, fmt.Errorf("the starter pack in the program has no folder to %s anything in; make a pack with: wardleaf start DIR, and give it with --pack DIR", doing)
	}
	p, findings, err := load.Pack(fsys, name)
	if err != nil {
		return nil, nil, err
	}
	modules := p.Modules
	if lang != "" {
		if modules, err = chosen(p, lang, only); err != nil {
			return nil, nil, err
		}
	}
	var errs []finding.Finding
	for _, f := range findings {
		about := f.Module == "" || slices.ContainsFunc(modules, func(m *pack.Module) bool { return m.ID == f.Module })
		mine := lang == "" || f.Lang == "" || f.Lang == lang || f.Lang == p.Source
		mended := f.Rule == "translation-missing" || f.Rule == "basis-malformed" && doing == "record"
		if f.Level == finding.Error && about && mine && !mended {
			errs = append(errs, f)
		}
	}
	if len(errs) > 0 {
		if err := finding.Text(c.ErrOrStderr(), errs, name); err != nil {
			return nil, nil, err
		}
		return nil, nil, errPack
	}
	return p, modules, nil
}

// chosen returns the modules named, or all.
func chosen(p *pack.Pack, lang string, only []string) ([]*pack.Module, error) {
	switch {
	case !slices.Contains(p.Languages, lang):
		return nil, fmt.Errorf("the pack has no language %q; it has %s: add it to languages in pack.yaml first", lang, strings.Join(p.Languages, ", "))
	case lang == p.Source:
		return nil, fmt.Errorf("%s is the source language, which is translated from and not into; give one of the others", lang)
	case len(only) == 0:
		return p.Modules, nil
	}
	var out []*pack.Module
	for _, m := range p.Modules {
		if slices.Contains(only, m.ID) {
			out = append(out, m)
		}
	}
	for _, id := range only {
		if _, err := moduleOf(p, id); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func recordBasis(c *cobra.Command, s *settings, p *pack.Pack, lang string, modules []*pack.Module) error {
	var files []publish.Text
	var said strings.Builder
	var wrong []finding.Finding
	for _, m := range modules {
		l := m.Lessons[lang]
		pairing := translate.Paired(p, m, lang)
		if l == nil || pairing == nil {
			fmt.Fprintf(&said, "%s: no lesson in %s\n", m.ID, lang)
			continue
		}
		if wrong = append(wrong, unlike(pairing, l, m.Lessons[p.Source])...); len(wrong) > 0 {
			continue
		}
		followed := pairing.Followed()
		files = append(files, publish.Text{
			Path: filepath.Join(filepath.FromSlash(p.Name), m.ID, lang+".basis"), Data: translate.BasisFile(followed),
		})
		fresh, changed := len(pairing.New()), len(pairing.Stale())
		fmt.Fprintf(&said, "%s: %s new, %d changed, %d unchanged\n", m.ID, count(fresh, "block"), changed, len(followed)-fresh-changed)
	}
	if len(wrong) > 0 {
		if err := finding.Text(c.ErrOrStderr(), wrong, p.Name); err != nil {
			return err
		}
		fmt.Fprintln(c.ErrOrStderr(), "nothing was recorded: a translation is recorded only when it has the blocks of its source")
		return errPack
	}
	if err := publish.Together(files); err != nil {
		return err
	}
	if !s.quiet {
		fmt.Fprint(c.OutOrStdout(), said.String())
	}
	return nil
}

// unlike says where the blocks of a translation and of its source differ.
func unlike(p *translate.Pairing, l, src *lesson.Lesson) []finding.Finding {
	var out []finding.Finding
	add := func(place, beside finding.Place, what, mend string) {
		f := finding.Finding{
			Rule: "translation-structure", Level: finding.Error, Place: place, Lang: p.Lang, Module: p.Module.ID,
			What: what, Mend: mend,
			Why: "Blocks are compared with the source one by one, and those that have no partner could change unseen.",
		}
		if beside.File != nil {
			f.Related = []finding.Related{{Place: beside, Text: "in the source language"}}
		}
		out = append(out, f)
	}
	for _, u := range p.Lacking {
		add(finding.Place{File: l.File, Span: l.Span}, finding.Place{File: src.File, Span: u.Span},
			fmt.Sprintf("the translation has no %s %s", u.Kind, u.ID), "translate it, too, as a block of its own")
	}
	for _, u := range p.Extra {
		add(finding.Place{File: l.File, Span: u.Span}, finding.Place{},
			fmt.Sprintf("the source has no %s %s", u.Kind, u.ID), "join it to the block before, or add it to the source first")
	}
	return out
}
