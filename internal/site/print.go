package site

import (
	"fmt"
	"slices"

	"wardleaf/internal/locale"
)

// A link leads to a page or a piece. Note says how big a piece is, How how to print it.
type link struct{ Href, Text, Note, How string }

// A reader is whom a page is for.
type reader bool

const (
	forFamilies reader = false
	forTrainers reader = true
)

// trainerPieces are the pieces that families have no use for.
var trainerPieces = []string{"quiz-a", "quiz-b", "answer-key", "skills-checklist", "reading-sheet", "flip-chart", "session-plan", "attendance", "picture-sheet"}

// prints lists the pieces of a module, or those of the whole pack when module is empty.
func prints(loc *locale.Locale, pdfs []PDF, module string, who reader) []link {
	var out []link
	for _, p := range pdfs {
		if p.Module != module || reader(slices.Contains(trainerPieces, p.Piece)) != who {
			continue
		}
		pages := loc.Label("print-pages", locale.Count(p.Pages))
		if p.Sheets > 0 {
			pages = loc.Label("booklet-fold-pages", locale.Count(p.Pages), locale.With("Sheets", loc.Number(p.Sheets)))
		}
		l := link{Href: p.Path, Text: pieceName(loc, p.Piece), Note: fmt.Sprintf("%s – %s\u00a0kB", pages, loc.Number((p.Bytes+999)/1000))}
		switch p.Piece {
		case "booklet":
			l.How = loc.Label("booklet-fold-how")
		case "booklet-pages":
			l.How = loc.Label("booklet-pages-how")
		case "wall-tiles":
			l.How = loc.Label("print-tiles")
		case "flip-chart":
			l.How = loc.Label("print-flip-chart", locale.With("Paper", p.Paper))
		default:
			l.How = loc.Label("print-one-side", locale.With("Paper", p.Paper))
			if p.Pages > 1 {
				l.How = loc.Label("print-both-sides", locale.With("Paper", p.Paper))
			}
		}
		out = append(out, l)
	}
	return out
}

// pieceName is what a piece is called in the language.
func pieceName(loc *locale.Locale, name string) string {
	switch name {
	case "booklet":
		return loc.Label("booklet-fold")
	case "quiz-a":
		return loc.Label("quiz-paper", locale.With("Version", "A"))
	case "quiz-b":
		return loc.Label("quiz-paper", locale.With("Version", "B"))
	}
	return loc.Label(name)
}
