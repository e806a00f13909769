package redline

import (
	"strings"
	"testing"
)

// lineBlocks makes a block of every line.
func lineBlocks(text string) []block {
	var out []block
	for i, l := range strings.Split(text, "\n") {
		out = append(out, block{kind: "words", group: "item", text: l, path: string(rune('a' + i%26))})
	}
	return out
}

// No block is paired twice, both sides agree on the pairs, blocks that stayed keep
// their order, and when nothing changed each is paired with itself.
func FuzzPair(f *testing.F) {
	f.Add("Wash your hands.\nSit down.\nHold the baby.", "Sit down.\nWash your hands well.\nHold the baby.")
	f.Add("a\nb\nc\nd", "d\nc\nb\na")
	f.Add("same\nsame\nsame", "same\nother\nsame")
	f.Add("", "one\ntwo")
	f.Fuzz(func(t *testing.T, old, now string) {
		if strings.Count(old, "\n")+strings.Count(now, "\n") > 60 {
			t.Skip("long enough is enough")
		}
		p := &pairing{old: lineBlocks(old), now: lineBlocks(now)}
		p.pair()
		last := -1
		for k, i := range p.of {
			if i < 0 {
				continue
			}
			if p.to[i] != k {
				t.Fatalf("new block %d was %d, which became %d", k, i, p.to[i])
			}
			if p.moved[k] {
				continue
			}
			if i < last {
				t.Fatalf("%q to %q: block %d stayed, and stands after %d", old, now, i, last)
			}
			last = i
			if old == now && i != k {
				t.Fatalf("nothing changed, and block %d was %d", k, i)
			}
		}
		for i, k := range p.to {
			if k >= 0 && p.of[k] != i {
				t.Fatalf("old block %d became %d, which was %d", i, k, p.of[k])
			}
			if old == now && k != i {
				t.Fatalf("nothing changed, and block %d became %d", i, k)
			}
		}
	})
}
