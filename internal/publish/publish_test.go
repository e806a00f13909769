package publish

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	got := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := os.ReadFile(path)
		rel, _ := filepath.Rel(dir, path)
		got[filepath.ToSlash(rel)] = string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestFolderReplacesWhole(t *testing.T) {
	base := t.TempDir()
	out := filepath.Join(base, "out")
	if err := Folder(out, map[string][]byte{"en/a.html": []byte("one"), "old.html": []byte("old")}, Manifest{Version: "1"}); err != nil {
		t.Fatal(err)
	}
	if err := Folder(out, map[string][]byte{"en/a.html": []byte("two")}, Manifest{Version: "2"}); err != nil {
		t.Fatal(err)
	}
	got := tree(t, base)
	if len(got) != 2 || got["out/en/a.html"] != "two" {
		t.Fatalf("left in the folder: %v", got)
	}
	var m Manifest
	if err := json.Unmarshal([]byte(got["out/manifest.json"]), &m); err != nil {
		t.Fatal(err)
	}
	// SHA-256 of "two", as sha256sum gives it.
	if m.Files["en/a.html"] != "3fc4ccfe745870e2c0d99f71f30ff0656c8dedd41cc1d7d3d376b0dbe685e2f3" {
		t.Errorf("digest %s", m.Files["en/a.html"])
	}
}

func TestFolderRefusesWhatIsNotOurs(t *testing.T) {
	out := t.TempDir()
	if err := os.WriteFile(filepath.Join(out, "letter.txt"), []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := Folder(out, map[string][]byte{"a": nil}, Manifest{}); err == nil {
		t.Fatal("a folder of other files was replaced")
	}
	if got := tree(t, out); len(got) != 1 || got["letter.txt"] != "mine" {
		t.Fatalf("the folder was touched: %v", got)
	}
	file := filepath.Join(out, "letter.txt")
	if err := Folder(file, nil, Manifest{}); err == nil {
		t.Fatal("a file was replaced")
	}
}

func TestFolderThatCannotBeWritten(t *testing.T) {
	if os.Getuid() == 0 {
		// The superuser may write anywhere; a file in the way stops even that.
		file := filepath.Join(t.TempDir(), "file")
		if err := os.WriteFile(file, nil, 0o644); err != nil {
			t.Fatal(err)
		}
		if err := Folder(filepath.Join(file, "out"), nil, Manifest{}); err == nil {
			t.Fatal("wrote below a file")
		}
		return
	}
	base := t.TempDir()
	if err := os.Chmod(base, 0o555); err != nil {
		t.Fatal(err)
	}
	if err := Folder(filepath.Join(base, "out"), nil, Manifest{}); err == nil {
		t.Fatal("wrote into a read-only folder")
	}
}

func TestPreviousKeepsOnlyWhatIsUnchanged(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	if err := Folder(out, map[string][]byte{"hi/a": []byte("a"), "hi/b": []byte("b"), "hindi/c": []byte("c"), "en/a": []byte("e")}, Manifest{}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(out, "hi", "b"), []byte("changed by hand"), 0o644); err != nil {
		t.Fatal(err)
	}
	got, err := Previous(out, "hi")
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 1 || string(got["hi/a"]) != "a" {
		t.Errorf("kept %v", got)
	}
	if got, err := Previous(filepath.Join(out, "nowhere"), "hi"); err != nil || got != nil {
		t.Errorf("no earlier run: %v, %v", got, err)
	}
}

func TestNew(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "deep", "pack")
	if err := New(dir, map[string][]byte{"pack.yaml": []byte("x")}); err != nil {
		t.Fatal(err)
	}
	if err := New(dir, map[string][]byte{"pack.yaml": []byte("y")}); err == nil {
		t.Fatal("a folder with files was written over")
	}
	if got := tree(t, dir); got["pack.yaml"] != "x" {
		t.Fatalf("got %v", got)
	}
}
