package check

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"wardleaf/internal/locale"
)

// A lexicon is what is known of the words of a language, folded for comparison. An
// empty one, for a language of which nothing is known, finds signs of units alone.
type lexicon struct {
	turn, without, notNegation []string
	units                      []unitForm // longest first
	unitsBefore                bool       // of their numerals
	known                      bool       // there are words of the language at all
	numbers                    []numberForm
	compare                    []compareForm // longest first
	stop, call, blame          []string
	steps, unseen, jargon      []string
	allOrNone                  []string
}

// A unitForm is one way to write a unit beside an amount.
type unitForm struct {
	form, unit string
	deciding   bool // the unit decides on care
}

// A numberForm is one way to write a small number as a word.
type numberForm struct{ form, value string }

// A compareForm is one way to compare with an amount.
type compareForm struct{ form, way string }

// signs are units that are written alike in every language.
var signs = []string{"°C", "°F", "%", "٪", "kg", "g", "mg", "ml", "m", "cm", "mm"}

func newLexicon(w *locale.Words) *lexicon {
	x := &lexicon{known: w != nil}
	if w == nil {
		w = &locale.Words{}
	}
	x.turn, x.without, x.notNegation = folded(w.Negations.Turn), folded(w.Negations.Without), folded(w.Negations.Not)
	x.stop, x.call, x.blame = folded(w.Stop), folded(w.Call), folded(w.Blame)
	x.steps, x.unseen, x.jargon = folded(w.Steps), folded(w.Unseen), folded(w.Jargon)
	x.allOrNone = folded(w.AllOrNone)
	for way, forms := range w.Compare {
		for _, f := range folded(forms) {
			x.compare = append(x.compare, compareForm{f, way})
		}
	}
	slices.SortFunc(x.compare, func(a, b compareForm) int {
		return cmp.Or(cmp.Compare(len(b.form), len(a.form)), cmp.Compare(a.form, b.form), cmp.Compare(a.way, b.way))
	})
	for value, forms := range w.Numbers {
		for _, f := range folded(forms) {
			x.numbers = append(x.numbers, numberForm{f, value})
		}
	}
	slices.SortFunc(x.numbers, func(a, b numberForm) int {
		return cmp.Or(cmp.Compare(len(b.form), len(a.form)), cmp.Compare(a.form, b.form))
	})
	x.unitsBefore = w.UnitsBefore
	for i, name := range locale.UnitNames {
		for _, f := range folded(append(slices.Clone(w.Units[name]), unitSigns(name)...)) {
			x.units = append(x.units, unitForm{f, name, i < locale.DecidingUnits})
		}
	}
	slices.SortStableFunc(x.units, func(a, b unitForm) int {
		return cmp.Or(cmp.Compare(len(b.form), len(a.form)), cmp.Compare(a.form, b.form))
	})
	return x
}

func unitSigns(name string) []string {
	switch name {
	case "%":
		return []string{"%", "٪"}
	case "hour":
		return []string{"h"}
	case "minute":
		return []string{"min"}
	}
	if slices.Contains(signs, name) {
		return []string{name}
	}
	return nil
}

func folded(forms []string) []string {
	out := make([]string, len(forms))
	for i := range forms {
		out[i] = fold(forms[i])
	}
	return out
}

// fold takes away what may or may not be written: capitals, the Arabic marks of
// short vowels, the dot below of Devanagari and Bengali, and the kind of apostrophe.
func fold(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 0x064B && r <= 0x0652, r == 0x093C, r == 0x09BC:
			return -1
		case r == 0x095E: // Devanagari fa as one character
			return 0x092B
		case r == '\u2019':
			return '\''
		}
		return unicode.ToLower(r)
	}, text)
}

// A unitUse is a unit beside an amount.
type unitUse struct {
	unitForm        // as fold leaves it, with its name in locale.UnitNames
	gap      string // what stands between the two
	before   bool   // the unit stands before the amount
}

// unitOf finds the unit of a numeral of a text.
func (x *lexicon) unitOf(text string, n numeral) (unitUse, bool) {
	use, ok := unitAfter(text[n.end:], x.units)
	if !ok && x.unitsBefore {
		return unitBefore(text[:n.start], x.units)
	}
	return use, ok
}

// unitAfter finds one of the units right after an amount.
func unitAfter(text string, units []unitForm) (unitUse, bool) {
	word := strings.TrimLeft(text, "-\u2010\u2011 \u00a0\u2009\u202f")
	gap := text[:len(text)-len(word)]
	word = fold(word)
	for _, u := range units {
		rest, found := strings.CutPrefix(word, u.form)
		next, _ := utf8.DecodeRuneInString(rest)
		if found && !unicode.In(next, unicode.L, unicode.M, unicode.Nd) {
			return unitUse{u, gap, false}, true
		}
	}
	return unitUse{}, false
}

// unitBefore finds one of the units right before an amount.
func unitBefore(text string, units []unitForm) (unitUse, bool) {
	word := strings.TrimRight(text, " \u00a0\u2009\u202f")
	gap := text[len(word):]
	word = fold(word)
	for _, u := range units {
		start, found := strings.CutSuffix(word, u.form)
		last, _ := utf8.DecodeLastRuneInString(start)
		if found && !unicode.In(last, unicode.L, unicode.M, unicode.Nd) {
			return unitUse{u, gap, true}, true
		}
	}
	return unitUse{}, false
}

// negations counts the words of a text that turn it round, and those that only take
// something out of it.
func (x *lexicon) negations(text string) (turn, without int) {
	text = fold(text)
	for _, phrase := range x.notNegation {
		text = cutWords(text, phrase)
	}
	for _, form := range x.turn {
		if strings.Contains(form, " ") {
			turn += countWords(text, form)
		}
	}
	for _, form := range x.without {
		if strings.Contains(form, " ") {
			without += countWords(text, form)
		}
	}
	for _, w := range wordsOf(text) {
		switch {
		case among(x.without, w):
			without++
		case among(x.turn, w):
			turn++
		}
	}
	return turn, without
}

// among reports whether a word is one of the forms. A form that begins with a hyphen
// is the end of a word, and one that ends with a hyphen the beginning of one; with one in it, both.
func among(forms []string, word string) bool {
	return slices.ContainsFunc(forms, func(f string) bool {
		if end, ok := strings.CutPrefix(f, "-"); ok {
			return strings.HasSuffix(word, end)
		}
		if start, end, ok := strings.Cut(f, "-"); ok && start != "" && end != "" && strings.HasPrefix(word, start) && strings.HasSuffix(word, end) && len(word) > len(f) {
			return true
		}
		if start, ok := strings.CutSuffix(f, "-"); ok {
			return strings.HasPrefix(word, start)
		}
		return f == word
	})
}

// wordsOf takes a folded text apart into words; marks and apostrophes belong to them.
func wordsOf(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return !letter(r) && r != '\'' })
}

func letter(r rune) bool { return unicode.In(r, unicode.L, unicode.M) }

// countWords counts how often a folded text holds a form as whole words.
func countWords(text, form string) int { return len(findWords(text, form)) }

// findWords returns where a folded text holds a form as whole words. A form that ends in
// an apostrophe, as French "n'", has its next word written to it.
func findWords(text, form string) []int {
	var out []int
	for i := 0; ; {
		k := strings.Index(text[i:], form)
		if k < 0 {
			return out
		}
		before, _ := utf8.DecodeLastRuneInString(text[:i+k])
		after, _ := utf8.DecodeRuneInString(text[i+k+len(form):])
		if !letter(before) && (!letter(after) || strings.HasSuffix(form, "'")) {
			out = append(out, i+k)
		}
		i += k + len(form)
	}
}

// cutWords blanks a form out of a folded text wherever it stands as whole words.
func cutWords(text, form string) string {
	b := []byte(text)
	for _, at := range findWords(text, form) {
		for i := range len(form) {
			b[at+i] = ' '
		}
	}
	return string(b)
}

// holds returns the first of the forms that a text has as whole words, or "".
func holds(text string, forms []string) string {
	text = fold(text)
	for _, f := range forms {
		if countWords(text, f) > 0 {
			return f
		}
	}
	return ""
}

// holdsStem reports whether a text has one of the stems at the start of a word.
func holdsStem(text string, stems []string) bool {
	text = fold(text)
	for _, s := range stems {
		for i := 0; ; {
			k := strings.Index(text[i:], s)
			if k < 0 {
				break
			}
			if before, _ := utf8.DecodeLastRuneInString(text[:i+k]); !letter(before) {
				return true
			}
			i += k + len(s)
		}
	}
	return false
}
