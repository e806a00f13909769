package check

import (
	"fmt"
	"strings"
	"unicode"

	"wardleaf/internal/finding"
)

// Names, units and titles of works may stay as they are, so three words in a row of
// the source's own script are asked for, or a whole block that is the same.
var translationLeftover = &Rule{
	Name:   "translation-leftover",
	Title:  "Words of the source language are left in the translation",
	Why:    "A family that does not read the other language misses just these words.",
	Level:  finding.Warning,
	Needs:  Joined,
	Before: "en.md: Keep the face free.\nhi.md: Keep the face free.\n",
	After:  "en.md: Keep the face free.\nhi.md: चेहरा खुला रखें।\n",
	Run: func(p *Pass) {
		p.besides(func(b beside) {
			text, source := b.text, b.source
			words := wordsOf(fold(source))
			if len(words) >= 2 && fold(text) == fold(source) {
				p.Report(b.where(), "the block is the same as in the source", "translate it")
				return
			}
			own, _, known := p.Catalog.Script(b.l.Lang)
			if theirs, _, _ := p.Catalog.Script(b.src.Lang); !known || own == theirs {
				if run := commonRun(wordsOf(fold(text)), words, 5); run != "" {
					p.Report(b.where(), fmt.Sprintf("%q stands here as in the source", run), "translate it")
				}
				return
			}
			if run := latinRun(text, 3); run != "" {
				p.Report(b.where(), fmt.Sprintf("%q is not in the script of this language", run), "translate it, or make it a link to its source when it is the name of one")
			}
		})
	},
}

// commonRun returns the first n words in a row that both texts have, or "".
func commonRun(a, b []string, n int) string {
	all := " " + strings.Join(b, " ") + " "
	for i := 0; i+n <= len(a); i++ {
		if run := strings.Join(a[i:i+n], " "); strings.Contains(all, " "+run+" ") {
			return run
		}
	}
	return ""
}

// latinRun returns the first n words in a row that are all in Latin letters, or "".
func latinRun(text string, n int) string {
	var run []string
	for _, w := range strings.Fields(text) {
		letters := strings.TrimFunc(w, func(r rune) bool { return !unicode.IsLetter(r) })
		if letters == "" || strings.ContainsFunc(letters, func(r rune) bool { return unicode.IsLetter(r) && !unicode.Is(unicode.Latin, r) }) {
			run = nil
			continue
		}
		if run = append(run, w); len(run) == n {
			return strings.Join(run, " ")
		}
	}
	return ""
}
