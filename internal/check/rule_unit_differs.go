package check

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// The unit that counts is the first that stands beside one of the amounts. A text that
// names none is let through, since the sentence around it may. Of a rate, such as times
// a day, the time is held, too, wherever it stands.
var unitDiffers = &Rule{
	Name:   "unit-differs",
	Title:  "A shown number has another unit than the number that is kept",
	Why:    "10 minutes for 10 seconds, or g for kg, is as wrong as a wrong amount.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "[10\u00a0minutes](number:back-rub) # kept as 10 seconds\n",
	After:  "[10\u00a0seconds](number:back-rub)\n",
	Run: func(p *Pass) {
		kept := p.recordWords()
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			here := p.words(l.Lang)
			l.WalkInlines(func(in *lesson.Inline) {
				n := p.Pack.Numbers[in.Target]
				if in.Kind != lesson.Link || in.Scheme != "number" || n == nil {
					return
				}
				want, known := unitAfter(n.Unit, kept.units)
				text := foldDigits(lesson.Plain(in.Children))
				for _, num := range numerals(text) {
					use, found := here.unitOf(text, num)
					if !found {
						continue
					}
					if known && use.unit != want.unit && !sameForm(here.units, use.form, want.unit) && !counts(use.unit, want.unit) {
						p.Report(In(l, in.Span).Beside(n.File, n.Span, "kept here in "+n.Unit),
							fmt.Sprintf("the text shows %s; the number %s is in %s", use.form, n.ID, n.Unit),
							"write the unit of the number that is kept, or correct it where it is kept")
						return
					}
					break
				}
				if form := here.otherTime(text, kept.times(n.Unit)); form != "" {
					p.Report(In(l, in.Span).Beside(n.File, n.Span, "kept here in "+n.Unit),
						fmt.Sprintf("the text shows %s; the number %s is in %s", form, n.ID, n.Unit),
						"write the unit of the number that is kept, or correct it where it is kept")
				}
			})
		})
	},
}

// times are the units of time that a text names, when it is a rate, such as "g a day".
func (x *lexicon) times(text string) []string {
	if !strings.Contains(text, " ") {
		return nil
	}
	return slices.DeleteFunc(x.named(text), func(unit string) bool { return !slices.Contains(timeUnits, unit) })
}

// otherTime finds a unit of time in a text that is none of those of a rate.
func (x *lexicon) otherTime(text string, rate []string) (form string) {
	if len(rate) == 0 {
		return ""
	}
	text = fold(text)
	for _, u := range x.units {
		if slices.Contains(timeUnits, u.unit) && countWords(text, u.form) > 0 &&
			!slices.ContainsFunc(rate, func(unit string) bool { return sameForm(x.units, u.form, unit) }) {
			return u.form
		}
	}
	return ""
}

var timeUnits = []string{"second", "minute", "hour", "day", "week", "month", "year"}

// counts reports whether two units count the same: breaths and feeds are said as so many
// times in some languages.
func counts(a, b string) bool {
	return a == "time" && (b == "breath" || b == "feed") || b == "time" && (a == "breath" || a == "feed")
}

// sameForm reports whether a form can also stand for another unit, as Hindi baar
// stands for times and for feeds.
func sameForm(units []unitForm, form, unit string) bool {
	for _, u := range units {
		if u.form == form && u.unit == unit {
			return true
		}
	}
	return false
}
