package piece

import (
	"math"
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

var papers = map[string]measure.Size{"A4": measure.A4, "Letter": measure.Letter, "A3": measure.A3}

// made makes a piece of every module in every language on some papers.
func made(t *testing.T, name string, on []string, check func(what string, j *Job, r *Result)) {
	t.Helper()
	madePiece(t, List[slices.IndexFunc(List, func(p Piece) bool { return p.Name == name })], on, check)
}

func madePiece(t *testing.T, pc Piece, on []string, check func(what string, j *Job, r *Result)) {
	t.Helper()
	lib := library(t)
	for _, e := range editions(t) {
		for _, paper := range on {
			var jobs []*Job
			if pc.Each {
				for i := range e.Modules {
					jobs = append(jobs, &Job{Edition: e, Module: &e.Modules[i], Fonts: lib, Paper: papers[paper]})
				}
			} else {
				jobs = append(jobs, &Job{Edition: e, Fonts: lib, Paper: papers[paper]})
			}
			for _, j := range jobs {
				what := pc.Name + " " + e.Locale.Tag + " " + paper
				if j.Module != nil {
					what += " " + j.Module.ID
				}
				r, err := pc.Make(j)
				if err != nil {
					t.Fatal(what, err)
				}
				if len(r.Missing) > 0 {
					t.Errorf("%s: no glyph for %q", what, r.Missing[0].Gap.Rune)
				}
				check(what, j, r)
			}
		}
	}
}

// TestSheetsHoldWhatIsOnThem holds every piece on office paper to the laws of pages,
// and to the paper it is meant for.
func TestSheetsHoldWhatIsOnThem(t *testing.T) {
	long := map[string]bool{"ur": true, "ta": true} // the longest of texts
	for _, k := range []struct {
		piece string
		on    []string
	}{
		{"handout", []string{"A4", "Letter"}},
		{"wall-checklist", []string{"A4", "Letter", "A3"}},
		{"flip-chart", []string{"A4", "Letter"}},
		{"session-plan", []string{"A4", "Letter"}},
	} {
		made(t, k.piece, k.on, func(what string, j *Job, r *Result) {
			lawful(t, what, r.Document)
			n := len(r.Document.Pages)
			switch {
			case k.piece == "wall-checklist" && n != 1:
				t.Errorf("%s: %d sides", what, n)
			case k.piece == "handout" && (n > 2) != (r.TooLong != nil):
				t.Errorf("%s: %d sides, reported as too long: %v", what, n, r.TooLong != nil)
			case k.piece == "handout" && n > 2 && j.Paper == measure.A4 && !long[j.Locale.Tag]:
				t.Errorf("%s: %d sides", what, n)
			case k.piece == "session-plan" && n > 2 && !(n == 3 && long[j.Locale.Tag]):
				t.Errorf("%s: %d sides", what, n)
			}
		})
	}
}

// An element is what one element of the structure tree says on a page.
type element struct {
	role, text string
	runs       []*page.GlyphRun
}

// elements returns those of a page in reading order, pictures left out.
func elements(d *page.Document, p page.Page) []element {
	runs := map[*page.Tag][]*page.GlyphRun{}
	walk(p.Items, 0, 0, func(it page.Item, _, _ typeset.Length) {
		if g, ok := it.(*page.GlyphRun); ok && g.Tag != nil && g.Tag.Role != "Figure" {
			runs[g.Tag] = append(runs[g.Tag], g)
		}
	})
	var out []element
	var down func(*page.Tag)
	down = func(tag *page.Tag) {
		if rs := runs[tag]; rs != nil {
			e := element{tag.Role, tag.Actual, rs}
			for _, g := range rs {
				if tag.Actual == "" {
					e.text += runText(g)
				}
			}
			out = append(out, e)
		}
		for _, k := range tag.Kids {
			down(k)
		}
	}
	down(d.Tags)
	return out
}

// said is all that elements say, white space taken out.
func said(es []element) string {
	var b strings.Builder
	for _, e := range es {
		b.WriteString(squeeze(e.text))
	}
	return b.String()
}

// TestHandoutText: nothing on a handout is smaller than 12 points but the line of
// sources, and its caution, steps, signs and contacts are all there. Twelve points is
// the least that the RNIB's Clear Print guidelines allow.
func TestHandoutText(t *testing.T) {
	made(t, "handout", []string{"A4", "Letter"}, func(what string, j *Job, r *Result) {
		has, small := "", 0
		for _, p := range r.Document.Pages {
			es := elements(r.Document, p)
			has += said(es)
			for _, e := range es {
				if slices.ContainsFunc(e.runs, func(g *page.GlyphRun) bool { return g.Size < measure.Pt(12)*9/10 }) {
					if small++; small > 1 {
						t.Errorf("%s: too small: %s", what, e.text)
					}
				}
			}
		}
		for i := range j.Module.Lesson.Parts {
			p := uncitedPart(&j.Module.Lesson.Parts[i])
			if !slices.Contains([]lesson.Role{lesson.Caution, lesson.Steps, lesson.WarningSigns}, p.Role) {
				continue
			}
			one := lesson.Lesson{Parts: []lesson.Part{*p}}
			one.WalkInlines(func(in *lesson.Inline) {
				if !strings.Contains(has, squeeze(in.Text)) {
					t.Errorf("%s: lacks %q of %s", what, in.Text, lesson.Plain(p.Heading))
				}
			})
		}
		for _, c := range j.Pack.Facility.Contacts {
			if !strings.Contains(has, squeeze(c.Label.In(j.Locale.Tag, j.Pack.Source))) {
				t.Errorf("%s: lacks whom to call", what)
			}
		}
	})
}

// TestLetterHeight: the table of visual angles that sign makers and workplace rules
// are quoted with, in mm of height for one metre of distance.
func TestLetterHeight(t *testing.T) {
	for minutes, want := range map[float64]float64{9.5: 2.8, 11.5: 3.3, 16: 4.65, 20: 5.8, 22: 6.4, 28.6: 8.3} {
		if got := letterHeight(measure.MM(1000), minutes).Millimetres(); math.Abs(got-want) > 0.06 {
			t.Errorf("%v minutes of arc: %.2f mm a metre, want %.2f", minutes, got, want)
		}
	}
}

// TestWallLetters measures the outlines of the letters on wall checklists against the
// visual angle at the distance that they can be read from.
func TestWallLetters(t *testing.T) {
	made(t, "wall-checklist", []string{"A4", "Letter", "A3"}, func(what string, j *Job, r *Result) {
		w := &wall{Job: j}
		got, err := w.reach(j.Module.Lesson, 20)
		if err != nil {
			t.Fatal(err)
		}
		if (got.far < 20) != (r.TooLong != nil) || r.TooLong != nil && (r.TooLong.Fits != got.far || r.TooLong.Asked != 20 || r.TooLong.Items < 1) {
			t.Errorf("%s: reads from %d tenths of a metre, reported as %+v", what, got.far, r.TooLong)
		}
		wallLetters(t, what, j, j.Module.Lesson, elements(r.Document, r.Document.Pages[0]), got.far)
	})
}

// wallLetters measures the headings, and all items to check of a lesson, on a sheet
// that is read from some tenths of a metre.
func wallLetters(t *testing.T, what string, j *Job, l *lesson.Lesson, es []element, far int) {
	t.Helper()
	base := map[string]rune{"Latn": 'H', "Deva": 'क', "Arab": 'ا'}
	// Heights in parts of the distance: the readable limit of 1 inch for 25 feet, and
	// the least of ISO 9241-303 for headings.
	const item, heading = 1.0 / 300, 1.0 / 155
	distance := float64(far) * 100
	var checks []lesson.Item
	for i := range l.Parts {
		if l.Parts[i].Role == lesson.Checklist {
			checks = append(checks, l.Parts[i].Items(false)...)
		}
	}
	items := 0
	for _, e := range es {
		least := 0.0
		switch {
		case e.role == "H1" || e.role == "H2":
			least = heading * distance
		case slices.ContainsFunc(checks, func(it lesson.Item) bool {
			return squeeze(lesson.Plain(inlines(uncited(it.Blocks)))) == squeeze(e.text)
		}):
			items++
			least = item * distance
		}
		for _, g := range e.runs {
			letter := g.Face.Height(base[j.Locale.Script])
			if height := g.Size.Millimetres() * float64(letter) / 1000; letter > 0 && height < least*0.995 {
				t.Errorf("%s: %q is %.2f mm high, less than %.2f", what, runText(g), height, least)
			}
		}
	}
	if items != len(checks) {
		t.Errorf("%s: %d items of %d found", what, items, len(checks))
	}
}

// TestFlipChartPairs: the trainer at the back of a sheet reads what the group sees on
// the front of the next, from the last round to the first; and paper that is turned
// about its short edge brings both tops to the bound edge.
func TestFlipChartPairs(t *testing.T) {
	made(t, "flip-chart", []string{"A4"}, func(what string, j *Job, r *Result) {
		pages := r.Document.Pages
		if len(pages)%2 != 0 || r.Document.Duplex != page.FlipShortEdge {
			t.Fatalf("%s: %d sides, duplex %v", what, len(pages), r.Document.Duplex)
		}
		strangers := 0
		for i := 0; i < len(pages); i += 2 {
			if s := pages[i].Size; s.Width <= s.Height {
				t.Errorf("%s: a sheet stands upright", what)
			}
			if i == 0 { // the title and the caution, which the lesson opens with
				continue
			}
			if w := unsaid(j, r.Document, i-1, i); w != "" {
				t.Errorf("%s: side %d does not hold the words for side %d: %s", what, i, i+1, w)
			}
			if i > 2 && unsaid(j, r.Document, i-3, i) == "" {
				strangers++
			}
		}
		if strangers > 0 {
			t.Errorf("%s: %d fronts go with a wrong back as well: the test sees nothing", what, strangers)
		}
		last := said(elements(r.Document, pages[len(pages)-1]))
		if !strings.HasPrefix(last, squeeze(j.Locale.Label("before-you-start"))) {
			t.Errorf("%s: the back of the last sheet does not open the lesson", what)
		}
	})
}

// unsaid returns the first words of a front that its back lacks; citations may stand
// between them. Headings and whom to call are no words for the trainer.
func unsaid(j *Job, d *page.Document, back, front int) string {
	all := said(elements(d, d.Pages[back]))
	for _, e := range elements(d, d.Pages[front]) {
		call := slices.ContainsFunc(j.Pack.Facility.Contacts, func(c pack.Contact) bool {
			return squeeze(c.Label.In(j.Locale.Tag, j.Pack.Source)) == squeeze(e.text)
		})
		if e.role != "H2" && !call && !within(squeeze(e.text), all) {
			return e.text
		}
	}
	return ""
}

// within reports whether the letters of a stand in b in the same order.
func within(a, b string) bool {
	rest := []rune(b)
	for _, r := range a {
		i := slices.Index(rest, r)
		if i < 0 {
			return false
		}
		rest = rest[i+1:]
	}
	return true
}

// TestBareLesson makes every piece of a lesson with next to nothing in it, and of a
// pack with no lesson: bad input is for rules to say, and never a reason to stop.
func TestBareLesson(t *testing.T) {
	lib := library(t)
	e := *editions(t)[0]
	m := e.Modules[0]
	bare := lesson.Lesson{Title: text("Title")} // a lesson without one is never set
	empty := bare
	for _, role := range append(slices.Clone(lesson.Roles), lesson.Prose) {
		empty.Parts = append(empty.Parts, lesson.Part{Role: role}, lesson.Part{Role: role, Blocks: []lesson.Block{
			{Kind: lesson.List}, {Kind: lesson.List, Ordered: true, Items: []lesson.Item{{}}}, {Kind: lesson.List, Items: []lesson.Item{{}}},
			{Kind: lesson.Figure, Source: "none.svg"}, {Kind: lesson.Paragraph},
		}})
	}
	for _, l := range []*lesson.Lesson{&bare, &empty} {
		m.Lesson = l
		e.Modules = []translate.Module{m}
		for _, p := range List {
			j := &Job{Edition: &e, Fonts: lib, Paper: measure.A4}
			if p.Each {
				j.Module = &e.Modules[0]
			}
			if _, err := p.Make(j); err != nil {
				t.Errorf("%s: %v", p.Name, err)
			}
		}
	}
	e.Modules = nil
	for _, p := range List {
		if p.Each {
			continue
		}
		if _, err := p.Make(&Job{Edition: &e, Fonts: lib, Paper: measure.A4}); err != nil {
			t.Errorf("%s: %v", p.Name, err)
		}
	}
}
