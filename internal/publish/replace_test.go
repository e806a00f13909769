package publish

import (
	"os"
	"path/filepath"
	"testing"
)

func TestReplace(t *testing.T) {
	dir := t.TempDir()
	path, link := filepath.Join(dir, "module.yaml"), filepath.Join(dir, "link.yaml")
	if err := os.WriteFile(path, []byte("old and longer"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("module.yaml", link); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal(err)
		}
		t.Skip("no symbolic links here:", err)
	}
	for _, name := range []string{path, link} {
		if err := Replace(name, []byte(name)); err != nil {
			t.Fatal(err)
		}
		if got, _ := os.ReadFile(path); string(got) != name {
			t.Errorf("got %q", got)
		}
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v", err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the permissions changed: %v %v", info.Mode(), err)
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 2 {
		t.Errorf("something was left beside the file: %v", entries)
	}
	for _, name := range []string{dir, filepath.Join(dir, "none")} {
		if err := Replace(name, nil); err == nil {
			t.Errorf("%q: no error", name)
		}
	}
}
