package font

import (
	"os"
	"testing"
)

// TestBaseHeight compares with the heights that the fonts state themselves: table
// OS/2 of Noto Sans gives 714 for capitals, and no script's letters may come out so
// far from Latin's that one point size would do for one and not for the other.
func TestBaseHeight(t *testing.T) {
	l, err := Load(os.DirFS(fontFolder))
	if err != nil {
		t.Fatal(err)
	}
	if got, err := l.BaseHeight("Latn"); err != nil || got != 0.714 {
		t.Errorf("Latin letters are %v em tall, want 0.714 (%v)", got, err)
	}
	for code := range scripts {
		if got, err := l.BaseHeight(code); err != nil || got < 0.55 || got > 0.85 {
			t.Errorf("%s: letters are %v em tall (%v)", code, got, err)
		}
	}
	if _, err := l.BaseHeight("Xxxx"); err == nil {
		t.Error("a script without a font must be refused")
	}
}
