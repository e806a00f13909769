package piece

import (
	"fmt"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/redline"
	"wardleaf/internal/translate"
	"wardleaf/internal/typeset"
)

// RedlineSheet is for a meeting of reviewers: every change with what stood there and
// what stands there now, boxes to tick, room for remarks, and lines to sign. find returns
// a language of the pack, or nil when nothing is known of it.
func RedlineSheet(j *Job, v *redline.View, find func(tag string) *locale.Locale) (*Result, error) {
	loc := j.Locale
	frame := typeset.WorkFrame(j.Paper.Landscape(), loc.RTL)
	sizes := typeset.Sized(measure.Pt(9))
	press, err := newPress(j.Edition, j.Fonts, sizes, frame, v.Title)
	if err != nil {
		return nil, err
	}
	p := redlinePress{press: press, by: map[string]*typeset.Setter{"": press.s}}
	for _, s := range v.Sections {
		if l := find(s.Lang); l != nil && p.by[s.Lang] == nil {
			if p.by[s.Lang], err = typeset.NewSetter(j.Fonts, l, sizes); err != nil {
				return nil, err
			}
		}
	}
	strips := p.opening(v)
	if len(v.First) > 0 {
		strips = append(strips, p.s.PartHeading(text(v.FirstTitle), p.frame.Width(), p.root)...)
		strips = append(strips, p.first(v.First)...)
	}
	for i, s := range v.Sections {
		heading := p.s.PartHeading(text(s.Title), p.frame.Width(), p.root)
		heading[0].Anchor = &typeset.Anchor{Name: fmt.Sprintf("section-%d", i+1), Title: redline.Bare(s.Title)}
		strips = append(strips, heading...)
		for _, n := range s.Notes {
			strips = append(strips, p.s.Text(n, typeset.BoldLook, 0, p.frame.Width(), p.root.Add("P"))...)
			strips[len(strips)-1].Keep = true
		}
		strips = append(strips, p.section(s.Entries)...)
	}
	strips = append(strips, p.signatures()...)

	// Whatever was signed off before, the changes await review.
	var modules []translate.Module
	for _, m := range j.Modules {
		m.Signed = false
		modules = append(modules, m)
	}
	res, err := p.done(v.Title+": "+v.Pack, strips, modules)
	if err != nil {
		return nil, err
	}
	for _, s := range v.Sections {
		for _, g := range p.by[s.Lang].Missing() {
			if !p.claimed(g) {
				res.Missing = append(res.Missing, Missing{Gap: g})
			}
		}
	}
	return res, nil
}

// redlinePress is a press with a setter for each language of the changes.
type redlinePress struct {
	*press
	by map[string]*typeset.Setter
}

func (p redlinePress) opening(v *redline.View) []typeset.Strip {
	w := p.frame.Width()
	strips := p.s.Text(v.Title, typeset.TitleLook, 0, w, p.root.Add("H1"))
	for _, line := range []string{v.Pack, v.Was, v.Now, v.How} {
		look := typeset.TextLook
		if line == v.Pack {
			look = typeset.BoldLook
		}
		strips = append(strips, p.s.Text(line, look, 0, w, p.root.Add("P"))...)
	}
	strips = append(strips, p.shortCaution())
	if v.None != "" {
		strips = append(strips, typeset.SpaceBefore(p.s.Text(v.None, typeset.BoldLook, 0, w, p.root.Add("P")), p.s.Grid)...)
	}
	return strips
}

// first sets the changes to be read first, in few words.
func (p redlinePress) first(es []redline.Entry) []typeset.Strip {
	t := typeset.RuledTable{Columns: []float64{0.05, 0.33, 0.31, 0.31}, Head: p.heads("№", "redline-place", "redline-was", "redline-now")}
	var rows [][]typeset.Cell
	for i := range es {
		e := &es[i]
		where := e.Section + " – " + e.Where
		same := len(e.Runs) == 1 && e.Runs[0].Op == redline.Same
		rows = append(rows, append([]typeset.Cell{typeset.Plain(e.Number), {Text: lines(where, append([]string{e.What}, e.Marks...))}}, p.sides(e, redline.Excerpt(e.Runs), same)...))
	}
	return p.s.Table(t, rows, p.frame.Width(), p.root)
}

// longest is how many characters stand in one cell; more go on in another row.
const longest = 500

// section sets the changes of one module in one language.
func (p redlinePress) section(es []redline.Entry) []typeset.Strip {
	t := typeset.RuledTable{
		Columns: []float64{0.05, 0.2, 0.25, 0.25, 0.065, 0.065, 0.12},
		Head:    p.heads("№", "redline-place", "redline-was", "redline-now", "redline-agreed", "redline-change", "remarks"),
	}
	var rows [][]typeset.Cell
	for i := range es {
		e := &es[i]
		about := append(append([]string{e.What}, e.Marks...), e.Lines...)
		same := len(e.Runs) == 1 && e.Runs[0].Op == redline.Same
		for k, runs := range redline.Portions(e.Runs, longest) {
			row, boxes := []typeset.Cell{{}, {}}, []typeset.Cell{{}, {}, {}}
			if k == 0 {
				row = []typeset.Cell{typeset.Plain(e.Number), {Text: lines(e.Where, about)}}
				boxes = []typeset.Cell{{Square: true}, {Square: true}, {}}
			}
			rows = append(rows, append(append(row, p.sides(e, runs, same)...), boxes...))
		}
	}
	return p.s.Table(t, rows, p.frame.Width(), p.root)
}

// heads are the heads of columns: the first as it is, the others by their labels.
func (p redlinePress) heads(first string, labels ...string) []typeset.Cell {
	out := []typeset.Cell{typeset.Head(first)}
	for _, l := range labels {
		out = append(out, typeset.Head(p.Locale.Label(l)))
	}
	return out
}

// lines are a line in bold and others below it.
func lines(bold string, rest []string) []lesson.Inline {
	out := []lesson.Inline{{Kind: lesson.Strong, Children: text(bold)}}
	for _, r := range rest {
		if r != "" {
			// The space keeps the words on both sides of the break apart for readers that hear them.
			out = append(append(out, text(" ")...), lesson.Inline{Kind: lesson.Break})
			out = append(out, text(r)...)
		}
	}
	return out
}

// sides are two cells: what stood there, and what stands there now. Words that are the
// same as they were stand in the second alone.
func (p redlinePress) sides(e *redline.Entry, runs []redline.Run, same bool) []typeset.Cell {
	was, now := typeset.Cell{Lang: e.Lang, By: p.by[e.Lang]}, typeset.Cell{Lang: e.Lang, By: p.by[e.Lang]}
	for _, r := range runs {
		before, words, after := redline.Core(r.Text)
		ruled := func(k lesson.InlineKind) []lesson.Inline {
			return append(append(text(before), lesson.Inline{Kind: k, Children: text(words)}), text(after)...)
		}
		switch r.Op {
		case redline.Struck:
			was.Text = append(was.Text, ruled(lesson.Struck)...)
		case redline.Added:
			now.Text = append(now.Text, ruled(lesson.Added)...)
		default:
			now.Text = append(now.Text, text(r.Text)...)
			if !same {
				was.Text = append(was.Text, text(r.Text)...)
			}
		}
	}
	for _, c := range []*typeset.Cell{&was, &now} {
		if e.Lang == "" && len(c.Text) > 0 { // a value of a record runs its own way (UAX #9, FSI and PDI)
			c.Text = append(append(text("\u2068"), c.Text...), text("\u2069")...)
		}
	}
	return []typeset.Cell{was, now}
}

// signatures are lines for three reviewers, kept together.
func (p redlinePress) signatures() []typeset.Strip {
	loc := p.Locale
	var out []typeset.Strip
	for range 3 {
		out = append(out, p.s.FormLine([]typeset.Field{{Label: loc.Label("reader"), Share: 0.4}, {Label: loc.Label("signed"), Share: 0.35}, {Label: loc.Label("date"), Share: 0.25}}, p.frame.Width()))
	}
	return []typeset.Strip{typeset.SpaceBefore([]typeset.Strip{typeset.Stack(out)}, 2*p.s.Grid)[0]}
}
