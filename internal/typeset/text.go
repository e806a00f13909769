package typeset

import (
	"strings"

	"wardleaf/internal/bidi"
	"wardleaf/internal/lesson"
	"wardleaf/internal/measure"
	"wardleaf/internal/page"
	"wardleaf/internal/shape"
	"wardleaf/internal/source"
)

// A Line is one line of shaped text, laid out from its own left end.
type Line struct {
	Width Length
	Items []page.Item // X from the left end, Y from the baseline
}

// span is a run of a paragraph with its look and where it leads.
type span struct {
	text  string
	style Style
	link  *lesson.Inline
	at    source.Span
	tag   *page.Tag
}

// spans flattens inlines into runs.
func spans(ins []lesson.Inline, st Style) []span {
	var out []span
	var walk func(ins []lesson.Inline, st Style, link *lesson.Inline)
	walk = func(ins []lesson.Inline, st Style, link *lesson.Inline) {
		for i := range ins {
			in := &ins[i]
			switch in.Kind {
			case lesson.Text, lesson.CodeSpan:
				out = append(out, span{text: in.Text, style: st, link: link, at: in.Span})
			case lesson.Break:
				out = append(out, span{text: "\n", style: st, link: link, at: in.Span})
			case lesson.Strong, lesson.Emphasis:
				walk(in.Children, st.bold(), link)
			case lesson.Struck: // bold, so that a digit can still be read under the rule
				walk(in.Children, st.bold().ruled(Through), link)
			case lesson.Added:
				walk(in.Children, st.bold().ruled(Under), link)
			case lesson.Link:
				look := st
				if in.Scheme == "source" {
					look = st.scaled(0.86)
				}
				walk(in.Children, look, in)
			}
		}
	}
	walk(ins, st, nil)
	return out
}

// Lines breaks inlines into lines no wider than width, all content tagged with tag.
func (s *Setter) Lines(ins []lesson.Inline, st Style, width Length, tag *page.Tag) []Line {
	sp := spans(ins, st)
	for i := range sp {
		sp[i].text = s.Locale.Spacing(sp[i].text)
	}
	s.tagSpans(sp, tag)
	runs := make([]shape.Run, len(sp))
	for i, p := range sp {
		runs[i] = shape.Run{Text: p.text, Style: i, Bold: p.style.Bold}
	}
	t := s.shaper.Shape(runs, s.base)
	for _, m := range t.Missing {
		if _, seen := s.missing[m.Rune]; !seen {
			s.missing[m.Rune] = Gap{m.Rune, spanAt(sp, m.At)}
		}
	}
	advance := func(w *shape.Word) Length { return wordWidth(w, sp[w.Style].style) }

	var lines []Line
	words := narrowed(t.Words, width, advance)
	for len(words) > 0 {
		n := fit(words, width, advance)
		line := words[:n]
		words = words[n:]
		for len(words) > 0 && words[0].Space && !words[0].MustBreak {
			words = words[1:] // further spaces that hang over the line end
		}
		end := len(line)
		for end > 0 && line[end-1].Space {
			end--
		}
		if end == 0 {
			continue
		}
		// One space stays, hanging into the margin, so that the words on both sides
		// of the line end stay two words for search and screen readers.
		lines = append(lines, s.line(t, line[:min(end+1, len(line))], sp))
	}
	return lines
}

// tagSpans says which element each span belongs to: the paragraph itself, or, when
// there are links in it, one child for each link and each stretch between them.
// Right-to-left text carries its true words, for readers that go by what they see.
func (s *Setter) tagSpans(sp []span, tag *page.Tag) {
	if tag == nil {
		return
	}
	links := false
	for i := range sp {
		links = links || sp[i].link != nil && linkURI(sp[i].link) != ""
	}
	for i := range sp {
		switch {
		case !links:
			sp[i].tag = tag
		case i > 0 && sp[i].link == sp[i-1].link:
			sp[i].tag = sp[i-1].tag
		case sp[i].link != nil && linkURI(sp[i].link) != "":
			sp[i].tag = tag.Add("Link")
		default:
			sp[i].tag = tag.Add("Span")
		}
		if s.base == bidi.RightToLeft {
			sp[i].tag.Actual += sp[i].text
		}
		if sp[i].tag.Role == "Link" {
			sp[i].tag.Alt += sp[i].text
		}
	}
}

// narrowed cuts words that are wider than a line between their clusters, which no
// text should need and some address or mistake will.
func narrowed(words []shape.Word, width Length, advance func(*shape.Word) Length) []shape.Word {
	for i := range words {
		if advance(&words[i]) > width && len(words[i].Clusters) > 1 {
			out := append([]shape.Word(nil), words[:i]...)
			for k := range words[i:] {
				out = append(out, cut(words[i+k], width, advance)...)
			}
			return out
		}
	}
	return words
}

// cut takes a word apart into pieces no wider than width, in reading order.
func cut(w shape.Word, width Length, advance func(*shape.Word) Length) []shape.Word {
	if advance(&w) <= width || len(w.Clusters) < 2 {
		return []shape.Word{w}
	}
	half := len(w.Clusters) / 2
	first, rest := w, w
	first.Clusters, rest.Clusters = w.Clusters[:half], w.Clusters[half:]
	if w.Level%2 == 1 {
		first.Clusters, rest.Clusters = rest.Clusters, first.Clusters
	}
	for _, p := range []*shape.Word{&first, &rest} {
		p.Advance = 0
		for i := range p.Clusters {
			p.Advance += p.Clusters[i].Advance
		}
	}
	first.BreakAfter, first.MustBreak = true, false
	first.Cut, rest.Cut = true, true
	return append(cut(first, width, advance), cut(rest, width, advance)...)
}

// fit returns how many words the next line takes: as many as there is room for, at least one unit.
func fit(words []shape.Word, width Length, advance func(*shape.Word) Length) int {
	var used Length
	best := 0
	for i := range words {
		w := &words[i]
		used += advance(w)
		switch {
		case used <= width || w.Space:
		case best > 0:
			return best
		case i > 0:
			return i // no place to break: better between two words that belong together than off the page
		}
		if w.MustBreak {
			return i + 1
		}
		if w.BreakAfter {
			best = i + 1
		}
	}
	return len(words)
}

func wordWidth(w *shape.Word, st Style) Length {
	return st.Size.Scale(w.Scale * float64(w.Advance) / float64(w.Face.UnitsPerEm))
}

// line puts the words of one line into visual order and joins neighbours that look
// alike. A space at its end takes no room.
func (s *Setter) line(t *shape.Text, words []shape.Word, sp []span) Line {
	var out Line
	var last *page.GlyphRun
	lastStyle := -1
	for _, i := range t.Order(words) {
		w := &words[i]
		p := &sp[w.Style]
		adv := wordWidth(w, p.style)
		rtl := w.Level%2 == 1
		if last != nil && last.Face == w.Face && last.RTL == rtl && last.Tag == p.tag && sp[lastStyle].style == p.style {
			last.Clusters = append(last.Clusters, w.Clusters...)
		} else if len(w.Clusters) > 0 {
			last = &page.GlyphRun{
				Face: w.Face, Size: p.style.Size.Scale(w.Scale), X: out.Width, RTL: rtl,
				Clusters: append([]page.Cluster(nil), w.Clusters...), Colour: p.style.Colour, Tag: p.tag,
			}
			out.Items = append(out.Items, last)
		}
		if last != nil && w.Cut {
			last.Cut = true
		}
		lastStyle = w.Style
		if !w.Space || w != &words[len(words)-1] {
			out.rule(p.style, out.Width, adv)
		}
		if p.link != nil {
			out.addLink(p, out.Width, adv)
		}
		out.Width += adv
	}
	if end := &words[len(words)-1]; end.Space {
		hang := wordWidth(end, sp[end.Style].style)
		out.Width -= hang
		if s.base == bidi.RightToLeft { // it hangs at the left
			for _, it := range out.Items {
				shift(it, -hang, 0)
			}
		}
	}
	return out
}

// rule draws the rule of a word, and widens that of the word before it when both are one.
func (l *Line) rule(st Style, x, width Length) {
	at := map[Rule]float64{Through: -0.29, Under: 0.17}[st.Rule]
	if st.Rule == NoRule {
		return
	}
	y := st.Size.Scale(at)
	if n := len(l.Items); n > 0 {
		if b, ok := l.Items[n-1].(*page.Box); ok && b.Y == y && b.X+b.Width == x && b.Colour == st.Colour {
			b.Width += width
			return
		}
	}
	l.Items = append(l.Items, &page.Box{X: x, Y: y, Width: width, Height: st.Size.Scale(0.05), Colour: st.Colour})
}

// addLink covers a word with its link, widening the link before it when both are one.
func (l *Line) addLink(p *span, x, width Length) {
	uri := linkURI(p.link)
	if uri == "" {
		return
	}
	for i := len(l.Items) - 1; i >= max(0, len(l.Items)-2); i-- {
		if k, ok := l.Items[i].(*page.Link); ok && k.Tag == p.tag && k.URI == uri && k.X+k.Width == x {
			k.Width += width
			return
		}
	}
	l.Items = append(l.Items, &page.Link{X: x, Y: -p.style.Size, Width: width, Height: p.style.Size.Scale(1.3), URI: uri, Tag: p.tag})
}

// linkURI returns where a link leads outside the piece, or within it as "#module", or "".
func linkURI(in *lesson.Inline) string {
	switch in.Scheme {
	case "https", "mailto", "tel":
		return in.Scheme + ":" + in.Target
	case "module", "source":
		return "#" + in.Scheme + "-" + in.Target
	}
	return ""
}

func spanAt(sp []span, at int) source.Span {
	for _, p := range sp {
		n := len([]rune(p.text))
		if at < n {
			return p.at
		}
		at -= n
	}
	return source.Span{}
}

// width returns the width of a short text set on one line.
func (s *Setter) width(text string, st Style) Length {
	var w Length
	for _, l := range s.Lines(plainText(text), st, measure.MM(10000), nil) {
		w = max(w, l.Width)
	}
	return w
}

// widest returns the width of the widest line of inlines set in a width.
func (s *Setter) widest(ins []lesson.Inline, st Style, width Length) Length {
	var w Length
	for _, l := range s.Lines(ins, st, width, nil) {
		w = max(w, l.Width)
	}
	return w
}

// oneLine sets a short text on one line whatever its width.
func (s *Setter) oneLine(text string, st Style, tag *page.Tag) Line {
	lines := s.Lines(plainText(strings.ReplaceAll(text, "\n", " ")), st, measure.MM(10000), tag)
	if len(lines) == 0 {
		return Line{}
	}
	return lines[0]
}
