package main

import (
	"fmt"
	"io/fs"
	"path/filepath"

	"github.com/spf13/cobra"

	"wardleaf"
	"wardleaf/internal/publish"
)

func startCommand(s *settings) *cobra.Command {
	return &cobra.Command{
		Use:   "start DIR",
		Short: "Lay out a pack of your own in a new folder",
		Long:  `Start copies the starter pack into a new folder. Put your facility's name and telephone numbers into facility.yaml first.`,
		Args:  cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			files := map[string][]byte{}
			starter := wardleaf.Content()
			err := fs.WalkDir(starter, ".", func(path string, d fs.DirEntry, err error) error {
				if err != nil || d.IsDir() {
					return err
				}
				files[path], err = fs.ReadFile(starter, path)
				return err
			})
			if err != nil {
				return err
			}
			dir := args[0]
			if err := publish.New(dir, files); err != nil {
				return err
			}
			if !s.quiet {
				fmt.Fprintf(c.OutOrStdout(), `%s holds %d files. Next:
  1. put the name and telephone numbers of your facility into %s
  2. wardleaf check --pack %s
  3. wardleaf assemble --pack %s
`, dir, len(files), filepath.Join(dir, "facility.yaml"), dir, dir)
			}
			return nil
		},
	}
}
