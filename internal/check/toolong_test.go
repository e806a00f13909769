package check

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/tools/txtar"

	"wardleaf/internal/font"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/piece"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// TestTooLong makes pieces of the pack of the fixtures with a checklist, or steps, that
// grow, and looks at what is said of them and where.
func TestTooLong(t *testing.T) {
	list := func(head, item string, n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, item, i+1)
		}
		return head + b.String()
	}
	for _, k := range []struct{ piece, old, new, want string }{
		{"wall-checklist", "", "", ""},
		{"wall-checklist", "- [ ] [36.5", list("", "- [ ] Thing %d is as it should be\n", 30) + "- [ ] [36.5", "wrapping/en.md:16:1 wall-checklist-too-long"},
		{"handout", "", "", ""},
		{"handout", "2. Tuck", list("", "2. Do thing %d with both hands and look at the face of the baby all the time\n", 120) + "2. Tuck", "wrapping/en.md:9:1 handout-too-long"},
	} {
		base := archive(t, "testdata/base.txtar")
		fsys := merge(base, &txtar.Archive{})
		en := string(fsys["wrapping/en.md"].Data)
		at := strings.Index(en, k.old)
		fsys["wrapping/en.md"] = &fstest.MapFile{Data: []byte(en[:at] + k.new + en[at+len(k.old):])}
		got := madeTooLong(t, fsys, k.piece)
		if k.want == "" {
			if got != nil {
				t.Errorf("%s: not expected: %+v", k.piece, got)
			}
			continue
		}
		if got == nil {
			t.Errorf("%s: nothing said of %s", k.piece, k.new)
			continue
		}
		for _, f := range TooLong(k.piece, got) {
			if s := place(f) + " " + f.Rule; s != k.want || f.What == "" || f.Mend == "" || f.Lang != "en" || f.Module != "wrapping" {
				t.Errorf("got %s: %s; want %s", s, f.What, k.want)
			}
			t.Logf("%s: %s", f.Rule, f.What)
		}
	}
	if got := TooLong("handout", nil); got != nil {
		t.Errorf("of a piece that fits: %v", got)
	}
}

// TestTooLongTogether makes the wall checklist that modules share too long: what is to
// be mended is the choice of modules.
func TestTooLongTogether(t *testing.T) {
	fsys := merge(archive(t, "testdata/base.txtar"), &txtar.Archive{})
	record := string(fsys["pack.yaml"].Data)
	fsys["pack.yaml"] = &fstest.MapFile{Data: []byte(record + "wall: [wrapping]\n")}
	if got := madeTooLong(t, fsys, "wall-checklist"); got != nil {
		t.Errorf("not expected: %+v", got)
	}
	en := string(fsys["wrapping/en.md"].Data)
	many := strings.Repeat("- [ ] One more thing is as it should be\n", 30)
	fsys["wrapping/en.md"] = &fstest.MapFile{Data: []byte(strings.Replace(en, "- [ ] ", many+"- [ ] ", 1))}
	found := TooLong("wall-checklist", madeTooLong(t, fsys, "wall-checklist"))
	want := fmt.Sprintf("pack.yaml:%d:8 wall-checklist-too-long", strings.Count(record, "\n")+1)
	if len(found) != 1 || place(found[0])+" "+found[0].Rule != want || found[0].Lang != "en" || !strings.Contains(found[0].Mend, "fewer modules") {
		t.Errorf("got %+v, want %s", found, want)
	}
}

func madeTooLong(t *testing.T, fsys fstest.MapFS, name string) *piece.TooLong {
	t.Helper()
	p, found, err := load.Pack(fsys, "pack")
	if err != nil || len(found) > 0 {
		t.Fatal(err, found)
	}
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	loc, err := catalog.Locale("en", "latn")
	if err != nil {
		t.Fatal(err)
	}
	faces, err := font.Load(os.DirFS("../../templates/fonts"))
	if err != nil {
		t.Fatal(err)
	}
	e := translate.Join(p, loc)
	i := slices.IndexFunc(piece.List, func(pc piece.Piece) bool { return pc.Name == name && (pc.Wanted != nil) == (len(p.Wall) > 0) })
	r, err := piece.List[i].Make(&piece.Job{Edition: e, Module: &e.Modules[0], Fonts: typeset.NewFonts(faces), Paper: measure.A4})
	if err != nil {
		t.Fatal(err)
	}
	return r.TooLong
}
