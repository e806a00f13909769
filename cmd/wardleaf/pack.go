package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"wardleaf"
)

const starterName = "the starter pack"

// openPack finds the pack to work on. Files are read through os.Root, so that
// nothing outside the folder is reached, not even by a symbolic link.
func openPack(dir string) (fs.FS, string, error) {
	if dir == "" {
		for _, d := range []string{".", "content"} {
			if _, err := os.Stat(filepath.Join(d, "pack.yaml")); err == nil {
				dir = d
				break
			}
		}
		if dir == "" {
			return wardleaf.Content(), starterName, nil
		}
	}
	info, err := os.Stat(dir)
	switch {
	case err != nil:
		return nil, "", fmt.Errorf("cannot open the pack: %w; give a folder that holds pack.yaml with --pack, or make one with: wardleaf start DIR", err)
	case !info.IsDir():
		return nil, "", fmt.Errorf("%s is a file; a pack is a folder that holds pack.yaml: give that folder with --pack", dir)
	}
	r, err := os.OpenRoot(dir)
	if err != nil {
		return nil, "", fmt.Errorf("cannot open the pack: %w; make the folder readable", err)
	}
	return r.FS(), filepath.ToSlash(dir), nil
}
