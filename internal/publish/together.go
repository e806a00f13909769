package publish

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// A Text is a file to be written.
type Text struct {
	Path string
	Data []byte
}

// Together writes several files in folders that exist: all of them, or none. They are
// flushed beside their places first and then renamed in the order given; when one
// cannot be, those before it are put back. Each keeps its permissions, and a link
// stays while the file it leads to is replaced. Only a machine that stops in the
// moment of renaming can leave some of them new and the rest old.
func Together(files []Text) error {
	type move struct{ stage, staged, old, path string }
	var moves []move
	defer func() {
		for _, m := range moves {
			os.RemoveAll(m.stage)
		}
	}()
	for _, f := range files {
		path, mode := f.Path, fs.FileMode(0o644)
		info, err := os.Stat(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			if _, err := os.Lstat(path); err == nil {
				return fmt.Errorf("%s is a link that leads nowhere; nothing was changed", path)
			}
		case err != nil:
			return fmt.Errorf("cannot look at the file to change: %w; nothing was changed", err)
		case !info.Mode().IsRegular():
			return fmt.Errorf("%s is not an ordinary file; nothing was changed", path)
		default:
			mode = info.Mode().Perm()
			if path, err = filepath.EvalSymlinks(path); err != nil {
				return fmt.Errorf("cannot find the file to change: %w; nothing was changed", err)
			}
		}
		stage, err := os.MkdirTemp(filepath.Dir(path), "."+filepath.Base(path)+"-stage-")
		if err != nil {
			return fmt.Errorf("cannot write beside %s: %w; nothing was changed; allow writing to its folder", path, err)
		}
		m := move{stage: stage, staged: filepath.Join(stage, "file"), old: filepath.Join(stage, "old"), path: path}
		moves = append(moves, m)
		if err := write(stage, "file", f.Data); err != nil {
			return fmt.Errorf("cannot write beside %s: %w; nothing was changed", path, err)
		}
		if err := os.Chmod(m.staged, mode); err != nil {
			return fmt.Errorf("cannot write beside %s: %w; nothing was changed", path, err)
		}
		if info != nil {
			if err := os.Link(path, m.old); err != nil {
				old, rerr := os.ReadFile(path)
				if rerr != nil {
					return fmt.Errorf("cannot keep %s for safety: %w; nothing was changed", path, rerr)
				}
				if err := os.WriteFile(m.old, old, mode); err != nil {
					return fmt.Errorf("cannot keep %s for safety: %w; nothing was changed", path, err)
				}
			}
		}
	}
	for i, m := range moves {
		err := os.Rename(m.staged, m.path)
		if err == nil {
			continue
		}
		err = fmt.Errorf("cannot replace %s: %w; nothing was changed", m.path, err)
		for _, done := range moves[:i] {
			if _, e := os.Lstat(done.old); e == nil {
				err = errors.Join(err, os.Rename(done.old, done.path))
			} else {
				err = errors.Join(err, os.Remove(done.path))
			}
		}
		return err
	}
	return nil
}
