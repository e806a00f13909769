package piece

import (
	"fmt"
	"slices"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/pack"
	"wardleaf/internal/page"
	"wardleaf/internal/sheet"
	"wardleaf/internal/source"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// sheetPieces are the computed sheets as pieces of the pack, blank; those that its
// lessons place.
func sheetPieces() []Piece {
	var out []Piece
	for _, s := range sheet.List {
		out = append(out, Piece{
			Name:   s.Name,
			Wanted: func(p *pack.Pack) bool { return slices.Contains(sheet.Placed(p), s) },
			Make: func(j *Job) (*Result, error) {
				r, _, err := Sheet(j, s, nil, nil)
				return r, err
			},
		})
	}
	return out
}

// Sheet sets a computed sheet with inputs. When the findings hold errors there is no
// result. A page that runs over is set smaller, if that keeps it on one sheet.
func Sheet(j *Job, s *sheet.Sheet, inputs map[string]string, files map[string]*source.File) (*Result, []finding.Finding, error) {
	upright := typeset.SheetFrame(j.Paper, j.Locale.RTL)
	c, err := s.Make(sheet.Job{
		Locale: j.Locale, Pack: j.Pack, Room: measure.Size{Width: upright.Width(), Height: upright.Height()},
		Inputs: inputs, Files: files,
	})
	if err != nil {
		return nil, nil, err
	}
	if slices.ContainsFunc(c.Findings, func(f finding.Finding) bool { return f.Level == finding.Error }) {
		return nil, c.Findings, nil
	}
	var first *Result
	for _, size := range []float64{9.5, 9, 8.5} {
		r, err := sheetAt(j, s, c, size)
		if err != nil {
			return nil, nil, err
		}
		if len(r.Document.Pages) <= len(c.Pages) {
			return r, c.Findings, nil
		}
		if first == nil {
			first = r
		}
	}
	return first, c.Findings, nil
}

// sheetAt sets a sheet in letters of a size, in points.
func sheetAt(j *Job, s *sheet.Sheet, c *sheet.Content, size float64) (*Result, error) {
	p, err := j.work(size, j.Locale.Label(s.Name))
	if err != nil {
		return nil, err
	}
	upright := typeset.SheetFrame(j.Paper, j.Locale.RTL)
	p.bare = true
	var sheets []typeset.Sheet
	var spots []typeset.Spot
	var frames []typeset.Frame
	for i := range c.Pages {
		pg := &c.Pages[i]
		p.frame = upright
		if pg.Landscape {
			p.frame = typeset.SheetFrame(j.Paper.Landscape(), j.Locale.RTL)
		}
		more, found := typeset.Paginate(p.sheetPage(c, pg), p.frame, len(sheets))
		sheets, spots = append(sheets, more...), append(spots, found...)
		for range more {
			frames = append(frames, p.frame)
		}
	}
	p.frames = frames
	p.finish(c.Title, sheets, spots, placing(j.Edition, s.Name), false)
	p.res.Document.ExactScale = s.Exact
	return p.res, nil
}

// sheetPage sets one page of a sheet: title, caution, blocks.
func (p *press) sheetPage(c *sheet.Content, pg *sheet.Page) []typeset.Strip {
	w := p.frame.Width()
	sect := p.root.Add("Sect")
	title := c.Title
	if pg.Title != "" {
		title = pg.Title
	}
	var out []typeset.Strip
	if !pg.Bare {
		out = p.s.CloseTitle(text(title), w, sect)
		caution := c.Caution
		if caution == "" {
			caution = p.Locale.Label("caution-short")
		}
		out = append(out, p.s.ShortCaution(p.Locale.Label("caution"), caution, w, sect))
		out[len(out)-1].Keep = true
	}
	look := typeset.Style{Size: p.s.Sizes.Text, Colour: typeset.Ink}
	content := pg.Blocks
	if n := len(content); n > 0 && content[n-1].Fill {
		short := p.s.Blocks(content, look, 0, w, &page.Tag{})
		room := p.frame.Height() - typeset.Height(out) - typeset.Height(short) - p.s.Grid/2
		content = slices.Concat(content[:n-1], []lesson.Block{content[n-1].Filled(max(1, int(room/short[len(short)-1].Height)))})
	}
	blocks := p.s.Blocks(content, look, 0, w, sect)
	if len(blocks) > 0 {
		blocks[0].Before = max(blocks[0].Before, p.s.Grid/2)
	}
	out = append(out, blocks...)
	if len(out) == 0 {
		out = []typeset.Strip{p.s.Space(1)}
	}
	out[0].Break, out[0].Before = typeset.NewPage, 0
	out[0].Anchor = &typeset.Anchor{Name: fmt.Sprintf("sheet-%d", len(p.root.Kids)), Title: title}
	return out
}

// placing returns the modules whose lesson places a sheet: its review is theirs. When
// none does, it is that of all.
func placing(e *translate.Edition, name string) []translate.Module {
	var out []translate.Module
	for _, m := range e.Modules {
		found := false
		m.Lesson.Walk(func(b *lesson.Block) { found = found || b.Sheet() == name })
		if found {
			out = append(out, m)
		}
	}
	if out == nil {
		return e.Modules
	}
	return out
}

// placed returns what stands where a lesson places a sheet; a rule has said so when there is none.
func (p *press) placed(name string) []lesson.Block {
	if s := sheet.Find(name); s != nil {
		return s.In(p.Locale, p.Pack)
	}
	return nil
}

// frameOf is the frame of a page, which a piece may have for each of its pages.
func (p *press) frameOf(i int) typeset.Frame {
	if i < len(p.frames) {
		return p.frames[i]
	}
	return p.frame
}
