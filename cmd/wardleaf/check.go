package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"wardleaf/internal/assemble"
	"wardleaf/internal/finding"
)

func checkCommand(s *settings) *cobra.Command {
	var format string
	c := &cobra.Command{
		Use:   "check",
		Short: "Run every rule over the pack and say what is wrong, why it matters and how to mend it",
		Long: `Check runs every rule over the pack, the pages of its pieces included, and writes nothing.
Each finding gives file, line and column, what is wrong, why it matters and how to mend it.`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			o, err := s.options()
			if err != nil {
				return err
			}
			r, err := assemble.Run(o) // with no folder to write to
			if err != nil {
				return err
			}
			errs, warns := finding.Count(r.Findings, finding.Error), finding.Count(r.Findings, finding.Warning)
			switch format {
			case "text":
				err = finding.Text(c.OutOrStdout(), r.Findings, o.Name)
			case "json":
				err = finding.JSON(c.OutOrStdout(), r.Findings)
			default:
				return fmt.Errorf("--format %s: choose text or json", format)
			}
			if err != nil {
				return err
			}
			if !s.quiet && format == "text" {
				fmt.Fprintf(c.OutOrStdout(), "%s: %s, %s\n", o.Name, count(errs, "error"), count(warns, "warning"))
			}
			if errs > 0 || s.strict && warns > 0 {
				return errPack
			}
			return nil
		},
	}
	c.Flags().StringVar(&format, "format", "text", "text or json")
	return c
}
