package font

import (
	"bytes"
	"io/fs"
	"os"
	"testing"
	"testing/fstest"
)

// openings counts how often each file of a folder is opened.
type openings struct {
	fs.FS
	count map[string]int
}

func (o openings) Open(name string) (fs.File, error) {
	o.count[name]++
	return o.FS.Open(name)
}

func (o openings) Stat(name string) (fs.FileInfo, error) { return fs.Stat(o.FS, name) }

// TestLoadReadsLate reads the families that a language needs, and each once.
func TestLoadReadsLate(t *testing.T) {
	o := openings{os.DirFS(fontFolder), map[string]int{}}
	l, err := Load(o)
	if err != nil {
		t.Fatal(err)
	}
	if len(o.count) > 0 {
		t.Errorf("read before anything was asked for: %v", o.count)
	}
	for range 2 {
		chain, _, err := l.Chain("Taml")
		if err != nil {
			t.Fatal(err)
		}
		chain[0].Has('க', true)
	}
	want := map[string]int{
		"NotoSansTamil-Regular.ttf": 1, "NotoSansTamil-Bold.ttf": 1, "NotoSans-Regular.ttf": 1, "NotoSans-Bold.ttf": 1,
	}
	if len(o.count) != len(want) {
		t.Errorf("read %v, want %v", o.count, want)
	}
	for name, n := range want {
		if o.count[name] != n {
			t.Errorf("%s was read %d times", name, o.count[name])
		}
	}
}

// TestDamagedFamily has a damaged font stop the languages set in it, and no others.
func TestDamagedFamily(t *testing.T) {
	folder := fstest.MapFS{}
	if err := fs.WalkDir(os.DirFS(fontFolder), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			data, _ := os.ReadFile(fontFolder + "/" + name)
			folder[name] = &fstest.MapFile{Data: data}
		}
		return err
	}); err != nil {
		t.Fatal(err)
	}
	damaged := bytes.Clone(folder["NotoSansThai-Bold.ttf"].Data)
	damaged[len(damaged)-9] ^= 1
	folder["NotoSansThai-Bold.ttf"].Data = damaged
	l, err := Load(folder)
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := l.Chain("Thai"); err == nil {
		t.Error("Thai can be set in a damaged font")
	}
	chain, _, err := l.Chain("Khmr")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range chain {
		if f.Script == "Thai" && (f.Has('ก', false) || f.Face(true) != nil) {
			t.Error("a damaged family shows something")
		}
	}
	delete(folder, "NotoSansThai-Bold.ttf")
	if _, err := Load(folder); err == nil {
		t.Error("a missing font was not noticed")
	}
}

// BenchmarkLoad tells what it costs to be ready for one language, and for all.
func BenchmarkLoad(b *testing.B) {
	for _, c := range []struct {
		name  string
		codes []string
	}{{"one language", []string{"Khmr"}}, {"every script", fallback}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				l := loadLibrary(b)
				for _, code := range c.codes {
					if _, _, err := l.Chain(code); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}
