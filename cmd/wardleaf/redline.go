package main

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"wardleaf/internal/assemble"
	"wardleaf/internal/finding"
	"wardleaf/internal/history"
	"wardleaf/internal/load"
	"wardleaf/internal/redline"
)

var redlineFormats = []string{"text", "html", "pdf"}

func redlineCommand(s *settings) *cobra.Command {
	var format, out string
	c := &cobra.Command{
		Use:   "redline OLD [NEW]",
		Short: "Say what changed between two revisions, for the clinician who reviews it",
		Long: `Redline compares the pack at two revisions of its git repository, or at one and as its
files lie in the folder now. What could hurt most when it is wrong comes first: numbers,
words such as "not", cautions, steps that must never be missed, right answers, warning
signs. Then comes every change, by module and language, with the words that were taken
out and those that are new, and whether the other languages changed with it.

As text it prints the words that changed in brackets. --format html makes one page that
works offline, --format pdf pages to print for a meeting, with room to agree and to sign.
Their labels are in the first language of --lang, or in the source language.`,
		Args: cobra.RangeArgs(1, 2),
		RunE: func(c *cobra.Command, args []string) error {
			if !slices.Contains(redlineFormats, format) {
				return fmt.Errorf("--format %s: choose text, html or pdf", format)
			}
			if format == "pdf" && out == "-" {
				return fmt.Errorf("--format pdf needs the name of a file; give it with -o, such as -o redline.pdf")
			}
			o, err := s.options()
			if err != nil {
				return err
			}
			if s.pack == "" && o.Name == starterName {
				return fmt.Errorf("the starter pack in the program has no earlier state; give the folder of a pack that is under version control with --pack DIR")
			}
			return redlined(c, o, args, format, out)
		},
	}
	c.Flags().StringVar(&format, "format", "text", "text, html or pdf")
	c.Flags().StringVarP(&out, "output", "o", "-", "file to write to, - for standard output")
	return c
}

// redlined compares two states of a pack and prints what changed.
func redlined(c *cobra.Command, o assemble.Options, args []string, format, out string) error {
	repo, err := history.Open(filepath.FromSlash(o.Name))
	if err != nil {
		return err
	}
	old, err := stateAt(c, repo, o.Name, args[0])
	if err != nil {
		return err
	}
	now := &assemble.State{}
	if len(args) == 2 {
		now, err = stateAt(c, repo, o.Name, args[1])
	} else {
		now.Side, err = side(c, o.Pack, o.Name)
	}
	if err != nil {
		return err
	}
	text, missing, err := assemble.Redline(o, old, now, format)
	if err != nil {
		return err
	}
	for _, r := range missing {
		fmt.Fprintf(c.ErrOrStderr(), "no font of the program has the character %U, and a box stands in its place; add a font for its script\n", r)
	}
	return deliver(c, out, text)
}

// stateAt reads the pack as it was at a revision.
func stateAt(c *cobra.Command, repo *history.Repository, pack, name string) (*assemble.State, error) {
	commit, err := repo.Commit(name)
	if err != nil {
		return nil, err
	}
	fsys, err := repo.Files(commit, ".yaml", ".md", ".svg")
	if err == nil {
		_, err = fs.Stat(fsys, "pack.yaml")
	}
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("at revision %s there was no pack in %s, so there is nothing to compare; choose a later revision, or give the folder it was in with --pack", name, pack)
	}
	if err != nil {
		return nil, err
	}
	s := &assemble.State{Revision: redline.Revision{Name: name, ID: commit.ID, Date: commit.Date}}
	s.Side, err = side(c, fsys, pack+" at "+name)
	return s, err
}

// side reads a pack. What keeps it from being read whole is said; it stops the work
// only when no module was read.
func side(c *cobra.Command, fsys fs.FS, name string) (redline.Side, error) {
	p, findings, err := load.Pack(fsys, name)
	if err != nil {
		return redline.Side{}, err
	}
	out := redline.Side{Pack: p, Unread: map[string]bool{}}
	var errs []finding.Finding
	for _, f := range findings {
		if f.Level == finding.Error {
			errs = append(errs, f)
			if f.Rule != "file-missing" && f.Rule != "translation-missing" {
				out.Unread[f.Place.File.Path] = true
			}
		}
	}
	if len(p.Modules) == 0 {
		if err := finding.Text(c.ErrOrStderr(), errs, name); err != nil {
			return out, err
		}
		fmt.Fprintf(c.ErrOrStderr(), "%s: the pack cannot be read, so nothing was compared\n", name)
		return out, errPack
	}
	if len(errs) > 0 {
		fmt.Fprintf(c.ErrOrStderr(), "%s: the pack has %s; what could not be read is named in the redline\n", name, count(len(errs), "error"))
	}
	return out, nil
}
