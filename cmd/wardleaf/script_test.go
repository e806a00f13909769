package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"wardleaf": main})
}

// TestScripts runs the real program on the scripts of testdata/script.
func TestScripts(t *testing.T) {
	packs, err := filepath.Abs("../../testdata/packs")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("PACKS", packs)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"copy":    copyTree,
			"replace": replace,
			"binary":  spoil,
			"large":   enlarge,
			"code":    exitCode,
			"append":  appendFile,
		},
		RequireExplicitExec: true,
	})
}

// appendFile adds the text of a file to the end of another.
func appendFile(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: append file more")
	}
	text := ts.ReadFile(args[0]) + ts.ReadFile(args[1])
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o644))
}

// copyTree copies a file or a folder with all that is in it.
func copyTree(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: copy from to")
	}
	from, to := ts.MkAbs(args[0]), ts.MkAbs(args[1])
	ts.Check(filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		if d.IsDir() {
			return os.MkdirAll(filepath.Join(to, rel), 0o755)
		}
		b, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(to, rel), b, 0o644)
	}))
}

// replace replaces a text that must be in a file.
func replace(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: replace old new file")
	}
	path := ts.MkAbs(args[2])
	b, err := os.ReadFile(path)
	ts.Check(err)
	if !bytes.Contains(b, []byte(args[0])) {
		ts.Fatalf("%s does not hold %q", args[2], args[0])
	}
	ts.Check(os.WriteFile(path, bytes.Replace(b, []byte(args[0]), []byte(args[1]), 1), 0o644))
}

// spoil writes a byte into a file that is not UTF-8.
func spoil(ts *testscript.TestScript, neg bool, args []string) {
	path := ts.MkAbs(args[0])
	b, err := os.ReadFile(path)
	ts.Check(err)
	ts.Check(os.WriteFile(path, append(b, '\n', 'c', 'a', 'f', 0xE9, '\n'), 0o644))
}

// enlarge makes a file larger than 10 MB.
func enlarge(ts *testscript.TestScript, neg bool, args []string) {
	path := ts.MkAbs(args[0])
	b, err := os.ReadFile(path)
	ts.Check(err)
	ts.Check(os.WriteFile(path, append(b, bytes.Repeat([]byte("more words\n"), 1_000_000)...), 0o644))
}

// exitCode checks the exit code that the last command's error output names the class of.
func exitCode(ts *testscript.TestScript, neg bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	if want != 2 {
		ts.Fatalf("only code 2 can be told from the error output")
	}
	if got := ts.ReadFile("stderr"); !bytes.HasPrefix([]byte(got), []byte("wardleaf: ")) {
		ts.Fatalf("the command did not fail with exit code 2: %s", got)
	}
}
