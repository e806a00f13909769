package piece

import (
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/sheet"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// sign is an item of a warning-signs part: a sign, and what to do.
func sign(name, do string) lesson.Item {
	return lesson.Item{Blocks: []lesson.Block{{Kind: lesson.Paragraph, Inlines: []lesson.Inline{
		{Kind: lesson.Strong, Children: text(name)}, {Kind: lesson.Text, Text: do},
	}}}}
}

func signsPart(heading string, items ...lesson.Item) *lesson.Part {
	return &lesson.Part{Role: lesson.WarningSigns, Heading: text(heading), Blocks: []lesson.Block{{Kind: lesson.List, Items: items}}}
}

// TestMerged keeps the fuller of two signs in the same words, both when they ask for
// different things, and all others in their order.
func TestMerged(t *testing.T) {
	first := signsPart("Signs", sign("Blue lips", ": call."), sign("Not  breathing", ": rub."), sign("Cold feet", " after a bath: wrap."))
	bare := lesson.Item{Blocks: []lesson.Block{{Kind: lesson.Paragraph, Inlines: text("No colon here")}}}
	second := signsPart("More signs", sign("not breathing", ": open, rub."), sign("Cold feet", ": warm."), sign("Blue lips", ": sit."), bare, bare)
	before := len(first.Items(false)) + len(second.Items(false))
	got := merged([]*lesson.Part{first, second})
	var said []string
	for _, it := range got.Items(false) {
		said = append(said, lesson.Plain(inlines(it.Blocks)))
	}
	want := "Blue lips: call.|not breathing: open, rub.|Cold feet after a bath: wrap.|Cold feet: warm.|Blue lips: sit.|No colon here"
	if s := strings.Join(said, "|"); s != want || got.Role != lesson.WarningSigns || lesson.Plain(got.Heading) != "Signs" {
		t.Errorf("got %s under %s, want %s", s, lesson.Plain(got.Heading), want)
	}
	if before != len(first.Items(false))+len(second.Items(false)) {
		t.Error("the lessons themselves were changed")
	}
}

// TestWallWard holds the wall checklist that modules share to the laws of pages in
// every language: one side, with the title, every item of each module under its own
// heading, each sign once, whom to call and a place to sign, in letters for its distance.
func TestWallWard(t *testing.T) {
	shared := List[slices.IndexFunc(List, func(p Piece) bool { return p.Name == "wall-checklist" && !p.Each })]
	madePiece(t, shared, []string{"A4", "Letter", "A3"}, func(what string, j *Job, r *Result) {
		lawful(t, what, r.Document)
		if len(r.Document.Pages) != 1 {
			t.Fatalf("%s: %d sides", what, len(r.Document.Pages))
		}
		modules := chosen(j.Edition)
		if len(modules) != len(j.Pack.Wall) || len(modules) < 2 {
			t.Fatalf("%s: %d modules", what, len(modules))
		}
		l := together(j.Edition, modules)
		if r.TooLong != nil && (r.TooLong.Pack != j.Pack || r.TooLong.Fits < least || r.TooLong.Items < 1) {
			t.Errorf("%s: reported as %+v", what, r.TooLong)
		}
		far := 20
		if r.TooLong != nil {
			far = r.TooLong.Fits
		}
		es := elements(r.Document, r.Document.Pages[0])
		wallLetters(t, what, j, l, es, far)
		has := said(es)
		order := []string{lesson.Plain(l.Title)}
		for _, p := range l.Parts {
			order = append(order, lesson.Plain(p.Heading))
			for _, it := range uncitedPart(&p).Items(false) {
				order = append(order, lesson.Plain(inlines(it.Blocks)))
			}
		}
		for _, c := range j.Pack.Facility.Contacts {
			order = append(order, c.Label.In(j.Locale.Tag, j.Pack.Source))
		}
		rest := has
		for _, s := range order {
			_, after, found := strings.Cut(rest, squeeze(s))
			if !found {
				t.Errorf("%s: lacks %q where it should be", what, s)
				continue
			}
			rest = after
		}
		var all strings.Builder // lines to write on are no part of what is read
		walk(r.Document.Pages[0].Items, 0, 0, func(it page.Item, _, _ typeset.Length) {
			if g, ok := it.(*page.GlyphRun); ok {
				if j.Locale.RTL {
					slices.Reverse(g.Clusters) // they lie from left to right
				}
				all.WriteString(squeeze(runText(g)) + " ")
			}
		})
		if !strings.Contains(all.String(), squeeze(j.Locale.Label("signed"))) || !strings.Contains(has, squeeze(j.Locale.Label("caution-short"))) {
			t.Errorf("%s: lacks a place to sign, or the caution", what)
		}
	})
}

// TestWanted makes the shared wall checklist of packs that choose modules alone, and
// sheets of packs whose lessons place them.
func TestWanted(t *testing.T) {
	for _, p := range List {
		shared := p.Name == "wall-checklist" && !p.Each
		if s := sheet.Find(p.Name); s != nil {
			placing := &lesson.Lesson{Lead: []lesson.Block{{Kind: lesson.Figure, Source: "sheet:" + p.Name}}}
			if p.Wanted(&pack.Pack{}) || !p.Wanted(&pack.Pack{Source: "en", Modules: []*pack.Module{{Lessons: map[string]*lesson.Lesson{"en": placing}}}}) {
				t.Errorf("%s is wanted of the wrong packs", p.Name)
			}
			continue
		}
		if (p.Wanted != nil) != shared {
			t.Errorf("%s: whether it is wanted: %v", p.Name, p.Wanted != nil)
		}
		if shared && (p.Wanted(&pack.Pack{}) || !p.Wanted(&pack.Pack{Wall: []pack.Ref{{Name: "wrapping"}}})) {
			t.Errorf("%s is wanted of the wrong packs", p.Name)
		}
	}
}

// TestChosen keeps the order of the wall, not that of the modules.
func TestChosen(t *testing.T) {
	e := &translate.Edition{Pack: &pack.Pack{Wall: []pack.Ref{{Name: "2"}, {Name: "none"}, {Name: "0"}}}, Modules: lessonsOf(1, 1, 1)}
	var got []string
	for _, m := range chosen(e) {
		got = append(got, m.ID)
	}
	if s := strings.Join(got, " "); s != "2 0" {
		t.Errorf("got %s", s)
	}
}
