package translate

import (
	"os"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
)

// TestFallBack takes a lesson without a translation, one that is a copy of its source,
// one that is translated in part, and one that is translated.
func TestFallBack(t *testing.T) {
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	en, err := catalog.Locale("en", "latn")
	if err != nil {
		t.Fatal(err)
	}
	ar, err := catalog.Locale("ar", "arab")
	if err != nil {
		t.Fatal(err)
	}
	read := func(markdown string) (*pack.Pack, *pack.Module) {
		return read(t, "wrapping/en.md", files["wrapping/en.md"], markdown)
	}
	const source = "# Wrapping\n\n**Blue lips**: call (now).\n\n![Tuck it.](figures/tuck.svg)\n"
	for _, k := range []struct {
		name, arabic, state string
		fallback, partly    bool
	}{
		{"missing", "", "", true, false},
		{"a copy", source, "initial", true, false},
		{"in part", strings.Replace(source, "Wrapping", "رباط", 1), "initial", false, true},
		{"in part, and said to be done", strings.Replace(source, "Wrapping", "رباط", 1), "translated", false, false},
		{"translated", "# رباط\n\n**زرقة**: اتصلوا.\n\n![أدخلوه.](figures/tuck.svg)\n", "translated", false, false},
	} {
		p, m := read(source)
		m.Record.Translations = map[string]pack.Translation{"ar": {State: k.state}}
		if k.arabic != "" {
			_, other := read(k.arabic)
			m.Lessons["ar"] = other.Lessons["en"]
		}
		e := Join(p, ar).FallBack(en)
		if len(e.Modules) != 1 {
			t.Fatalf("%s: %d modules", k.name, len(e.Modules))
		}
		got := &e.Modules[0]
		if got.Fallback != k.fallback || got.Partly != k.partly || (e.Mark(got) != "") != (k.fallback || k.partly) || (e.Lang(got) == "en") != k.fallback {
			t.Errorf("%s: %+v, marked %q", k.name, got, e.Mark(got))
		}
		if !k.fallback {
			continue
		}
		if !strings.Contains(e.Mark(got), "English") {
			t.Errorf("%s: marked %q", k.name, e.Mark(got))
		}
		// Each block runs from left to right, and a sign is still told from what to do.
		sign, do := lesson.SplitSign(got.Lesson.Lead)
		if s := lesson.Plain(sign); s != "\u2066Blue lips:" || lesson.Plain(do[0].Inlines) != "call (now).\u2069" || got.Lesson.Lead[1].Alt != "\u2066Tuck it.\u2069" {
			t.Errorf("%s: sign %q, do %q", k.name, s, lesson.Plain(do[0].Inlines))
		}
		if words := lesson.Plain(m.Lessons["en"].Lead[0].Inlines); words != "Blue lips: call (now)." {
			t.Errorf("the source was changed: %q", words)
		}
		src, own := e.InSource(got)
		if src.Locale.Tag != "en" || own.Module != m || lesson.Plain(own.Lesson.Title) != "Wrapping" {
			t.Errorf("%s: in the source %q", k.name, lesson.Plain(own.Lesson.Title))
		}
	}
	p, _ := read(source)
	if e := Join(p, en).FallBack(en); e.Modules[0].Fallback {
		t.Error("the source falls back to itself")
	}
	if e := Join(p, ar).FallBack(nil); len(e.Modules) != 0 {
		t.Error("a language falls back to nothing")
	}
}
