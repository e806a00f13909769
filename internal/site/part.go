package site

import (
	"fmt"
	"html/template"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/translate"
)

// part writes one part of a lesson as a section with its heading. index makes its ids
// unique on the page; steps counts the steps parts so far.
func (r *renderer) part(p *lesson.Part, m *translate.Module, index int, steps *int) template.HTML {
	var b strings.Builder
	class := string(p.Role)
	if class == "" {
		class = "prose"
	}
	id := fmt.Sprintf("part-%d", index+1)
	fmt.Fprintf(&b, "<section class=\"%s\" aria-labelledby=\"%s\">\n<h2 id=\"%s\">%s</h2>\n", class, id, id, r.inlines(p.Heading))
	switch p.Role {
	case lesson.Steps:
		*steps++
		r.steps(&b, p, m, *steps)
	case lesson.Checklist:
		r.checklist(&b, p, id)
	case lesson.WarningSigns:
		r.signs(&b, p)
	case lesson.Quiz:
		r.quiz(&b, p, id)
	default:
		b.WriteString(string(r.blocks(p.Blocks)))
	}
	b.WriteString("</section>\n")
	return template.HTML(b.String())
}

func (r *renderer) steps(b *strings.Builder, p *lesson.Part, m *translate.Module, part int) {
	critical := map[int]bool{}
	for _, ref := range m.Record.CriticalSteps {
		if ref.Part == part {
			critical[ref.Step] = true
		}
	}
	for i := range p.Blocks {
		bl := &p.Blocks[i]
		if bl.Kind != lesson.List || !bl.Ordered {
			r.block(b, bl)
			continue
		}
		b.WriteString("<ol class=\"steps-list\">\n")
		for k, it := range bl.Items {
			n := bl.Start + k
			class, word := "", ""
			if critical[n] {
				class = ` class="critical"`
				word = fmt.Sprintf("<strong class=\"never-miss\">%s</strong>\n", esc(r.e.Locale.Label("critical-step")))
			}
			words, figures := split(it.Blocks)
			fmt.Fprintf(b, "<li%s value=\"%d\"><span class=\"numeral\" aria-hidden=\"true\">%s</span><div class=\"words\">%s%s</div>",
				class, n, esc(r.e.Locale.Number(n)), word, r.blocks(words))
			for k := range figures {
				b.WriteString(r.figure(&figures[k]))
			}
			b.WriteString("</li>\n")
		}
		b.WriteString("</ol>\n")
	}
}

// split takes the figures of an item apart from its words.
func split(bs []lesson.Block) (words, figures []lesson.Block) {
	for _, b := range bs {
		if b.Kind == lesson.Figure {
			figures = append(figures, b)
		} else {
			words = append(words, b)
		}
	}
	return words, figures
}

// checklist writes boxes that can be ticked on the screen; nothing is stored.
func (r *renderer) checklist(b *strings.Builder, p *lesson.Part, id string) {
	for i := range p.Blocks {
		bl := &p.Blocks[i]
		if bl.Kind != lesson.List {
			r.block(b, bl)
			continue
		}
		b.WriteString("<ul class=\"boxes\">\n")
		for k, it := range bl.Items {
			fmt.Fprintf(b, "<li><label><input type=\"checkbox\" name=\"%s-%d-%d\"> <span>%s</span></label></li>\n", id, i, k, r.tight(it.Blocks))
		}
		b.WriteString("</ul>\n")
	}
}

func (r *renderer) signs(b *strings.Builder, p *lesson.Part) {
	for i := range p.Blocks {
		bl := &p.Blocks[i]
		if bl.Kind != lesson.List {
			r.block(b, bl)
			continue
		}
		b.WriteString("<ul class=\"signs\">\n")
		for _, it := range bl.Items {
			words, figures := split(it.Blocks)
			b.WriteString("<li>")
			for k := range figures {
				b.WriteString(r.figure(&figures[k]))
			}
			fmt.Fprintf(b, "<div>%s</div></li>\n", r.tight(words))
		}
		b.WriteString("</ul>\n")
	}
}

// quiz writes questions whose answers open on demand. Choosing stores nothing.
func (r *renderer) quiz(b *strings.Builder, p *lesson.Part, id string) {
	loc := r.e.Locale
	b.WriteString("<ol class=\"questions\">\n")
	for i, q := range p.Questions() {
		name := fmt.Sprintf("%s-q%d", id, i+1)
		fmt.Fprintf(b, "<li value=\"%d\"><fieldset><legend><span class=\"numeral\" aria-hidden=\"true\">%s</span> %s</legend>\n", i+1, esc(loc.Number(i+1)), r.tight(q.Stem))
		var right []string
		for k, o := range q.Options {
			letter := loc.Letter(k)
			if o.Right {
				right = append(right, fmt.Sprintf("<p><strong>%s. %s</strong></p>", esc(letter), r.tight(o.Blocks)))
			}
			fmt.Fprintf(b, "<label><input type=\"radio\" name=\"%s\" value=\"%d\"> <span><span class=\"letter\">%s</span> %s</span></label>\n", name, k+1, esc(letter), r.tight(o.Blocks))
		}
		fmt.Fprintf(b, "</fieldset>\n<details><summary>%s</summary>%s%s</details></li>\n", esc(loc.Label("show-answer")), strings.Join(right, ""), r.blocks(q.Reason))
	}
	b.WriteString("</ol>\n")
}
