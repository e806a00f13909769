package publish

import (
	"fmt"
	"os"
	"path/filepath"
)

// Replace puts data in the place of an ordinary file that is there already, whole or
// not at all, and keeps its permissions. A link stays; the file it leads to is replaced.
func Replace(path string, data []byte) error {
	path, err := filepath.EvalSymlinks(path)
	if err != nil {
		return fmt.Errorf("cannot find the file to change: %w", err)
	}
	info, err := os.Stat(path)
	if err != nil {
		return fmt.Errorf("cannot find the file to change: %w", err)
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("%s is not an ordinary file and is left as it is", path)
	}
	stage, err := os.MkdirTemp(filepath.Dir(path), "."+filepath.Base(path)+"-stage-")
	if err != nil {
		return fmt.Errorf("cannot change %s, which is left as it was: %w; allow writing to its folder", path, err)
	}
	defer os.RemoveAll(stage)
	staged := filepath.Join(stage, "file")
	if err := write(stage, "file", data); err != nil {
		return fmt.Errorf("cannot change %s, which is left as it was: %w", path, err)
	}
	if err := os.Chmod(staged, info.Mode().Perm()); err != nil {
		return fmt.Errorf("cannot change %s, which is left as it was: %w", path, err)
	}
	return os.Rename(staged, path)
}
