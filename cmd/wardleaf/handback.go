package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"wardleaf/internal/exchange"
	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/publish"
	"wardleaf/internal/source"
)

func handbackCommand(s *settings) *cobra.Command {
	var dry bool
	var force []string
	var out string
	c := &cobra.Command{
		Use:   "handback FILE",
		Short: "Take a translator's file back into the pack",
		Long: `Handback reads a file that handoff wrote (XLIFF, or PO by its name) and a translator
has worked on, holds every block against the pack, and writes the translations into the
lessons. A lost tag, a changed source text, a wrong language or a file that is not whole
is refused, and nothing is written. Blocks in state initial (in a PO file: fuzzy) are
passed over. A block is left as it is, with a warning, when its source has changed since
the hand-off, or when somebody has changed its translation in the pack meanwhile.

Only the changed blocks of a lesson change. The state of the translation in module.yaml
stays as it is: raise it when the translation has been read.`,
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			came, findings, err := readReturn(args[0])
			if err != nil {
				return err
			}
			if came == nil {
				return refuse(c, findings, args[0])
			}
			p, _, err := s.translated(c, "", nil, "hand back")
			if err != nil {
				return err
			}
			res, findings := exchange.Handback(p, came, force)
			if res == nil || s.strict && len(findings) > 0 {
				return refuse(c, findings, args[0])
			}
			if err := finding.Text(c.ErrOrStderr(), findings, ""); err != nil {
				return err
			}
			if !dry {
				if err := writeChanges(p, res); err != nil {
					return err
				}
				if out != "" {
					if err := deliver(c, out, res.Updated(came)); err != nil {
						return err
					}
				}
			}
			if !s.quiet {
				report(c.OutOrStdout(), p, res, dry)
			}
			return nil
		},
	}
	c.Flags().BoolVar(&dry, "dry-run", false, "say what would change, and write nothing")
	c.Flags().StringSliceVar(&force, "force", nil, "blocks, as MODULE/BLOCK, that replace even a newer translation in the pack")
	c.Flags().StringVarP(&out, "output", "o", "", "also write the file again, up to date with the pack, to go on working in it")
	return c
}

// maxReturn is one byte more than package exchange reads.
const maxReturn = 16<<20 + 1

func readReturn(path string) (*exchange.Return, []finding.Finding, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, nil, fmt.Errorf("cannot read the file to hand back: %w", err)
	}
	if !info.Mode().IsRegular() {
		return nil, nil, fmt.Errorf("%s is not an ordinary file; give the file that the translator sent", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, fmt.Errorf("cannot read the file to hand back: %w", err)
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, maxReturn))
	if err != nil {
		return nil, nil, fmt.Errorf("cannot read the file to hand back: %w", err)
	}
	file := source.New(filepath.ToSlash(path), b)
	read := exchange.ReadXLIFF
	if ext := strings.ToLower(filepath.Ext(path)); ext == ".po" || ext == ".pot" {
		read = exchange.ReadPO
	}
	came, findings := read(file)
	return came, findings, nil
}

func refuse(c *cobra.Command, findings []finding.Finding, path string) error {
	if err := finding.Text(c.ErrOrStderr(), findings, ""); err != nil {
		return err
	}
	fmt.Fprintf(c.ErrOrStderr(), "nothing was taken from %s\n", filepath.ToSlash(path))
	return errPack
}

// writeChanges writes all changes or none, and only over what they were made from.
func writeChanges(p *pack.Pack, res *exchange.Result) error {
	var files []publish.Text
	for _, ch := range res.Changes {
		path := filepath.Join(filepath.FromSlash(p.Name), filepath.FromSlash(ch.Path))
		now, err := os.ReadFile(path)
		missing := errors.Is(err, fs.ErrNotExist)
		if err != nil && !missing {
			return fmt.Errorf("cannot read the lesson again: %w; nothing was changed", err)
		}
		mark, same := bytes.CutSuffix(now, ch.Old) // a byte order mark may stand before
		if !same || missing != (ch.Old == nil) || len(mark) > len("\ufeff") {
			return fmt.Errorf("%s was changed meanwhile, and nothing was taken; run the command again", filepath.ToSlash(path))
		}
		files = append(files, publish.Text{Path: path, Data: append(bytes.Clone(mark), ch.Data...)})
	}
	return publish.Together(files)
}

func report(w io.Writer, p *pack.Pack, res *exchange.Result, dry bool) {
	done := "taken"
	if dry {
		done = "would be taken"
	}
	for _, m := range res.Modules {
		if m.Taken+m.Confirmed+m.Unfinished+m.Left == 0 {
			continue
		}
		fmt.Fprintf(w, "%s: %s %s, %d confirmed, %d not finished, %d left as they are\n", m.ID, count(m.Taken, "block"), done, m.Confirmed, m.Unfinished, m.Left)
		if m.Dropped > 0 {
			fmt.Fprintf(w, "%s: %s taken out, since the source has them no more\n", m.ID, count(m.Dropped, "block"))
		}
		if m.Made {
			fmt.Fprintf(w, "%s: the lesson is new; say how far it has come in %s/module.yaml: translations: {%s: {state: translated}}\n", m.ID, m.ID, res.Lang)
		}
	}
	if len(res.Changes) == 0 {
		fmt.Fprintln(w, "nothing changed")
	}
}
