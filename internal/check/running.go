package check

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// A running is the text of one paragraph, heading or table cell, in digits 0 to 9,
// with the inlines it comes from.
type running struct {
	lesson    *lesson.Lesson
	role      lesson.Role // of the part it stands in
	quoted    bool        // within a quote
	text      string
	stretches []stretch
}

// A stretch is the text of one inline; it ends where the next begins.
type stretch struct {
	start  int // byte in the text of the running
	inline *lesson.Inline
	scheme string // of the link it stands in, or ""
	target string // of that link
}

// A linked is the text of one link within a running.
type linked struct {
	start, end int
	target     string
}

// links returns the links of a scheme, in order. Those that touch and have one target are one.
func (r *running) links(scheme string) []linked {
	var out []linked
	for i, s := range r.stretches {
		end := len(r.text)
		if i+1 < len(r.stretches) {
			end = r.stretches[i+1].start
		}
		if s.scheme != scheme {
			continue
		}
		if n := len(out); n > 0 && out[n-1].end == s.start && out[n-1].target == s.target {
			out[n-1].end = end
			continue
		}
		out = append(out, linked{s.start, end, s.target})
	}
	return out
}

// sentence returns the bounds of the sentence that holds a byte of the text.
func (r *running) sentence(i int) (from, to int) {
	for _, end := range sentenceEnds(r.text) {
		if end[1] > i {
			return from, end[1]
		}
		from = end[1]
	}
	return from, len(r.text)
}

// running calls fn for every running of every lesson, in reading order.
func (p *Pass) running(fn func(running)) {
	if p.runnings == nil {
		p.eachRunning(func(r running) { p.runnings = append(p.runnings, r) })
	}
	for _, r := range p.runnings {
		fn(r)
	}
}

func (p *Pass) eachRunning(fn func(running)) {
	p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
		w := runningWalk{fn: fn, now: running{lesson: l}}
		w.inlines(l.Title)
		w.blocks(l.Lead)
		for i := range l.Parts {
			w.now.role = l.Parts[i].Role
			w.inlines(l.Parts[i].Heading)
			w.blocks(l.Parts[i].Blocks)
		}
	})
}

type runningWalk struct {
	fn  func(running)
	now running // without text
}

func (w runningWalk) blocks(bs []lesson.Block) {
	for i := range bs {
		b := &bs[i]
		w.inlines(b.Inlines)
		for _, row := range b.Rows {
			for _, cell := range row.Cells {
				w.inlines(cell)
			}
		}
		for k := range b.Items {
			w.blocks(b.Items[k].Blocks)
		}
		inner := w
		inner.now.quoted = true
		inner.blocks(b.Blocks)
	}
}

func (w runningWalk) inlines(ins []lesson.Inline) {
	r := w.now
	var text strings.Builder
	var walk func(ins []lesson.Inline, scheme, target string)
	walk = func(ins []lesson.Inline, scheme, target string) {
		for i := range ins {
			in := &ins[i]
			switch in.Kind {
			case lesson.Text, lesson.CodeSpan:
				r.stretches = append(r.stretches, stretch{text.Len(), in, scheme, target})
				text.WriteString(foldDigits(in.Text))
			case lesson.Break:
				text.WriteByte(' ')
			case lesson.Link:
				walk(in.Children, in.Scheme, in.Target)
			default:
				walk(in.Children, scheme, target)
			}
		}
	}
	walk(ins, "", "")
	if r.text = text.String(); r.text != "" {
		w.fn(r)
	}
}

// at returns the stretch that holds a byte of the text.
func (r *running) at(i int) stretch {
	s := r.stretches[0]
	for _, next := range r.stretches {
		if next.start > i {
			break
		}
		s = next
	}
	return s
}

// where is the place of a byte of the text. It is that of the inline when the file
// has the text written otherwise, as with escapes.
func (r *running) where(i int) Where {
	s := r.at(i)
	span := s.inline.Span
	if b := r.lesson.File.Bytes; span.End <= len(b) && string(b[span.Start:span.End]) == s.inline.Text {
		// A line break within the text belongs to no stretch.
		own, n := []rune(s.inline.Text), utf8.RuneCountInString(r.text[min(s.start, i):i])
		span.Start += len(string(own[:min(n, len(own))]))
	}
	return In(r.lesson, span)
}

// edit puts a text in the place of another that stands at a byte of the running; nil
// when the file has that place written otherwise.
func (r *running) edit(at int, old, text string) []finding.Edit {
	b := r.lesson.File.Bytes
	start := r.where(at).Span.Start
	if at > 0 { // behind the character before it, which is in the same inline when there is no gap
		_, n := utf8.DecodeLastRuneInString(r.text[:at])
		start = r.where(at - n).Span.Start
		_, n = utf8.DecodeRune(b[start:])
		start += n
	}
	if end := start + len(old); end <= len(b) && string(b[start:end]) == old {
		return []finding.Edit{{Span: source.Span{Start: start, End: end}, Text: text}}
	}
	return nil
}

// numberLinks calls fn for every link to a number, with its text in digits 0 to 9.
func (p *Pass) numberLinks(fn func(at Where, text string)) {
	p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
		l.WalkInlines(func(in *lesson.Inline) {
			if in.Kind == lesson.Link && in.Scheme == "number" {
				fn(In(l, in.Span), foldDigits(lesson.Plain(in.Children)))
			}
		})
	})
}

// foldDigits writes any decimal digit of Unicode as 0 to 9.
func foldDigits(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Nd, r) {
			return '0' + digit(r)
		}
		return r
	}, text)
}
