package load

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"wardleaf/internal/finding"
)

// good is a pack with nothing for package load to say.
func good() fstest.MapFS {
	return fstest.MapFS{
		"pack.yaml":            {Data: []byte("title: {en: Test}\nsource-language: en\nlanguages: [en]\nmodules: [wrapping]\n")},
		"wrapping/module.yaml": {Data: []byte("minutes: 20\n")},
		"wrapping/en.md":       {Data: []byte("# Wrapping\n\n![Tuck](figures/tuck.svg)\n")},
		"wrapping/figures/tuck.svg": {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10">` +
			`<path d="M1 1L9 9" fill="none" stroke="#000" stroke-width="1"/></svg>`)},
	}
}

func TestGoodInput(t *testing.T) {
	p, found, err := Pack(good(), "pack")
	if err != nil || len(found) > 0 {
		t.Fatal(err, found)
	}
	if f := p.Figures["wrapping/figures/tuck.svg"]; f == nil || f.Drawing == nil {
		t.Error("the picture was not read")
	}
	withMark := good()
	withMark["wrapping/en.md"].Data = []byte("\xef\xbb\xbf# Wrapping\n")
	p, found, err = Pack(withMark, "pack")
	if err != nil || finding.Count(found, finding.Error) > 0 || p.Modules[0].Title("en") != "Wrapping" {
		t.Error("a byte order mark is in the way:", err, found)
	}
}

// TestBadInput gives packs that are broken in one way each, and the one finding that
// must say so.
func TestBadInput(t *testing.T) {
	const md, record = "wrapping/en.md", "wrapping/module.yaml"
	big := func(s string, n int) string { return strings.Repeat(s, n/len(s)+1) }
	tests := []struct{ name, file, data, place, rule, words string }{
		{"malformed record", record, "minutes: 20\naudience: [a, b\nsources: [c]\n", record + ":3:1", "record-syntax", "not well-formed"},
		{"tab as indent", record, "review:\n\tdue: 2027-01-01\n", record + ":2:1", "record-syntax", "not well-formed"},
		{"open quote", record, "minutes: \"20\n", record + ":1:10", "record-syntax", "not well-formed"},
		{"two documents", record, "minutes: 20\n---\nminutes: 30\n", record + ":3:1", "record-syntax", "second document"},
		{"type mark", record, "minutes: !!int 20\n", record + ":1:10", "record-syntax", "type mark"},
		{"alias cycle", record, "audience: &a\n  - *a\n", record + ":1:11", "record-reference", "write the value out"},
		{"merge of values", record, "<<: {minutes: 20}\n", record + ":1:1", "record-reference", "write the value out"},
		{"list for a value", record, "minutes: [20]\n", record + ":1:10", "record-value", "this is a list"},
		{"value for a list", record, "audience: families\n", record + ":1:11", "record-value", "this is one value"},
		{"value for a group", record, "review: soon\n", record + ":1:9", "record-value", "this is one value"},
		{"list at the top", record, "- minutes\n", record + ":1:1", "record-value", "this is a list"},
		{"unknown name", record, "review:\n  dues: 2027-11-20\n", record + ":2:3", "record-key-unknown", "write due"},
		{"record too large", record, "# " + big("x", maxYAML), record, "file-too-large", "256 KiB"},
		{"record too deep on a line", record, big("- ", 100_000), record + ":1:1", "file-too-complex", "too deep"},
		{"record of brackets", record, big("[", 100_000), record + ":1:1", "file-too-complex", "brackets"},
		{"record too deep over lines", record, "a:\n " + strings.Join(strings.Split(big("b", 20), ""), ":\n ") + ":\n", record + ":1:1", "record-key-unknown", "minutes"},
		{"record of too many lines", record, big("#\n", 200_000), record + ":6001:1", "file-too-complex", "lines"},
		{"record not UTF-8", record, "minutes: 20 # \xe9\n", record + ":1:15", "file-not-text", "0xE9"},
		{"record empty", record, "", "", "", ""},
		{"lesson of 10 MB", md, big("Wash your hands.\n\n", 10<<20), md, "file-too-large", "1024 KiB"},
		{"lesson not UTF-8", md, "# Wrapping\n\nचा\xff\n", md + ":3:3", "file-not-text", "0xFF"},
		{"lesson with a zero byte", md, "# Wrap\x00ping\n", md + ":1:7", "file-not-text", "zero byte"},
		{"lesson on one line", md, big("wash ", 20_000), md + ":1:1", "file-too-complex", "KiB"},
		{"lesson of too many lines", md, big("a\n", 50_000), md + ":20001:1", "file-too-complex", "lines"},
		{"lesson of marks", md, big("*a_\n", 40_000), md + ":1001:1", "file-too-complex", "marks"},
		{"lesson of bars", md, big("a|", 4_000), md + ":1:1", "file-too-complex", "bars"},
		{"lesson of items after tabs", md, "# A\n\n- a\n" + big("\t- b\n", 60_000), "", "", ""},
		{"lesson of emphasis", md, "# A\n\n" + strings.Repeat(big("*a_", 2_900)+"\n\n", 100), "", "", ""},
		{"lesson of a table", md, "# A\n\n" + strings.Repeat("a|", 30) + "\n" + strings.Repeat("-|", 30) + "\n" + big("a\n", 30_000), "", "", ""},
		{"lesson too deep", md, "# A\n\n" + big("> ", 4_000) + "a\n", md + ":3:25", "file-too-complex", "deep"},
		{"picture too large", "wrapping/figures/tuck.svg", big(" ", maxFigure), "wrapping/figures/tuck.svg", "file-too-large", "512 KiB"},
		{"picture not a drawing", "wrapping/figures/tuck.svg", "GIF89a", "wrapping/figures/tuck.svg:1:1", "figure-unsafe", ""},
		{"picture of another kind", md, "![A](figures/tuck.png)\n", md + ":1:1", "figure-unsafe", "SVG"},
		{"pack.yaml of nothing", "pack.yaml", "\n", "pack.yaml:1:1", "record-key-missing", "modules"},
		{"module that is a path", "pack.yaml", "title: {en: T}\nsource-language: en\nlanguages: [en]\nmodules: [../wrapping]\n", "pack.yaml:4:11", "record-value", "cannot be a name"},
		{"language that is a path", "pack.yaml", "title: {en: T}\nsource-language: en\nlanguages: [en, ../x]\nmodules: [wrapping]\n", "pack.yaml:3:17", "record-value", "language tag"},
		{"language written otherwise", "pack.yaml", "title: {en: T}\nsource-language: en\nlanguages: [en, PT_br]\nmodules: [wrapping]\n", "pack.yaml:3:17", "record-value", "write pt-BR"},
		{"milk table undated", "facility.yaml", "feeding-table:\n  bands: [{from: 1500, to: 1749, feeds-a-day: 8, ml-per-feed: [12]}]\n", "facility.yaml:2:3", "record-key-missing", "lacks dated"},
		{"milk table with no such day", "facility.yaml", "feeding-table:\n  dated: 2026-02-30\n  bands: [{from: 1500, to: 1749, feeds-a-day: 8, ml-per-feed: [12]}]\n", "facility.yaml:2:10", "record-value", "must be a date"},
		{"milk table in kilograms", "facility.yaml", "feeding-table:\n  dated: 2026-03-01\n  bands: [{from: 1.5, to: 1749, feeds-a-day: 8, ml-per-feed: [12]}]\n", "facility.yaml:3:18", "record-value", "from 400 to 6000"},
		{"milk table with words", "facility.yaml", "feeding-table:\n  dated: 2026-03-01\n  bands: [{from: 1500, to: 1749, feeds-a-day: 8, ml-per-feed: [12, some]}]\n", "facility.yaml:3:68", "record-value", "day 2 of ml-per-feed"},
		{"milk table of too much", "facility.yaml", "feeding-table:\n  dated: 2026-03-01\n  bands: [{from: 1500, to: 1749, feeds-a-day: 8, ml-per-feed: [12, 350]}]\n", "facility.yaml:3:68", "record-value", "from 0 to 200"},
		{"milk table without feeds", "facility.yaml", "feeding-table:\n  dated: 2026-03-01\n  bands: [{from: 1500, to: 1749, ml-per-feed: [12]}]\n", "facility.yaml:3:11", "record-key-missing", "lacks feeds-a-day"},
		{"milk table misspelt", "facility.yaml", "feeding-table:\n  dated: 2026-03-01\n  bands: [{from: 1500, to: 1749, feeds: 8, ml-per-feed: [12]}]\n", "facility.yaml:3:34", "record-key-unknown", "feeds-a-day"},
		{"milk table empty", "facility.yaml", "feeding-table:\n  dated: 2026-03-01\n  bands: []\n", "facility.yaml:2:3", "record-key-missing", "lacks bands"},
		{"range upside down", "numbers.yaml", "a: {low: 5, high: 4, status: common-practice}\n", "numbers.yaml:1:1", "record-value", "low is not below high"},
		{"amount in words", "numbers.yaml", "a:\n  amount: 5\n  low: five\n  status: common-practice\n", "numbers.yaml:3:8", "record-value", "amount"},
		{"amount and range", "numbers.yaml", "a: {amount: 5, low: 3, high: 4, status: common-practice}\n", "numbers.yaml:1:1", "record-value", "either"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			fsys := good()
			fsys[test.file] = &fstest.MapFile{Data: []byte(test.data)}
			start := time.Now()
			p, found, err := Pack(fsys, "pack")
			if err != nil || p == nil {
				t.Fatal(err)
			}
			if d := time.Since(start); d > 5*time.Second {
				t.Errorf("took %v", d)
			}
			insideFile(t, found)
			for _, f := range found {
				if place(f) == test.place && f.Rule == test.rule && strings.Contains(f.What+f.Mend, test.words) {
					return
				}
			}
			if test.rule != "" || finding.Count(found, finding.Note) < len(found) {
				t.Errorf("want %s %s: %s; found:", test.place, test.rule, test.words)
				for _, f := range found {
					t.Errorf("  %s %s: %s; %s", place(f), f.Rule, f.What, f.Mend)
				}
			}
		})
	}
}

func place(f finding.Finding) string {
	var b strings.Builder
	if err := finding.Text(&b, []finding.Finding{f}, ""); err != nil {
		return err.Error()
	}
	where, _, _ := strings.Cut(b.String(), ": ")
	return where
}

// TestBadSurroundings gives folders that are no pack at all. Each is an error that
// says what to do.
func TestBadSurroundings(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	write(t, file, "text")
	closed := filepath.Join(dir, "closed")
	if err := os.Mkdir(closed, 0); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		name, words string
		fsys        fs.FS
	}{
		{"a file", "not a folder", os.DirFS(file)},
		{"nothing there", "no such folder", os.DirFS(filepath.Join(dir, "none"))},
		{"a folder that may not be read", "cannot be", unreadable{}},
	}
	for _, test := range tests {
		_, _, err := Pack(test.fsys, "content")
		if err == nil || !strings.HasPrefix(err.Error(), "content: ") || !strings.Contains(err.Error(), test.words) {
			t.Errorf("%s: %v", test.name, err)
		}
	}
	if os.Getuid() != 0 { // nothing is closed to root
		if _, _, err := Pack(os.DirFS(closed), "content"); err == nil {
			t.Error("a closed folder was read")
		}
	}
}

// unreadable is a folder that exists and cannot be opened.
type unreadable struct{}

func (unreadable) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
}

// TestLinksOutOfThePack reads a pack through os.Root, whose files link to places
// outside it and to themselves.
func TestLinksOutOfThePack(t *testing.T) {
	dir := t.TempDir()
	write(t, filepath.Join(dir, "secret.md"), "# Secret\n")
	content := filepath.Join(dir, "content")
	for name, f := range good() {
		write(t, filepath.Join(content, filepath.FromSlash(name)), string(f.Data))
	}
	link := func(from, to string) {
		name := filepath.Join(content, filepath.FromSlash(from))
		os.Remove(name)
		if err := os.Symlink(to, name); err != nil {
			if os.Getenv("CI") == "true" {
				t.Fatal(err)
			}
			t.Skip("no symbolic links here:", err)
		}
	}
	link("wrapping/en.md", "../../secret.md")
	link("wrapping/module.yaml", "module.yaml")
	link("numbers.yaml", "/etc/hostname")
	link("wrapping/figures/tuck.svg", ".")
	root, err := os.OpenRoot(content)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	p, found, err := Pack(root.FS(), "content")
	if err != nil {
		t.Fatal(err)
	}
	if p.Modules[0].Lessons["en"] != nil {
		t.Error("a file outside the pack was read")
	}
	unread := map[string]bool{}
	for _, f := range found {
		if f.Rule == "file-unreadable" {
			unread[f.Place.File.Path] = true
		}
	}
	for _, name := range []string{"wrapping/en.md", "wrapping/module.yaml", "numbers.yaml"} {
		if !unread[name] {
			t.Errorf("nothing was said of %s; found %v", name, found)
		}
	}
}

func write(t *testing.T, name, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
