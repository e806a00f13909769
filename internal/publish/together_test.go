package publish

import (
	"os"
	"path/filepath"
	"testing"
)

func TestTogether(t *testing.T) {
	dir := t.TempDir()
	one, two, folder := filepath.Join(dir, "one.md"), filepath.Join(dir, "two.md"), filepath.Join(dir, "folder")
	if err := os.WriteFile(one, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	unchanged := func(what string) {
		t.Helper()
		if b, _ := os.ReadFile(one); string(b) != "old" {
			t.Errorf("%s: the first file holds %q", what, b)
		}
		if entries, _ := os.ReadDir(dir); len(entries) != 2 {
			t.Errorf("%s: %v", what, entries)
		}
	}
	for what, second := range map[string]string{"a folder": folder, "no such folder": filepath.Join(dir, "none", "x")} {
		if err := Together([]Text{{one, []byte("new")}, {second, []byte("new")}}); err == nil {
			t.Errorf("%s: no error", what)
		}
		unchanged(what)
	}
	if err := Together([]Text{{one, []byte("new")}, {two, []byte("second")}}); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{one: "new", two: "second"} {
		if b, _ := os.ReadFile(path); string(b) != want {
			t.Errorf("%s holds %q", path, b)
		}
	}
	if info, _ := os.Stat(one); info.Mode().Perm() != 0o600 {
		t.Errorf("the permissions changed: %v", info.Mode())
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 3 {
		t.Errorf("something was left beside the files: %v", entries)
	}
}
