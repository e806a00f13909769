package exchange

import (
	"fmt"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// notes tell a translator where a block stands, what must not be missed in it, and
// which numbers and approved words it holds.
func notes(p *pack.Pack, m *pack.Module, lang string, u translate.Unit) []Note {
	out := []Note{{"context", context(m, p.Source, u)}}
	if critical(m, u) {
		out = append(out, Note{"context", "This step must never be missed: lives depend on it. Leave nothing out of it."})
	}
	if u.Role == lesson.Caution || u.Role == lesson.WarningSigns {
		out = append(out, Note{"context", "This is a warning. Do not soften it, and turn no \"never\" into \"not always\"."})
	}
	if u.Kind != translate.Alt && (u.Role == lesson.Checklist || u.Role == lesson.WarningSigns) {
		out = append(out, Note{"length", "Keep it short: it is printed large on one side of a sheet, to be read from across a room."})
	}
	seen := map[string]bool{}
	var walk func([]lesson.Inline)
	walk = func(ins []lesson.Inline) {
		for _, in := range ins {
			if in.Kind == lesson.Link && !seen[in.Scheme+":"+in.Target] {
				seen[in.Scheme+":"+in.Target] = true
				if n := p.Numbers[in.Target]; in.Scheme == "number" && n != nil {
					out = append(out, Note{"number", numberNote(n)})
				}
				if t := p.Terms[in.Target]; in.Scheme == "term" && t != nil {
					out = append(out, Note{"term", termNote(t, p.Source, lang)})
				}
			}
			walk(in.Children)
		}
	}
	walk(u.Inlines)
	return out
}

func context(m *pack.Module, lang string, u translate.Unit) string {
	where := fmt.Sprintf("%s of the lesson \"%s\"", u.Kind, m.Title(lang))
	switch {
	case u.Kind == translate.Title:
		where = "title of a lesson"
	case u.Step > 0 && u.Role == lesson.Steps:
		what := string(u.Kind)
		if u.Kind == translate.ListItem {
			what = "text"
		}
		where = fmt.Sprintf("%s of step %d of the lesson \"%s\"", what, u.Step, m.Title(lang))
	case u.Step > 0 && u.Role == lesson.Quiz:
		where = fmt.Sprintf("%s of quiz question %d of the lesson \"%s\"", u.Kind, u.Step, m.Title(lang))
	}
	if u.Role != lesson.Prose {
		where += ", part \"" + string(u.Role) + "\""
	}
	if len(m.Record.Audience) > 0 {
		where += "; for " + strings.Join(m.Record.Audience, " and ")
	}
	return where
}

func critical(m *pack.Module, u translate.Unit) bool {
	for _, s := range m.Record.CriticalSteps {
		if u.Role == lesson.Steps && s.Part == u.Part && s.Step == u.Step {
			return true
		}
	}
	return false
}

func numberNote(n *pack.Number) string {
	amount := n.Amount
	if amount == "" {
		amount = n.Low + " to " + n.High
	}
	if n.Compare != "" {
		amount = strings.ReplaceAll(n.Compare, "-", " ") + " " + amount
	}
	s := fmt.Sprintf("number %s: %s; keep the amount and write it in your language's own digits and unit", n.ID, strings.TrimSpace(amount+" "+n.Unit))
	if n.About != "" {
		s += " (" + n.About + ")"
	}
	return s
}

func termNote(t *pack.Term, src, lang string) string {
	s := fmt.Sprintf("term %s: \"%s\"", t.ID, t.In[src])
	if w := t.In[lang]; w != "" {
		s += fmt.Sprintf(", approved translation \"%s\"", w)
	} else {
		s += ", no approved translation yet"
	}
	if t.About != "" {
		s += " (" + t.About + ")"
	}
	return s
}
