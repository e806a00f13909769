package main

import (
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/text/language"

	"wardleaf"
	"wardleaf/internal/finding"
	"wardleaf/internal/font"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/publish"
)

func languageCommand(s *settings) *cobra.Command {
	return &cobra.Command{
		Use:   "language TAG",
		Short: "Lay out what a new language of the pack needs, and list what is left to do",
		Long: `Language adds a language, named by its BCP 47 tag such as te or so, to a pack: to the
languages of pack.yaml, and to every lesson as a copy of the source in state initial, so
that translations can be handed back block by block. Until a lesson is translated its
pages show the source, marked. It says whether there is a face for the language's
script, writes the list of the program's own labels to be translated when the program
has none, and lists what is left to do. Files that are there already stay as they are.`,
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			tag := args[0]
			if t, err := language.Parse(tag); err != nil || t == language.Und || t.String() != tag {
				return fmt.Errorf("%q is not a language tag as it should be written; use a BCP 47 tag, such as te, so or pt-BR", tag)
			}
			fsys, name, err := openPack(s.pack)
			if err != nil {
				return err
			}
			if s.pack == "" && name == starterName {
				return fmt.Errorf("the starter pack in the program has no folder to add a language to; make a pack with: wardleaf start DIR, and give it with --pack DIR")
			}
			p, findings, err := load.Pack(fsys, name)
			if err != nil {
				return err
			}
			findings = slices.DeleteFunc(findings, func(f finding.Finding) bool { return f.Level != finding.Error })
			if len(findings) > 0 {
				if err := finding.Text(c.ErrOrStderr(), findings, name); err != nil {
					return err
				}
				return errPack
			}
			files, left, err := newLanguage(fsys, p, tag)
			if err != nil {
				return err
			}
			if err := publish.Together(files); err != nil {
				return err
			}
			if !s.quiet {
				fmt.Fprintf(c.OutOrStdout(), "%s written. Left to do:\n", count(len(files), "file"))
				for i, l := range left {
					fmt.Fprintf(c.OutOrStdout(), "  %d. %s\n", i+1, l)
				}
			}
			return nil
		},
	}
}

// newLanguage returns the files that a language needs in a pack, and what is left to do by hand.
func newLanguage(fsys fs.FS, p *pack.Pack, tag string) (files []publish.Text, left []string, err error) {
	put := func(name string, data []byte) {
		files = append(files, publish.Text{Path: filepath.Join(filepath.FromSlash(p.Name), filepath.FromSlash(name)), Data: data})
	}
	for _, m := range p.Modules {
		lesson := m.Lessons[p.Source]
		if lesson == nil || lesson.File == nil {
			continue
		}
		name := m.ID + "/" + tag + ".md"
		if _, err := fs.Stat(fsys, name); err == nil {
			continue
		}
		put(name, lesson.File.Bytes)
		if _, said := m.Record.Translations[tag]; said {
			continue
		}
		record, err := fs.ReadFile(fsys, m.File.Path)
		if err != nil {
			return nil, nil, err
		}
		if changed, ok := withState(m, record, tag); ok {
			put(m.File.Path, changed)
		} else {
			left = append(left, fmt.Sprintf("in %s write below translations:  %s: {state: initial}", m.File.Path, tag))
		}
	}
	catalog, err := locale.Load(wardleaf.Locales())
	if err != nil {
		return nil, nil, err
	}
	if !catalog.Has(tag) {
		labels, err := fs.ReadFile(wardleaf.Locales(), "en.json")
		if err != nil {
			return nil, nil, err
		}
		name := "labels." + tag + ".json"
		if _, err := fs.Stat(fsys, name); err != nil {
			put(name, labels)
		}
		left = append(left, fmt.Sprintf("translate the program's own labels in %s and add the file to the program as locales/%s.json; until then nothing is made in %s", name, tag, tag))
	}
	script, _, known := catalog.Script(tag)
	if !known {
		code, _ := language.Make(tag).Script()
		script = code.String()
		left = append(left, fmt.Sprintf("add the names of months, the pattern of dates and the letters of answers for %s to the program's locales/languages.json, from CLDR", tag))
	}
	face, err := faceFor(script)
	if err != nil {
		return nil, nil, err
	}
	left = append(left, face)
	if !slices.Contains(p.Languages, tag) {
		// Last: only then does the pack have the language.
		if changed, ok := withLanguage(p, tag); ok {
			put(p.File.Path, changed)
		} else {
			left = append(left, fmt.Sprintf("add %s to languages in pack.yaml", tag))
		}
	}
	left = append(left,
		fmt.Sprintf("write title and subtitle in pack.yaml, the facility's name and contacts in facility.yaml, and the words of terms.yaml in %s", tag),
		fmt.Sprintf("hand the lessons off to a translator: wardleaf handoff %s -o %s.xlf; and take them back: wardleaf handback %s.xlf", tag, tag, tag),
		"have a clinician who speaks the language read every page, and raise the state of each translation in module.yaml",
	)
	return files, left, nil
}

// faceFor says which face shows a script.
func faceFor(script string) (string, error) {
	library, err := font.Load(wardleaf.Fonts())
	if err != nil {
		return "", err
	}
	families, _, err := library.Chain(script)
	if err != nil {
		return fmt.Sprintf("no face of the program shows the script %s: add one with its licence (DEVELOPERS.md, how to add a script)", script), nil
	}
	return fmt.Sprintf("look at the pages: the script %s is set in %s", script, strings.TrimSuffix(families[0].Face(false).Name, "-Regular")), nil
}
