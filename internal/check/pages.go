package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/source"
)

// smallest is the least size of words that are read (common practice). The eye height
// of the booklet's smallest text lies above it in every script.
var smallest = measure.Pt(6)

// A Laid is a piece laid out.
type Laid struct {
	Piece, Lang, Module string // Module is empty when it is one for the pack
	Document            *page.Document
}

// LaidOut says what is wrong with the pages of a piece: what stands off the page, what is
// too small to read, and words that were cut. It says each once.
func LaidOut(p *pack.Pack, laid Laid) []finding.Finding {
	pass := &Pass{Pack: p}
	at := Where{File: p.File, Lang: laid.Lang, Module: laid.Module}
	if at.File == nil {
		at.File = source.New("pack.yaml", nil)
	}
	piece := laid.Piece
	if laid.Lang != "" {
		piece += " in " + laid.Lang
	}
	over, small := -1, -1
	var cut []string
	for i, pg := range laid.Document.Pages {
		for _, it := range pg.Items {
			if over < 0 && outside(it, pg.Size) {
				over = i
			}
			r, ok := it.(*page.GlyphRun)
			if !ok {
				continue
			}
			if small < 0 && r.Tag != nil && r.Size < smallest {
				small = i
			}
			if r.Cut {
				cut = append(cut, fmt.Sprintf("%q on page %d", r.Text(), i+1))
			}
		}
	}
	if over >= 0 {
		pass.rule = pageOverflow
		pass.Report(at, fmt.Sprintf("something is set off page %d of the piece %s", over+1, piece),
			"print on larger paper, or shorten the table or picture that is too wide")
	}
	if small >= 0 {
		pass.rule = textSmall
		pass.Report(at, fmt.Sprintf("words on page %d of the piece %s are smaller than 6 points", small+1, piece), "print on larger paper")
	}
	if len(cut) > 0 {
		pass.rule = wordCut
		pass.Report(at, fmt.Sprintf("a word of the piece %s was cut, since no line could hold it: %s", piece, cut[0]),
			"use a shorter word, or put an address behind the words of a link")
	}
	finding.Sort(pass.findings)
	return pass.findings
}

// pointsOf is how many points each operation of a path has.
var pointsOf = [...]int{page.MoveTo: 1, page.LineTo: 1, page.CurveTo: 3, page.Close: 0}

// outside reports whether an item reaches off a page. What hangs over by a hair, such
// as the white of a glyph, does not count.
func outside(it page.Item, size measure.Size) bool {
	hair := measure.Pt(1)
	in := func(x, y, w, h measure.Length) bool {
		return x >= -hair && y >= -hair && x+w <= size.Width+hair && y+h <= size.Height+hair
	}
	switch it := it.(type) {
	case *page.GlyphRun:
		if it.Upward {
			return !in(it.X, it.Y-it.Width(), 0, it.Width())
		}
		return !in(it.X, it.Y, it.Width(), 0)
	case *page.Box:
		return !in(it.X, it.Y, it.Width, it.Height)
	case *page.Path:
		for _, seg := range it.Segments {
			for i := range pointsOf[seg.Op] {
				if !in(seg.P[i].X, seg.P[i].Y, 0, 0) {
					return true
				}
			}
		}
	}
	return false
}
