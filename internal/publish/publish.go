// Package publish writes an output folder, or a single file, whole or not at all.
//
// Files are staged in a new folder beside the target, flushed to disk, and take the
// target's place by renaming. A run that fails or is killed before that leaves the
// last good output as it was. It is the only package that writes files.
package publish

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

// ManifestName is the file that lists every other file with its digest. A folder
// that holds it is ours to replace.
const ManifestName = "manifest.json"

// A Manifest says what an output folder holds.
type Manifest struct {
	Pack    string            `json:"pack"`
	Version string            `json:"version"`
	Files   map[string]string `json:"files"` // path -> SHA-256, in hex
	// Kept lists languages that had errors: their files are those of an earlier run.
	Kept []string `json:"kept,omitempty"`
}

// Folder replaces the folder out by the files given, by slash-separated path, and a manifest.
func Folder(out string, files map[string][]byte, m Manifest) error {
	out = filepath.Clean(out)
	if err := replaceable(out); err != nil {
		return err
	}
	m.Files = map[string]string{}
	for name, data := range files {
		sum := sha256.Sum256(data)
		m.Files[name] = hex.EncodeToString(sum[:])
	}
	list, err := json.MarshalIndent(m, "", "  ")
	if err != nil {
		return err
	}
	all := maps.Clone(files)
	all[ManifestName] = append(list, '\n')
	return whole(out, all)
}

// New writes files into a folder that does not exist yet or is empty.
func New(out string, files map[string][]byte) error {
	out = filepath.Clean(out)
	entries, err := os.ReadDir(out)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if len(entries) > 0 {
		return fmt.Errorf("%s is not empty; give the name of a new folder", out)
	}
	return whole(out, files)
}

// whole stages files and puts them in the place of out.
func whole(out string, files map[string][]byte) error {
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return fmt.Errorf("cannot make the folder for the output: %w", err)
	}
	stage, err := os.MkdirTemp(filepath.Dir(out), "."+filepath.Base(out)+"-stage-")
	if err != nil {
		return fmt.Errorf("cannot write beside %s: %w", out, err)
	}
	defer os.RemoveAll(stage) // when all went well it is no longer there
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if err := write(stage, name, files[name]); err != nil {
			return err
		}
	}
	if err := os.Chmod(stage, 0o755); err != nil {
		return err
	}
	return swap(stage, out)
}

// replaceable refuses to replace what an earlier run did not write.
func replaceable(out string) error {
	info, err := os.Stat(out)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if !info.IsDir() {
		return fmt.Errorf("%s is a file; give a folder with --out", out)
	}
	entries, err := os.ReadDir(out)
	if err != nil {
		return err
	}
	if len(entries) == 0 {
		return nil
	}
	if _, err := os.Stat(filepath.Join(out, ManifestName)); err != nil {
		return fmt.Errorf("%s holds files that an earlier run did not write (it has no %s); give another folder with --out, or empty it", out, ManifestName)
	}
	return nil
}

func write(dir, name string, data []byte) error {
	path := filepath.Join(dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync() // a name must never point to half a file after a power cut
	}
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

// swap puts the staged folder in the place of out. Between the two renames there is
// no out; if the second fails the first is undone.
func swap(stage, out string) error {
	old := stage + "-old"
	err := os.Rename(out, old)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return os.Rename(stage, out)
	case err != nil:
		return err
	}
	if err := os.Rename(stage, out); err != nil {
		return errors.Join(err, os.Rename(old, out))
	}
	return os.RemoveAll(old)
}

// Previous reads the files of an earlier run that lie under a folder of out, such as
// one language, by slash-separated path from out. Files that no longer match the
// manifest are left out.
func Previous(out, under string) (map[string][]byte, error) {
	data, err := os.ReadFile(filepath.Join(out, ManifestName))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var m Manifest
	if err := json.Unmarshal(data, &m); err != nil {
		return nil, fmt.Errorf("%s: %w", filepath.Join(out, ManifestName), err)
	}
	root, err := os.OpenRoot(out)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	files := map[string][]byte{}
	for name, digest := range m.Files {
		if len(name) <= len(under) || name[:len(under)+1] != under+"/" {
			continue
		}
		b, err := root.ReadFile(filepath.FromSlash(name))
		if err != nil {
			continue // gone since; it cannot be kept
		}
		if sum := sha256.Sum256(b); hex.EncodeToString(sum[:]) == digest {
			files[name] = b
		}
	}
	return files, nil
}
