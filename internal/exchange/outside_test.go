package exchange

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
	"wardleaf/internal/pack"
)

// need skips a test when what it is measured against is not there, and fails it in CI.
func need(t *testing.T, what string, err error) {
	t.Helper()
	if err == nil {
		return
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s: %v", what, err)
	}
	t.Skipf("%s: %v", what, err)
}

// jobs are of everything that a job can hold: new, changed with what the source said
// before, and current blocks, codes of every kind, and a language read from right to left.
func jobs(t *testing.T) map[string]*Job {
	t.Helper()
	p, fs, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil || len(fs) > 0 {
		t.Fatal(err, fs)
	}
	before := *p
	p2, _, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range p2.Modules {
		m.Lessons["en"] = m.Lessons["en"].Map(func(in lesson.Inline) []lesson.Inline {
			in.Text = strings.ReplaceAll(in.Text, "baby", "small baby")
			return []lesson.Inline{in}
		})
	}
	fresh := packOf(t, hard, nil)
	return map[string]*Job{
		"all":     Handoff(Order{Pack: p, Lang: "ar", RTL: true, Modules: p.Modules, All: true, Day: day}),
		"changed": Handoff(Order{Pack: p2, Lang: "hi", Modules: p2.Modules, Day: day, Before: &before}),
		"new":     job(fresh, "hi", false),
	}
}

func TestJobs(t *testing.T) {
	j := jobs(t)["changed"]
	fresh, changed := 0, 0
	for _, m := range j.Modules {
		n, c := m.Standings()
		fresh, changed = fresh+n, changed+c
		for _, it := range m.Items {
			if len(it.Previous) == 0 || it.State != "initial" || len(it.Target) == 0 {
				t.Fatalf("a changed block goes out as %+v", it)
			}
		}
	}
	if fresh != 0 || changed < 100 {
		t.Errorf("%d new, %d changed", fresh, changed)
	}
	if x := string(j.XLIFF()); !strings.Contains(x, "<mtc:match ") || !strings.Contains(x, "Before, it said: ") {
		t.Error("what the source said before is not told")
	}
	if po := string(j.PO()); !strings.Contains(po, "\n#, fuzzy\n#| msgid \"") {
		t.Error("the PO file does not mark changed entries")
	}
	if j := Handoff(Order{Pack: &pack.Pack{}, Lang: "hi"}); j.Count() != 0 {
		t.Error("a job of nothing")
	}
}

// TestSchema validates what is written, and every file of testdata/damaged that is not
// damaged, with the schema of the OASIS for the core, by xmllint. The schema is that
// of XLIFF 2.0; 2.1 kept its namespace and its core elements, and added no attribute
// that is written here. It lies in Debian's php-symfony-translation; its terms are the
// OASIS's own, so it is not kept here.
func TestSchema(t *testing.T) {
	_, err := exec.LookPath("xmllint")
	need(t, "xmllint", err)
	const from = "/usr/share/php/Symfony/Component/Translation/Resources/schemas/"
	core, err := os.ReadFile(from + "xliff-core-2.0.xsd")
	need(t, "the schema of the OASIS", err)
	attributes, err := os.ReadFile(from + "xml.xsd")
	need(t, "the schema of the xml namespace", err)
	const import0 = "informativeCopiesOf3rdPartySchemas/w3c/xml.xsd" // a folder that is not shipped with it
	if !bytes.Contains(core, []byte(import0)) {
		t.Fatal("the schema imports another file than expected")
	}
	dir := t.TempDir()
	put := func(name string, b []byte) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	schema := put("core.xsd", bytes.Replace(core, []byte(import0), []byte("xml.xsd"), 1))
	put("xml.xsd", attributes)
	files := map[string][]byte{}
	for name, j := range jobs(t) {
		files[name] = j.XLIFF()
	}
	good, _ := filepath.Glob("testdata/damaged/good*.xlf")
	for _, path := range good {
		files[filepath.Base(path)], _ = os.ReadFile(path)
	}
	for name, b := range files {
		path := put(strings.TrimSuffix(name, ".xlf")+".xlf", b)
		if out, err := exec.Command("xmllint", "--noout", "--nonet", "--schema", schema, path).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%.2000s", name, err, out)
		}
	}
	// The schema does see what is wrong.
	path := put("wrong.xlf", bytes.Replace(files["all"], []byte("<segment "), []byte("<segment wrong=\"1\" "), 1))
	if err := exec.Command("xmllint", "--noout", "--nonet", "--schema", schema, path).Run(); err == nil {
		t.Error("the schema accepts an attribute that is not in it")
	}
}

// TestGettext has msgfmt of GNU gettext check what is written: header, syntax, entries.
// A warning counts as a failure. It also compares how many entries the two see.
func TestGettext(t *testing.T) {
	_, err := exec.LookPath("msgfmt")
	need(t, "msgfmt", err)
	dir := t.TempDir()
	for name, j := range jobs(t) {
		path := filepath.Join(dir, name+".po")
		if err := os.WriteFile(path, j.PO(), 0o600); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command("msgfmt", "--check", "--verbose", "-o", os.DevNull, path)
		cmd.Env = append(os.Environ(), "LC_ALL=C", "LANGUAGE=")
		out, err := cmd.CombinedOutput()
		if err != nil || strings.Contains(string(out), "warning") {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
		t.Logf("%s: %d blocks; %s", name, j.Count(), strings.TrimSpace(string(out)))
	}
}

// TestDeterministic writes every job twice.
func TestDeterministic(t *testing.T) {
	a, b := jobs(t), jobs(t)
	for name := range a {
		for _, f := range formats {
			if !bytes.Equal(f.write(a[name]), f.write(b[name])) {
				t.Errorf("%s differs as %s", name, f.name)
			}
		}
	}
}
