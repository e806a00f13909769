package redline

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"wardleaf/internal/lesson"
)

// changes lists what is not as it was in paired lessons, in reading order.
func (w *work) changes(p *pairing, file string) {
	after := -1 // the new block behind which the next old one that is gone belongs
	type placed struct {
		found
		at, gone int
	}
	var all []placed
	for i := range p.old {
		k := p.to[i]
		if k >= 0 {
			if !p.moved[k] {
				after = k
			}
			continue
		}
		b := &p.old[i]
		c := Change{Kind: Gone, File: file, Place: b.place, Words: whole(Struck, b.text), Topics: b.topics()}
		all = append(all, placed{found{c, b, nil}, after, 1})
	}
	for k := range p.now {
		b := &p.now[k]
		if p.of[k] < 0 {
			c := Change{Kind: New, File: file, Place: b.place, Words: whole(Added, b.text), Topics: b.topics()}
			all = append(all, placed{found{c, nil, b}, k, 0})
			continue
		}
		a := &p.old[p.of[k]]
		c := Change{Kind: Changed, File: file, Place: b.place, Marks: marks(a, b)}
		if p.moved[k] {
			c.Kind, c.From = Moved, a.place
		}
		if a.text != b.text {
			c.Words = compareWords(a.text, b.text)
		} else if c.Kind == Changed && len(c.Marks) == 0 {
			continue
		} else {
			c.Words = whole(Same, b.text)
		}
		c.Topics = append(a.topics(), b.topics()...)
		for _, m := range c.Marks {
			c.Topics = append(c.Topics, m.Topic)
		}
		if c.Kind == Moved && b.right {
			c.Topics = append(c.Topics, RightAnswer)
		}
		all = append(all, placed{found{c, a, b}, k, 0})
	}
	slices.SortStableFunc(all, func(a, b placed) int { return cmp.Or(a.at-b.at, a.gone-b.gone) })
	for _, c := range all {
		c.Topics = append(c.Topics, w.touched(p.lang, c.Words)...)
		p.changes = append(p.changes, c.found)
	}
}

// topics are those that follow from where a block stands and what it is.
func (b *block) topics() []Topic {
	var out []Topic
	switch b.place.Role {
	case lesson.Caution:
		out = append(out, Caution)
	case lesson.WarningSigns:
		out = append(out, WarningSign)
	}
	if b.critical {
		out = append(out, CriticalStep)
	}
	if b.right {
		out = append(out, RightAnswer)
	}
	if b.kind == "figure" {
		out = append(out, Figure)
	}
	return out
}

// marks are what changed about a block beside its words.
func marks(a, b *block) []Mark {
	var out []Mark
	add := func(t Topic, was, now string) {
		if was != now {
			out = append(out, Mark{t, was, now})
		}
	}
	yes := func(v bool) string {
		if v {
			return Yes
		}
		return ""
	}
	if b.first {
		add(CriticalStep, yes(a.critical), yes(b.critical))
		add(RightAnswer, yes(a.right), yes(b.right))
	}
	if a.kind == "part" {
		add(Role, string(a.place.Role), string(b.place.Role))
	}
	if b.first {
		add(Role, a.group, b.group) // such as steps that are numbered no more
	}
	if slices.ContainsFunc(append(differ(a.links, b.links), differ(b.links, a.links)...), func(l string) bool { return strings.HasPrefix(l, "number:") }) {
		add(Number, strings.Join(numbersOf(a.links), ", "), strings.Join(numbersOf(b.links), ", "))
	}
	if lost, got := differ(a.links, b.links), differ(b.links, a.links); len(lost)+len(got) > 0 {
		lost, got = slices.DeleteFunc(lost, isNumber), slices.DeleteFunc(got, isNumber)
		add(Link, strings.Join(lost, ", "), strings.Join(got, ", "))
	} else if a.text == b.text && !slices.Equal(a.links, b.links) {
		add(Link, strings.Join(a.links, ", "), strings.Join(b.links, ", "))
	}
	if a.source != b.source || a.picture != b.picture {
		// A picture drawn anew has the name it had.
		out = append(out, Mark{Figure, a.source, b.source})
	}
	if a.text == b.text {
		add(Emphasis, strings.TrimSpace(a.strong), strings.TrimSpace(b.strong))
	}
	return out
}

func isNumber(link string) bool { return strings.HasPrefix(link, "number:") }

func numbersOf(links []string) []string {
	return slices.DeleteFunc(slices.Clone(links), func(l string) bool { return !isNumber(l) })
}

// differ lists what is in a more often than in b.
func differ(a, b []string) []string {
	count := map[string]int{}
	for _, s := range b {
		count[s]++
	}
	var out []string
	for _, s := range a {
		if count[s]--; count[s] < 0 {
			out = append(out, s)
		}
	}
	return out
}

// touched are the topics that follow from the words that changed.
func (w *work) touched(lang string, runs []Run) []Topic {
	var out []Topic
	if touchesNumber(runs, Struck) || touchesNumber(runs, Added) {
		out = append(out, Number)
	}
	was, _ := w.not(lang, Was(runs))
	now, _ := w.not(lang, Now(runs))
	if was != now {
		return append(out, Negation)
	}
	for _, r := range runs {
		if n, _ := w.not(lang, r.Text); r.Op != Same && n > 0 {
			return append(out, Negation)
		}
	}
	return out
}

// numeral reports whether a word holds a digit, or a sign for a number, of any script.
func numeral(word string) bool {
	return strings.ContainsFunc(word, func(c rune) bool { return unicode.Is(unicode.N, c) })
}

// numerals are the words of a text that hold digits.
func numerals(text string) []string {
	return slices.DeleteFunc(words(text), func(w string) bool { return !numeral(w) })
}

// touchesNumber reports whether a changed word of one side holds a digit, or stands
// right before or after a number, as "at most" and units do.
func touchesNumber(runs []Run, side Op) bool {
	type word struct{ changed, digits bool }
	var ws []word
	for _, r := range runs {
		if r.Op != Same && r.Op != side {
			continue
		}
		for _, t := range words(r.Text) {
			digits := numeral(t)
			switch letters := strings.ContainsFunc(t, unicode.IsLetter); {
			case digits, letters, strings.ContainsAny(t, "%٪<>≤≥−±+"), t == "°" && r.Op == side:
				ws = append(ws, word{r.Op == side, digits})
			case strings.ContainsFunc(t, unicode.IsPunct) && !strings.ContainsAny(t, "-–"):
				ws = append(ws, word{}) // a comma or a bracket keeps what follows apart
			}
		}
	}
	for i, x := range ws {
		near := i > 0 && ws[i-1].digits || i+1 < len(ws) && ws[i+1].digits
		if x.changed && (x.digits || near) {
			return true
		}
	}
	return false
}
