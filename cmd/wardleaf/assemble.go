package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/rivo/uniseg"
	"github.com/spf13/cobra"
	"golang.org/x/term"

	"wardleaf/internal/assemble"
	"wardleaf/internal/finding"
)

func assembleCommand(s *settings) *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "assemble",
		Short: "Build the site and every printed piece into a folder",
		Long: `Assemble checks the pack, then builds the site and the booklets of every language.
A language with errors is left as it was; if nothing is sound, nothing is written.`,
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			o, err := s.options()
			if err != nil {
				return err
			}
			o.Out = out
			if !s.quiet && term.IsTerminal(int(os.Stderr.Fd())) {
				o.Progress = func(done, all int, what string) {
					fmt.Fprintf(os.Stderr, "\r\x1b[Kmade %d of %d pieces: %s", done, all, what)
				}
			}
			r, err := assemble.Run(o)
			if o.Progress != nil {
				fmt.Fprint(os.Stderr, "\r\x1b[K")
			}
			if err != nil {
				return err
			}
			return reportAssembly(c.OutOrStdout(), c.ErrOrStderr(), o, r, s.quiet)
		},
	}
	c.Flags().StringVar(&out, "out", "out", "folder to write")
	return c
}

// reportAssembly shows findings and a one-screen summary.
func reportAssembly(stdout, stderr io.Writer, o assemble.Options, r *assemble.Report, quiet bool) error {
	errs, warns := finding.Count(r.Findings, finding.Error), finding.Count(r.Findings, finding.Warning)
	shown := r.Findings
	if errs > 0 && !o.Strict {
		shown = nil
		for _, f := range r.Findings {
			if f.Level == finding.Error {
				shown = append(shown, f)
			}
		}
	}
	if errs > 0 || o.Strict {
		if err := finding.Text(stderr, shown, o.Name); err != nil {
			return err
		}
	}
	if !quiet {
		summary(stdout, o, r, errs, warns)
	}
	if errs > 0 || o.Strict && warns > 0 {
		return errPack
	}
	return nil
}

func summary(w io.Writer, o assemble.Options, r *assemble.Report, errs, warns int) {
	if r.Pack != nil {
		fmt.Fprintf(w, "%s, version %s (%s)\n", r.Pack.Title.In(r.Pack.Source, r.Pack.Source), r.Pack.Version, o.Name)
	}
	for _, m := range r.Made {
		state := "signed off"
		switch {
		case !m.Signed && !m.Final:
			state = "awaiting clinical review and a native-speaking clinician"
		case !m.Signed:
			state = "awaiting clinical review"
		case !m.Final:
			state = "translation awaiting a native-speaking clinician"
		}
		booklet := ""
		if m.Sheets > 0 {
			booklet = fmt.Sprintf("booklet of %d pages on %s, ", m.Pages, count(m.Sheets, "sheet"))
		}
		fmt.Fprintf(w, "  %s %s, %s%s, %s; %s\n",
			pad(m.Name, 10), count(m.Modules, "module"), booklet, count(m.Prints, "PDF"), size(m.Bytes), state)
	}
	for _, l := range r.Kept {
		fmt.Fprintf(w, "  %s has errors; what was assembled before is kept\n", pad(l, 10))
	}
	for _, l := range r.Left {
		fmt.Fprintf(w, "  %s has errors; left out\n", pad(l, 10))
	}
	switch {
	case r.Published:
		fmt.Fprintf(w, "%d files in %s; start at %s\n", r.Files, filepath.ToSlash(o.Out), filepath.ToSlash(filepath.Join(o.Out, "index.html")))
	case errs > 0 || o.Strict && warns > 0:
		fmt.Fprintf(w, "nothing written; %s is as it was\n", filepath.ToSlash(o.Out))
	}
	if errs+warns > 0 {
		fmt.Fprintf(w, "%s, %s; wardleaf check shows them all\n", count(errs, "error"), count(warns, "warning"))
	}
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func size(bytes int) string {
	if bytes < 1000*1000 {
		return fmt.Sprintf("%d kB", (bytes+500)/1000)
	}
	return fmt.Sprintf("%.1f MB", float64(bytes)/1e6)
}

// pad fills a name up to a width in terminal cells.
func pad(s string, width int) string {
	return s + strings.Repeat(" ", max(0, width-uniseg.StringWidth(s)))
}
