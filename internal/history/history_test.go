package history

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// repository makes a repository in a new folder, with git itself.
func repository(t *testing.T) (dir string, git func(args ...string)) {
	t.Helper()
	program, err := exec.LookPath("git")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("git is not installed")
		}
		t.Skip("git is not installed")
	}
	dir = t.TempDir()
	git = func(args ...string) {
		t.Helper()
		cmd := exec.Command(program, append([]string{"-c", "user.name=Tester", "-c", "user.email=tester@example.org", "-c", "commit.gpgsign=false"}, args...)...)
		cmd.Dir = dir
		cmd.Env = append(environment(os.Environ()), "GIT_AUTHOR_DATE=2026-11-25T12:00:00Z", "GIT_COMMITTER_DATE=2026-11-25T12:00:00Z")
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("git %v: %v\n%s", args, err, out)
		}
	}
	git("init", "--quiet", "--initial-branch=main")
	return dir, git
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

// The files of a revision are those that were committed, from the folder on, and
// nothing that happened since shows.
func TestFiles(t *testing.T) {
	dir, git := repository(t)
	pack := filepath.Join(dir, "books", "a pack [1]")
	write(t, filepath.Join(pack, "pack.yaml"), "one\r\n")
	write(t, filepath.Join(pack, "holding", "en.md"), "")
	write(t, filepath.Join(pack, "holding", "कंगारू \"x\".md"), "नमस्ते\n\x00\n")
	write(t, filepath.Join(pack, "photo.bin"), "left out")
	write(t, filepath.Join(dir, "outside.yaml"), "outside")
	write(t, filepath.Join(dir, ".gitattributes"), "*.md export-ignore\n*.yaml export-subst\n")
	if err := os.Symlink("../../outside.yaml", filepath.Join(pack, "link.yaml")); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal(err)
		}
		t.Skip("no symbolic links here")
	}
	git("add", "--all")
	git("commit", "--quiet", "-m", "one")
	git("tag", "v1")
	write(t, filepath.Join(pack, "pack.yaml"), "two")
	write(t, filepath.Join(pack, "new.md"), "new")
	git("add", "--all")
	git("commit", "--quiet", "-m", "two")

	r, err := Open(pack)
	if err != nil {
		t.Fatal(err)
	}
	c, err := r.Commit("v1")
	if err != nil {
		t.Fatal(err)
	}
	if got := c.Date.Format("2006-01-02"); len(c.ID) < 40 || got != "2026-11-25" {
		t.Errorf("commit %s of %s", c.ID, got)
	}
	fsys, err := r.Files(c, ".yaml", ".md")
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"pack.yaml": "one\r\n", "holding/en.md": "", "holding/कंगारू \"x\".md": "नमस्ते\n\x00\n"}
	var names []string
	for name, text := range want {
		names = append(names, name)
		if b, err := fs.ReadFile(fsys, name); err != nil || string(b) != text {
			t.Errorf("%s: %q, %v, want %q", name, b, err, text)
		}
	}
	if err := fstest.TestFS(fsys, names...); err != nil {
		t.Error(err)
	}
	var got []string
	if err := fs.WalkDir(fsys, ".", func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			got = append(got, path)
		}
		return err
	}); err != nil {
		t.Fatal(err)
	}
	slices.Sort(got)
	slices.Sort(names)
	if !slices.Equal(got, names) {
		t.Errorf("files %q, want %q", got, names)
	}
	head, err := r.Commit("HEAD")
	if err != nil {
		t.Fatal(err)
	}
	if fsys, err = r.Files(head, ".yaml"); err != nil {
		t.Fatal(err)
	}
	if b, _ := fs.ReadFile(fsys, "pack.yaml"); string(b) != "two" {
		t.Errorf("at HEAD: %q", b)
	}
}

// The root of a repository is a folder like any other.
func TestRoot(t *testing.T) {
	dir, git := repository(t)
	write(t, filepath.Join(dir, "pack.yaml"), "one")
	git("add", "--all")
	git("commit", "--quiet", "-m", "one")
	r, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	c, err := r.Commit("main")
	if err != nil {
		t.Fatal(err)
	}
	fsys, err := r.Files(c, ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	if b, _ := fs.ReadFile(fsys, "pack.yaml"); string(b) != "one" {
		t.Errorf("%q", b)
	}
	if _, err := r.Files(c, ".svg"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no such files: %v", err)
	}
}

// Names that are no revision are refused, and none reaches git as an option.
func TestCommitRefused(t *testing.T) {
	dir, git := repository(t)
	write(t, filepath.Join(dir, "pack.yaml"), "one")
	git("add", "--all")
	git("commit", "--quiet", "-m", "one")
	r, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"":                       "is not the name",
		"-h":                     "is not the name",
		"--output=stolen":        "is not the name",
		"HEAD\n--all":            "is not the name",
		"HEAD\x00":               "is not the name",
		"HEAD..main":             "two words",
		"HEAD...main":            "two words",
		"nothing":                "no revision",
		"HEAD:pack.yaml":         "no revision",
		"HEAD~9":                 "no revision",
		"^HEAD":                  "no revision",
		"@{u}":                   "no revision",
		"HEAD^{/}":               "",
		"$(touch stolen)":        "no revision",
		strings.Repeat("a", 300): "no revision",
	} {
		if _, err := r.Commit(name); want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%q: %v, want %q", name, err, want)
		}
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 2 {
		t.Errorf("the folder holds %v", entries)
	}
}

func TestOpenRefused(t *testing.T) {
	dir, _ := repository(t)
	if _, err := Open(filepath.Join(dir, ".git")); err == nil || !strings.Contains(err.Error(), "no part of a working tree") {
		t.Errorf("inside .git: %v", err)
	}
	outside := t.TempDir()
	t.Setenv("GIT_CEILING_DIRECTORIES", filepath.Dir(outside))
	if _, err := Open(outside); err == nil || !strings.Contains(err.Error(), "no git repository") {
		t.Errorf("outside: %v", err)
	}
	t.Setenv("PATH", "")
	if _, err := Open(dir); err == nil || !strings.Contains(err.Error(), "install git") {
		t.Errorf("without git: %v", err)
	}
}

// What git prints is not trusted: too much of it, or less than it says, is an error.
func TestBounds(t *testing.T) {
	id := strings.Repeat("a", 40)
	r := &Repository{}
	for name, list := range map[string]string{
		"one large file": "100644 blob " + id + " 99999999\ta.md\x00",
		"many files":     strings.Repeat("100644 blob "+id+" 1\ta.md\x00", maxFiles+1),
		"no size":        "100644 blob " + id + " -\ta.md\x00",
		"no hash":        "100644 blob xyz 1\ta.md\x00",
	} {
		if _, err := r.blobs(list, []string{".md"}); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	for _, list := range []string{"", "\x00\x00", "100644 blob", "120000 blob " + id + " 1\ta.md\x00", "160000 commit " + id + " -\ta.md\x00", "100644 blob " + id + " 1\t../a.md\x00", "100644 blob " + id + " 1\t/a.md\x00"} {
		if got, err := r.blobs(list, []string{".md"}); err != nil || len(got) > 0 {
			t.Errorf("%q: %v, %v", list, got, err)
		}
	}
	blobs := []blob{{"a.md", id, 3}}
	for _, out := range []string{"", id + " missing\n", id + " blob 3\nab", id + " blob 2\nab\n", id + " blob 3\nabc"} {
		if _, err := archive(blobs, []byte(out)); !errors.Is(err, errTorn) {
			t.Errorf("%q: %v", out, err)
		}
	}
}
