package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"wardleaf"
	"wardleaf/internal/exchange"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
)

func handoffCommand(s *settings) *cobra.Command {
	var all bool
	var format, out, before string
	c := &cobra.Command{
		Use:   "handoff LANG [MODULE ...]",
		Short: "Write what there is to translate into a file for a translator",
		Long: `Handoff writes the blocks of the lessons that have no translation yet, and those whose
source has changed since they were translated, into one file: XLIFF 2.1, which any
translation program reads, or PO, for simple editors. Each block says where it stands
and what must not be missed, and shows the numbers and approved words in it. Numbers,
sources, telephones and bold words are tags that the translator moves and cannot change.

The file comes back with: wardleaf handback FILE`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			if format != "xliff" && format != "po" {
				return fmt.Errorf("--format %s: choose xliff or po", format)
			}
			p, modules, err := s.translated(c, args[0], args[1:], "hand off")
			if err != nil {
				return err
			}
			order := exchange.Order{Pack: p, Lang: args[0], Modules: modules, All: all}
			if order.Day, err = s.date(); err != nil {
				return err
			}
			if before != "" {
				fsys, name, err := openPack(before)
				if err != nil {
					return err
				}
				if order.Before, _, err = load.Pack(fsys, name); err != nil {
					return err
				}
			}
			catalog, err := locale.Load(wardleaf.Locales())
			if err != nil {
				return err
			}
			_, order.RTL, _ = catalog.Script(args[0])
			job := exchange.Handoff(order)
			if job.Count() == 0 {
				if !s.quiet {
					fmt.Fprintf(c.ErrOrStderr(), "nothing to hand off: every block follows its source (--all hands all of them off)\n")
				}
				return nil
			}
			text := job.XLIFF()
			if format == "po" {
				text = job.PO()
			}
			if err := deliver(c, out, text); err != nil {
				return err
			}
			if !s.quiet && out != "-" {
				for _, m := range job.Modules {
					fresh, changed := m.Standings()
					fmt.Fprintf(c.OutOrStdout(), "%s: %s new, %d changed, %d unchanged\n", m.ID, count(fresh, "block"), changed, len(m.Items)-fresh-changed)
				}
				fmt.Fprintf(c.OutOrStdout(), "%s holds %s\n", out, count(job.Count(), "block"))
			}
			return nil
		},
	}
	c.Flags().BoolVar(&all, "all", false, "translations that follow their source, too")
	c.Flags().StringVar(&format, "format", "xliff", "xliff or po")
	c.Flags().StringVarP(&out, "output", "o", "-", "file to write to, - for standard output")
	c.Flags().StringVar(&before, "before", "", "folder with an earlier state of the pack, to show what a changed block said before")
	return c
}
