package publish

import (
	"os"
	"path/filepath"
	"testing"
)

func TestFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "reports", "check.sarif")
	for _, text := range []string{"first and longer", "second"} {
		if err := File(path, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(path); err != nil || string(got) != text {
			t.Fatalf("got %q, %v; want %q", got, err, text)
		}
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(entries) != 1 {
		t.Errorf("something was left beside the file: %v %v", entries, err)
	}
}

// TestFileRefuses: what is not an ordinary file is never put out of the way.
func TestFileRefuses(t *testing.T) {
	dir := t.TempDir()
	plain := filepath.Join(dir, "plain")
	if err := os.WriteFile(plain, []byte("kept"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"", dir, os.DevNull, filepath.Join(plain, "below")} {
		if err := File(path, []byte("text")); err == nil {
			t.Errorf("%q: no error", path)
		}
	}
	if info, err := os.Stat(os.DevNull); err != nil || info.Mode().IsRegular() {
		t.Errorf("the null device is gone: %v %v", info, err)
	}
	if got, _ := os.ReadFile(plain); string(got) != "kept" {
		t.Errorf("got %q", got)
	}
}
