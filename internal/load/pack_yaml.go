package load

import (
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// digitSystems are the numbering systems of UTS #35 whose digits can be printed.
var digitSystems = []string{"arab", "arabext", "beng", "deva", "khmr", "latn", "mymr", "tamldec", "telu", "thai"}

// calendars are those of UTS #35 that dates can be written in beside the Gregorian one.
var calendars = []string{"ethiopic"}

// packFile reads pack.yaml and returns the modules it lists.
func (r *reader) packFile() []pack.Ref {
	p := r.pack
	s := subject{r: r}
	p.Session, p.PassMark = pack.UsualSession, pack.UsualPassMark
	opened := s.open("pack.yaml", maxYAML, "title, version, source-language, languages and modules")
	p.File = s.file
	if !opened {
		return nil
	}
	v := s.yaml()
	if v == nil {
		return nil
	}
	var languages, modules []pack.Ref
	var from pack.Ref
	p.Digits, p.Calendars = map[string]string{}, map[string]string{}
	s.group(v, "pack.yaml", map[string]field{
		"title":           s.localized(&p.Title, "title"),
		"subtitle":        s.localized(&p.Subtitle, "subtitle"),
		"version":         s.text(&p.Version, "version"),
		"source-language": s.ref(&from, "source-language"),
		"languages":       s.refs(&languages, "languages"),
		"modules":         s.refs(&modules, "modules"),
		"wall":            s.refs(&p.Wall, "wall"),
		"pass-mark":       s.between(&p.PassMark, "pass-mark", 1, 100),
		"session": func(v *value) {
			s.group(v, "session", map[string]field{
				"start": s.clock(&p.Session.Start, "start"),
				"group": s.between(&p.Session.Group, "group", 1, 100),
				"break": s.between(&p.Session.Break, "break", 1, 120),
			})
		},
		"caution-points": s.cautionPoints,
		"calendars": s.byLanguage("calendars", func(tag string, v *value) {
			var calendar string
			s.oneOf(&calendar, "calendar of "+tag, calendars...)(v)
			p.Calendars[tag] = calendar
		}),
		"silenced": s.silenced,
		"digits": s.byLanguage("digits", func(tag string, v *value) {
			var system string
			s.oneOf(&system, "digits of "+tag, digitSystems...)(v)
			p.Digits[tag] = system
		}),
	})
	for _, l := range languages {
		if s.tag(l.Name, l.Span) {
			p.Languages = append(p.Languages, l.Name)
		}
	}
	switch {
	case from.Name == "":
		s.missing(source.Span{}, "pack.yaml", "source-language")
		if len(p.Languages) > 0 {
			p.Source = p.Languages[0]
		}
	case s.tag(from.Name, from.Span):
		p.Source = from.Name
		if !slices.Contains(p.Languages, p.Source) {
			s.say("record-value", from.Span, fmt.Sprintf("%s is not among the languages", p.Source),
				"Every translation is made from this language.", "add it to languages")
			p.Languages = append([]string{p.Source}, p.Languages...)
		}
	}
	if len(p.Languages) == 0 && len(languages) == 0 {
		s.missing(source.Span{}, "pack.yaml", "languages")
	}
	if len(modules) == 0 {
		s.missing(source.Span{}, "pack.yaml", "modules")
	}
	if p.Title[p.Source] == "" {
		s.missing(source.Span{}, "pack.yaml", "title")
	}
	modules = slices.DeleteFunc(modules, func(m pack.Ref) bool { return !s.name(m.Name, m.Span) })
	s.wall(modules)
	return modules
}

// cautionPoints reads what every caution block must say: name -> language -> ways to word it.
func (s subject) cautionPoints(v *value) {
	s.table(v, "caution-points", func(id string, at source.Span, v *value) {
		point := pack.Point{ID: id, Ways: map[string][]string{}, Span: at}
		s.byLanguage("caution point "+id, func(tag string, v *value) {
			var ways []pack.Ref
			s.refs(&ways, "caution point "+id)(v)
			for _, w := range ways {
				point.Ways[tag] = append(point.Ways[tag], w.Name)
			}
		})(v)
		s.r.pack.CautionPoints = append(s.r.pack.CautionPoints, point)
	})
}

// silenced reads which warnings are known and borne, why, and until when.
func (s subject) silenced(v *value) {
	if !s.is(v, list, "silenced") {
		return
	}
	for _, item := range v.items {
		q := pack.Silence{Span: item.span}
		s.group(item, "a silenced warning", map[string]field{
			"rule":   s.text(&q.Rule, "rule"),
			"module": s.text(&q.Module, "module"),
			"lang":   s.text(&q.Lang, "lang"),
			"says":   s.text(&q.Says, "says"),
			"reason": s.text(&q.Reason, "reason"),
			"until":  s.date(&q.Until, "until"),
		})
		for _, must := range [][2]string{{"rule", q.Rule}, {"reason", q.Reason}, {"until", q.Until.Text}} {
			if must[1] == "" {
				s.missing(item.span, "a silenced warning", must[0])
			}
		}
		s.r.pack.Silenced = append(s.r.pack.Silenced, q)
	}
}

// wall takes out of the pack's wall what is no module, and says so where there are modules.
func (s subject) wall(modules []pack.Ref) {
	var names []string
	for _, m := range modules {
		names = append(names, m.Name)
	}
	s.r.pack.Wall = slices.DeleteFunc(s.r.pack.Wall, func(w pack.Ref) bool {
		if slices.Contains(names, w.Name) {
			return false
		}
		if len(names) == 0 {
			return true
		}
		s.say("record-value", w.Span, fmt.Sprintf("wall names %q, which is not among the modules", w.Name),
			"What it should hold would be missing from the wall.",
			finding.Meant(w.Name, names)+"use one of: "+strings.Join(names, ", "))
		return true
	})
}
