package publish

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// File writes one file, or leaves what was there. It replaces an ordinary file only:
// a folder, or a device such as a terminal, is refused.
func File(path string, data []byte) error {
	path = filepath.Clean(path)
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return fmt.Errorf("cannot write the output: %w; give another file with -o", err)
	case !info.Mode().IsRegular():
		return fmt.Errorf("%s is not an ordinary file and is left as it is; give the name of a file with -o, or - for standard output", path)
	}
	dir := filepath.Dir(path)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder for the output: %w; give another file with -o", err)
	}
	stage, err := os.MkdirTemp(dir, "."+filepath.Base(path)+"-stage-")
	if err != nil {
		return fmt.Errorf("cannot write beside %s: %w; give a file in a folder that you may write to with -o", path, err)
	}
	defer os.RemoveAll(stage)
	if err := write(stage, "file", data); err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	return os.Rename(filepath.Join(stage, "file"), path)
}
