package site

import (
	"fmt"
	"html/template"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
)

// A part is one part of a lesson as the template of parts shows it.
type part struct {
	L        labels
	ID       string // unique on the page
	Class    string
	Heading  template.HTML
	Groups   []group
	Contacts []contact // whom to call, below the warning signs
}

// A group is one block of a part: plain text, or a list that the part gives a form of its own.
type group struct {
	Text      template.HTML
	Steps     []step
	Boxes     []box
	Signs     []sign
	Questions []question
}

type step struct {
	Value    int
	Number   string // Value in the language's digits
	Critical bool
	Words    template.HTML
	Figures  []template.HTML
}

// Class names what makes a step look unlike the others.
func (s step) Class() string {
	var out []string
	if s.Critical {
		out = append(out, "critical")
	}
	if len(s.Figures) > 0 {
		out = append(out, "pictured")
	}
	return strings.Join(out, " ")
}

type box struct {
	Name string
	said
}

type question struct {
	Value   int
	Number  string
	Name    string // of the group of radio buttons
	Stem    said
	Options []option
	Answer  []option // the right ones
	Reason  template.HTML
}

type option struct {
	Value  int
	Letter string
	said
}

// said is an item in two portions: its first paragraph, which may stand within a
// label, and the blocks that follow.
type said struct{ Line, Rest template.HTML }

// part makes the view of a part. index makes its ids unique on the page; steps counts
// the steps parts so far.
func (r *renderer) part(p *lesson.Part, m *translate.Module, index int, steps *int) part {
	out := part{L: labels{r.e.Locale}, ID: fmt.Sprintf("part-%d", index+1), Class: string(p.Role)}
	if p.Role == lesson.Prose {
		out.Class = "prose"
	}
	r.level = 2
	out.Heading = r.inlines(p.Heading)
	switch p.Role {
	case lesson.Steps:
		*steps++
	case lesson.WarningSigns:
		out.Contacts = contacts(r.e)
	}
	asked := 0
	for i := range p.Blocks {
		b := &p.Blocks[i]
		var g group
		switch {
		case p.Role == lesson.Steps && b.Kind == lesson.List && b.Ordered:
			g.Steps = r.steps(b, m, *steps)
		case p.Role == lesson.Checklist && b.Kind == lesson.List:
			g.Boxes = r.boxes(b, fmt.Sprintf("%s-%d", out.ID, i+1))
		case p.Role == lesson.WarningSigns && b.Kind == lesson.List:
			g.Signs = r.signs(b)
		case p.Role == lesson.Quiz && b.Kind == lesson.List && b.Ordered:
			g.Questions = r.questions(b, out.ID, &asked)
		default:
			g.Text = r.blocks(p.Blocks[i : i+1])
		}
		out.Groups = append(out.Groups, g)
	}
	return out
}

// steps are the items of an ordered list. part is the place of their part among the
// module's steps parts, from 1.
func (r *renderer) steps(b *lesson.Block, m *translate.Module, part int) []step {
	critical := map[int]bool{}
	for _, ref := range m.Record.CriticalSteps {
		if ref.Part == part {
			critical[ref.Step] = true
		}
	}
	var out []step
	for i, it := range b.Items {
		n := b.Start + i
		words, figures := apart(it.Blocks)
		s := step{Value: n, Number: r.e.Locale.Number(n), Critical: critical[n], Words: r.blocks(words)}
		for k := range figures {
			s.Figures = append(s.Figures, r.figure(&figures[k]))
		}
		out = append(out, s)
	}
	return out
}

// apart takes the figures of an item apart from its words.
func apart(bs []lesson.Block) (words, figures []lesson.Block) {
	for _, b := range bs {
		if b.Kind == lesson.Figure && b.Sheet() == "" {
			figures = append(figures, b)
		} else {
			words = append(words, b)
		}
	}
	return words, figures
}

// boxes are items that can be ticked on the screen. Nothing is stored.
func (r *renderer) boxes(b *lesson.Block, name string) []box {
	var out []box
	for i, it := range b.Items {
		out = append(out, box{fmt.Sprintf("%s-%d", name, i+1), r.said(it.Blocks)})
	}
	return out
}

// questions are those of one ordered list; asked counts the part's questions so far.
// Choosing stores nothing; the answer opens on demand.
func (r *renderer) questions(b *lesson.Block, id string, asked *int) []question {
	loc := r.e.Locale
	list := lesson.Part{Blocks: []lesson.Block{*b}}
	var out []question
	for _, q := range list.Questions() {
		*asked++
		v := question{
			Value: *asked, Number: loc.Number(*asked), Name: fmt.Sprintf("%s-question-%d", id, *asked),
			Stem: r.said(q.Stem), Reason: r.blocks(q.Reason),
		}
		for k, o := range q.Options {
			said := option{k + 1, loc.Letter(k), r.said(o.Blocks)}
			v.Options = append(v.Options, said)
			if o.Right {
				v.Answer = append(v.Answer, said)
			}
		}
		out = append(out, v)
	}
	return out
}

func (r *renderer) said(bs []lesson.Block) said {
	if len(bs) > 0 && bs[0].Kind == lesson.Paragraph {
		return said{r.inlines(bs[0].Inlines), r.blocks(bs[1:])}
	}
	return said{Rest: r.blocks(bs)}
}
