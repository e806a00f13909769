package piece

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"wardleaf/internal/finding"
	"wardleaf/internal/font"
	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
	"wardleaf/internal/locale"
	"wardleaf/internal/page"
	"wardleaf/internal/pdf"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// editions returns the starter pack in every language it has.
func editions(t testing.TB) []*translate.Edition {
	t.Helper()
	p, found, err := load.Pack(os.DirFS("../../content"), "content")
	if err != nil {
		t.Fatal(err)
	}
	if n := finding.Count(found, finding.Error); n > 0 {
		t.Fatalf("the starter pack has %d errors; the first: %s", n, found[0].What)
	}
	catalog, err := locale.Load(os.DirFS("../../locales"))
	if err != nil {
		t.Fatal(err)
	}
	var out []*translate.Edition
	for _, lang := range p.Languages {
		loc, err := catalog.Locale(lang, p.Digits[lang])
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, translate.Join(p, loc))
	}
	return out
}

func library(t testing.TB) *typeset.Fonts {
	t.Helper()
	l, err := font.Load(os.DirFS("../../templates/fonts"))
	if err != nil {
		t.Fatal(err)
	}
	return typeset.NewFonts(l)
}

func booklets(t testing.TB, check func(*translate.Edition, *Result)) {
	t.Helper()
	lib := library(t)
	for _, e := range editions(t) {
		r, err := Booklet(e, lib)
		if err != nil {
			t.Fatal(err)
		}
		check(e, r)
	}
}

// Laws of every page: nothing leaves the safe area of the sheet, no two lines of
// text lie on each other, and the number of pages can be folded.
func TestPagesHoldWhatIsOnThem(t *testing.T) {
	booklets(t, func(e *translate.Edition, r *Result) {
		lang := e.Locale.Tag
		if n := len(r.Document.Pages); n%4 != 0 {
			t.Errorf("%s: %d pages cannot be folded", lang, n)
		}
		if len(r.Missing) > 0 {
			t.Errorf("%s: no glyph for %q", lang, r.Missing[0].Gap.Rune)
		}
		lawful(t, lang, r.Document)
	})
}

// lawful checks that nothing leaves the safe area of a sheet, and that no two lines of
// text lie on each other.
func lawful(t *testing.T, name string, d *page.Document) {
	t.Helper()
	const safe = typeset.Length(19843) // 7 mm
	for n, p := range d.Pages {
		var runs []box
		walk(p.Items, 0, 0, func(it page.Item, dx, dy typeset.Length) {
			var b box
			switch it := it.(type) {
			case *page.GlyphRun:
				b = box{it.X + dx, it.Y + dy - it.Size.Scale(0.5), it.X + dx + it.Width(), it.Y + dy, runText(it)}
				if it.Upward {
					// It may touch the next run of its line, as others may from the side.
					b.x0, b.y0, b.x1, b.y1 = it.X+dx-it.Size.Scale(0.5), it.Y+dy-it.Width()+500, it.X+dx, it.Y+dy
				}
				runs = append(runs, b)
			case *page.Box:
				b = box{it.X + dx, it.Y + dy, it.X + dx + it.Width, it.Y + dy + it.Height, "a rule"}
			case *page.Group:
				if it.Clip == nil {
					return
				}
				b = box{it.X + dx, it.Y + dy, it.X + dx + it.Clip.Width, it.Y + dy + it.Clip.Height, "a picture"}
			default:
				return
			}
			if b.x0 < safe || b.x1 > p.Size.Width-safe || b.y0 < safe || b.y1 > p.Size.Height-safe {
				t.Errorf("%s page %d: %q lies outside the safe area", name, n+1, b.text)
			}
		})
		for i, a := range runs {
			for _, b := range runs[i+1:] {
				if a.x0 < b.x1-500 && b.x0 < a.x1-500 && a.y0 < b.y1 && b.y0 < a.y1 {
					t.Errorf("%s page %d: %q lies on %q", name, n+1, a.text, b.text)
				}
			}
		}
	}
}

type box struct {
	x0, y0, x1, y1 typeset.Length
	text           string
}

func runText(g *page.GlyphRun) string {
	var b strings.Builder
	for _, c := range g.Clusters {
		b.WriteString(c.Text)
	}
	return b.String()
}

func walk(items []page.Item, dx, dy typeset.Length, fn func(page.Item, typeset.Length, typeset.Length)) {
	for _, it := range items {
		fn(it, dx, dy)
		if g, ok := it.(*page.Group); ok {
			walk(g.Items, dx+g.X, dy+g.Y, fn)
		}
	}
}

// blocks returns the text of every block of an edition that belongs in a booklet, in
// reading order, white space taken out.
func blocks(e *translate.Edition) []string {
	var out []string
	add := func(ins []lesson.Inline) {
		if s := squeeze(lesson.Plain(ins)); s != "" {
			out = append(out, s)
		}
	}
	for _, m := range e.Modules {
		l := *m.Lesson
		add(l.Title)
		var quiz []lesson.Part
		for _, p := range l.Parts {
			if p.Role == lesson.Quiz {
				quiz = append(quiz, p)
			}
		}
		l.Parts = slices.DeleteFunc(slices.Clone(l.Parts), func(p lesson.Part) bool { return p.Role == lesson.TrainerNotes || p.Role == lesson.Quiz })
		l.Walk(func(b *lesson.Block) { add(b.Inlines) })
		for i := range quiz {
			for _, q := range quiz[i].Questions() {
				for _, b := range q.Stem {
					add(b.Inlines)
				}
				for _, o := range q.Options {
					for _, b := range o.Blocks {
						add(b.Inlines)
					}
				}
			}
		}
	}
	return out
}

// squeeze takes out what a page may break lines at, and what is never drawn.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || unicode.Is(unicode.Bidi_Control, r) {
			return -1
		}
		return r
	}, s)
}

// words leaves letters, marks and digits. In lines read from right to left poppler
// puts the punctuation beside a number on its other side, whatever the file says.
func words(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.In(r, unicode.L, unicode.M, unicode.N) {
			return r
		}
		return -1
	}, s)
}

// turned is the words of right-to-left text without Latin letters and digits, which
// poppler puts on the other side of the words beside them.
func turned(s string) string {
	return strings.Map(func(r rune) rune {
		if r < 0x80 {
			return -1
		}
		return r
	}, words(s))
}

// TestExtraction compares the text that poppler's pdftotext takes out of each
// booklet with the lessons, block by block.
func TestExtraction(t *testing.T) {
	pdftotext, err := exec.LookPath("pdftotext")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is missing; install poppler-utils")
		}
		t.Skip("pdftotext is not installed")
	}
	booklets(t, func(e *translate.Edition, r *Result) {
		lang := e.Locale.Tag
		var b bytes.Buffer
		if err := pdf.Write(&b, r.Document); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), lang+".pdf")
		if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		// The column alone, so that a block that goes on overleaf is not torn by the foot.
		args := []string{"-x", "0", "-y", "38", "-W", "420", "-H", "488", file, "-"}
		if !e.Locale.RTL {
			args = append([]string{"-raw"}, args...) // in the order of the file; right-to-left words come out turned round that way
		}
		out, err := exec.Command(pdftotext, args...).Output()
		if err != nil {
			t.Fatal(err)
		}
		got := squeeze(string(out))
		all := blocks(e)
		missed, allowed := 0, 0
		if e.Locale.RTL {
			got = turned(got)
			allowed = len(all) * 3 / 200 // signs beside what to do about them, whose lines poppler weaves together
		}
		for _, want := range all {
			if e.Locale.RTL {
				want = turned(want)
			}
			if !strings.Contains(got, want) {
				if missed++; missed > allowed {
					t.Errorf("%s: not found in the PDF: %s", lang, want)
				}
			}
		}
		t.Logf("%s: %d of %d blocks come back as written, %d pages", lang, len(all)-missed, len(all), len(r.Document.Pages))
	})
}

// BenchmarkBooklet sets every language of the starter pack.
func BenchmarkBooklet(b *testing.B) {
	lib := library(b)
	es := editions(b)
	pages := 0
	for b.Loop() {
		for _, e := range es {
			r, err := Booklet(e, lib)
			if err != nil {
				b.Fatal(err)
			}
			pages += len(r.Document.Pages)
		}
	}
	b.ReportMetric(float64(pages)/b.Elapsed().Seconds(), "pages/s")
}
