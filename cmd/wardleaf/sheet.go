package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"wardleaf/internal/assemble"
	"wardleaf/internal/finding"
	"wardleaf/internal/sheet"
	"wardleaf/internal/source"
)

// sheetCommand has one command below it for each sheet, with the sheet's inputs as options.
func sheetCommand(s *settings) *cobra.Command {
	c := &cobra.Command{
		Use:   "sheet NAME",
		Short: "Print one computed sheet, blank or with its inputs",
		Long: `Sheet prints one computed sheet in one language as a PDF. Without inputs it is
blank. Each sheet tells its inputs: wardleaf sheet NAME --help.`,
		Args: func(_ *cobra.Command, args []string) error {
			all := strings.Join(sheet.Names(), ", ")
			if len(args) == 0 {
				return fmt.Errorf("sheet: say which: %s", all)
			}
			if near := finding.Nearest(args[0], sheet.Names()); near != "" {
				return fmt.Errorf("there is no sheet %q; perhaps %s was meant", args[0], near)
			}
			return fmt.Errorf("there is no sheet %q; there are %s", args[0], all)
		},
		RunE: func(*cobra.Command, []string) error { return nil },
	}
	for _, sh := range sheet.List {
		c.AddCommand(oneSheet(s, sh))
	}
	return c
}

func oneSheet(s *settings, sh *sheet.Sheet) *cobra.Command {
	out := ""
	values := map[string]*string{}
	c := &cobra.Command{
		Use:   sh.Name,
		Short: strings.ToUpper(sh.About[:1]) + sh.About[1:],
		Args:  cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			o, err := s.options()
			if err != nil {
				return err
			}
			if len(o.Langs) > 1 {
				return fmt.Errorf("--lang %s: a sheet is printed in one language; give one", strings.Join(o.Langs, ","))
			}
			inputs, files := map[string]string{}, map[string]*source.File{}
			for _, in := range sh.Inputs {
				v := *values[in.Name]
				inputs[in.Name] = v
				if in.File && v != "" {
					if files[in.Name], err = readInput(v); err != nil {
						return fmt.Errorf("--%s: %w", in.Name, err)
					}
				}
			}
			data, found, err := assemble.Sheet(o, sh, inputs, files)
			if err != nil {
				return err
			}
			if err := finding.Text(c.ErrOrStderr(), found, ""); err != nil {
				return err
			}
			if data == nil {
				return errPack
			}
			if err := deliver(c, out, data); err != nil {
				return err
			}
			if !s.quiet && out != "-" {
				fmt.Fprintf(c.OutOrStdout(), "%s in %s\n", sh.Name, filepath.ToSlash(out))
			}
			return nil
		},
	}
	for _, in := range sh.Inputs {
		about := in.About
		if in.Value != "" {
			about = strings.Replace(about, in.Value, "`"+in.Value+"`", 1)
		}
		values[in.Name] = c.Flags().String(in.Name, in.Default, about)
	}
	c.Flags().StringVarP(&out, "output", "o", sh.Name+".pdf", "file to write to, - for standard output")
	return c
}

// inputMost is the largest input file that is read.
const inputMost = 1 << 20

// readInput reads a file that a sheet is made from.
func readInput(path string) (*source.File, error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("there is no file %s; give the path of the file to read", filepath.ToSlash(path))
	} else if err != nil {
		return nil, err
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, inputMost+1))
	if err != nil {
		return nil, err
	}
	if len(b) > inputMost {
		return nil, fmt.Errorf("%s is larger than 1 MB; give a file of one baby's measurements", filepath.ToSlash(path))
	}
	return source.New(filepath.ToSlash(path), b), nil
}
