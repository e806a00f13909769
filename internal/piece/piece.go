package piece

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// A Piece is one printed product. Two share a name when one is made of each module and
// the other of the pack.
type Piece struct {
	Name string // of its file; the label with this name says what it is
	Each bool   // one for every module, not one for the pack
	// Folded names the same pages imposed two to a side, to be folded and stapled;
	// empty when there is no such piece.
	Folded string
	// Tiled names the same pages laid over sheets of smaller paper, to be glued
	// together; empty when there is no such piece.
	Tiled string
	// Wanted reports whether a pack asks for the piece; nil when every pack has it.
	Wanted func(*pack.Pack) bool
	Make   func(*Job) (*Result, error)
}

// A Job is the order to make one piece.
type Job struct {
	*translate.Edition
	Module *translate.Module // when the piece is one of each module
	Fonts  *typeset.Fonts
	Paper  measure.Size // of pieces used flat; booklets are A5
	// Distance is how far off wall checklists and flip charts are read; 0 is two metres.
	Distance measure.Length
	// Mark stands on every page: that the module is not translated yet. Empty when it is.
	Mark string
}

// List is every piece there is, in the order people meet them.
var List = append([]Piece{
	{Name: "booklet-pages", Folded: "booklet", Make: func(j *Job) (*Result, error) { return Booklet(j.Edition, j.Fonts) }},
	{Name: "handout", Each: true, Make: handout},
	{Name: "wall-checklist", Each: true, Tiled: "wall-tiles", Make: wallChecklist},
	{Name: "wall-checklist", Tiled: "wall-tiles", Wanted: hasWall, Make: wallWard},
	{Name: "flip-chart", Each: true, Make: flipChart},
	{Name: "skills-checklist", Each: true, Make: skillsChecklist},
	{Name: "quiz-a", Each: true, Make: quizA},
	{Name: "quiz-b", Each: true, Make: quizB},
	{Name: "answer-key", Each: true, Make: answerKey},
	{Name: "session-plan", Make: sessionPlan},
	{Name: "attendance", Make: attendance},
	{Name: "reading-sheet", Each: true, Make: readingSheet},
	{Name: "picture-sheet", Make: pictureSheet},
}, sheetPieces()...)

// work returns a press for a piece on office paper, its text of a size.
func (j *Job) work(text float64, label string) (*press, error) {
	p, err := newPress(j.Edition, j.Fonts, typeset.Sized(measure.Pt(text)), typeset.WorkFrame(j.Paper, j.Locale.RTL), label)
	if err == nil {
		p.mark = j.Mark
	}
	if err == nil && j.Module != nil {
		p.use(j.Module)
	}
	return p, err
}

// sheet returns a press for a piece that is one sheet about the job's module, its text of a size.
func (j *Job) sheet(text float64, label string) (*press, error) {
	z := typeset.Sized(measure.Pt(text))
	z.Small = max(z.Small, measure.Pt(10.8)) // what marks a step is then no smaller than 12 points
	p, err := newPress(j.Edition, j.Fonts, z, typeset.SheetFrame(j.Paper, j.Locale.RTL), label)
	if err == nil {
		p.use(j.Module)
		p.bare, p.mark = true, j.Mark
	}
	return p, err
}

// done paginates strips, finishes the piece and returns it.
func (p *press) done(title string, strips []typeset.Strip, modules []translate.Module) (*Result, error) {
	sheets, spots := typeset.Paginate(strips, p.frame, 0)
	for _, m := range modules {
		p.claim(m.Lesson)
	}
	p.finish(title, sheets, spots, modules, false)
	return p.res, nil
}

// heading starts a piece about a module: what the piece is, and the module's title.
func (p *press) heading(m *translate.Module) []typeset.Strip {
	w := p.frame.Width()
	out := p.s.Title(m.Lesson.Title, w, p.root)
	out[0].Break = typeset.NewModule
	out[0].Anchor = &typeset.Anchor{Name: "module-" + m.ID, Title: lesson.Plain(m.Lesson.Title)}
	return out
}

// shortCaution stands on pieces that do not carry the module's caution block.
func (p *press) shortCaution() typeset.Strip {
	return p.s.ShortCaution(p.Locale.Label("caution"), p.Locale.Label("caution-short"), p.frame.Width(), p.root)
}
