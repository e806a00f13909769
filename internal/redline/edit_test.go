package redline

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// apply turns a into what a script says, taking what is added from b.
func apply(ops []Op, a, b []string) (old, now []string) {
	for _, op := range ops {
		if op != Added {
			old = append(old, a[0])
		}
		if op != Struck {
			now = append(now, b[0])
		}
		if op != Added {
			a = a[1:]
		}
		if op != Struck {
			b = b[1:]
		}
	}
	return old, now
}

func edits(ops []Op) int {
	n := 0
	for _, op := range ops {
		if op != Same {
			n++
		}
	}
	return n
}

// pairs are texts whose words are compared one a line.
var pairs = []struct{ old, now string }{
	{"", ""},
	{"", "a b c"},
	{"a b c", ""},
	{"a b c a b b a", "c b a b a c"}, // the example of Myers's paper: 5 edits
	{"Hold the baby upright on your chest", "Hold your baby upright, on the chest"},
	{"Feed every 2 to 3 hours, day and night.", "Feed every 3 hours, by day and by night, and never leave out a feed."},
	{"one two three four five six seven eight", "eight seven six five four three two one"},
	{"a a a a b b b b", "b b b b a a a a"},
	{"कपड़ा नाक या मुँह को कभी न ढके। ठोड़ी छाती पर कभी न झुके।", "कपड़ा मुँह या नाक को न ढके। ठोड़ी छाती पर झुके।"},
	{"يجب ألا يغطي القماش الأنف أو الفم أبداً", "يجب أن يغطي القماش الفم أو الأنف"},
	{"ሕፃኑን በደረትዎ ላይ ቀጥ አድርገው ይያዙ። ፊቱን አይሸፍኑ።", "ሕፃኑን ደረትዎ ላይ አድርገው ይያዙ። ፊቱን ይሸፍኑ።"},
	{"শিশুকে বুকের উপর সোজা করে ধরুন। নাক ঢাকবেন না।", "শিশুকে সোজা করে বুকের উপর ধরুন। নাক ঢাকবেন।"},
}

// The number of edits is that of GNU diff, which finds a smallest set with --minimal.
func TestShortest(t *testing.T) {
	diff, err := exec.LookPath("diff")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("diff is not installed")
		}
		t.Skip("diff is not installed")
	}
	dir := t.TempDir()
	write := func(name string, words []string) string {
		path := filepath.Join(dir, name)
		text := ""
		for _, w := range words {
			text += w + "\n"
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	for _, p := range pairs {
		for _, take := range []func(string) []string{strings.Fields, words} {
			a, b := take(p.old), take(p.now)
			out, err := exec.Command(diff, "--minimal", "--text", write("a", a), write("b", b)).Output()
			if exit, ok := err.(*exec.ExitError); err != nil && (!ok || exit.ExitCode() != 1) {
				t.Fatal(err)
			}
			want := 0
			for line := range strings.Lines(string(out)) {
				if line[0] == '<' || line[0] == '>' {
					want++
				}
			}
			if got := edits(script(a, b)); got != want {
				t.Errorf("%q to %q: %d edits, diff needs %d", p.old, p.now, got, want)
			}
		}
	}
}

// The example of Myers's paper, section 2: abcabba becomes cbabac by 5 edits.
func TestPaper(t *testing.T) {
	if got := edits(script([]rune("abcabba"), []rune("cbabac"))); got != 5 {
		t.Errorf("%d edits, want 5", got)
	}
}

// A script turns the old text into the new one, whatever they are.
func FuzzScript(f *testing.F) {
	for _, p := range pairs {
		f.Add(p.old, p.now)
	}
	f.Fuzz(func(t *testing.T, old, now string) {
		a, b := words(old), words(now)
		if strings.Join(a, "") != old {
			t.Fatalf("the words of %q add up to %q", old, strings.Join(a, ""))
		}
		ops := script(a, b)
		if was, is := apply(ops, a, b); !slices.Equal(was, a) || !slices.Equal(is, b) {
			t.Fatalf("%q to %q: the script says %q to %q", a, b, was, is)
		}
		back := script(b, a)
		if edits(ops) != edits(back) {
			t.Errorf("%d edits there, %d back", edits(ops), edits(back))
		}
		runs := compareWords(old, now)
		if Was(runs) != old || Now(runs) != now {
			t.Errorf("%q to %q: the runs say %q to %q", old, now, Was(runs), Now(runs))
		}
		var portions []Run
		for _, p := range Portions(runs, 5) {
			portions = append(portions, p...)
		}
		if Was(portions) != old || Now(portions) != now {
			t.Errorf("%q to %q: the portions say %q to %q", old, now, Was(portions), Now(portions))
		}
		if old == now && edits(ops) > 0 {
			t.Error("equal texts differ")
		}
	})
}

// Texts with nothing in common end soon, and still say what became of what.
func TestBound(t *testing.T) {
	var a, b []int
	for i := range 50_000 {
		a, b = append(a, i), append(b, -1-i)
	}
	if got := edits(script(a, b)); got != 100_000 {
		t.Errorf("%d edits, want 100000", got)
	}
}
