package redline

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// A value is one named value of a record, as text.
type value struct {
	key, text string
	topics    []Topic
}

// An entry is a group of values that is there or not as one, such as a number.
type entry struct {
	id     string
	values []value
}

// values compares two lists of values by their keys. Keys begin with prefix.
func values(file, prefix string, a, b []value) []Change {
	var out []Change
	get := func(vs []value, key string) string {
		for _, v := range vs {
			if v.key == key {
				return v.text
			}
		}
		return ""
	}
	var seen []string
	for _, v := range slices.Concat(b, a) {
		was, now := get(a, v.key), get(b, v.key)
		if was == now || slices.Contains(seen, v.key) {
			continue
		}
		seen = append(seen, v.key)
		c := Change{Kind: Changed, File: file, Place: Place{Key: prefix + v.key}, Words: compareWords(was, now), Topics: append([]Topic{Record}, v.topics...)}
		switch {
		case was == "":
			c.Kind = New
		case now == "":
			c.Kind = Gone
		}
		out = append(out, c)
	}
	return out
}

// entries compares two lists of entries by their ids.
func entries(file string, a, b []entry) []Change {
	var out []Change
	var seen []string
	for _, e := range slices.Concat(b, a) {
		if slices.Contains(seen, e.id) {
			continue
		}
		seen = append(seen, e.id)
		is := func(x entry) bool { return x.id == e.id }
		i, k := slices.IndexFunc(a, is), slices.IndexFunc(b, is)
		if i >= 0 && k >= 0 {
			out = append(out, values(file, e.id+": ", a[i].values, b[k].values)...)
			continue
		}
		c := Change{Kind: New, File: file, Place: Place{Key: e.id}, Topics: []Topic{Record}}
		op := Added
		if i >= 0 {
			c.Kind, op = Gone, Struck
		}
		var text []string
		for _, v := range e.values {
			if v.text != "" {
				text = append(text, v.key+" "+v.text)
				c.Topics = append(c.Topics, v.topics...)
			}
		}
		c.Words = whole(op, strings.Join(text, "; "))
		out = append(out, c)
	}
	return out
}

// shared compares what all modules share.
func (w *work) shared() []Change {
	a, b := w.old.Pack, w.now.Pack
	out := values("pack.yaml", "", packValues(a), packValues(b))
	facility := func(p *pack.Pack) []entry { return facilityEntries(&p.Facility) }
	for _, f := range []struct {
		file string
		read func(*pack.Pack) []entry
	}{
		{"facility.yaml", facility}, {"numbers.yaml", numberEntries}, {"sources.yaml", sourceEntries}, {"terms.yaml", termEntries},
	} {
		was, now := f.read(a), f.read(b)
		if w.old.Unread[f.file] && len(was) == 0 || w.now.Unread[f.file] && len(now) == 0 {
			out = append(out, Change{Kind: Unread, File: f.file, Topics: []Topic{Whole}})
			continue
		}
		out = append(out, entries(f.file, was, now)...)
	}
	for i := range out {
		c := &out[i]
		switch c.File {
		case "numbers.yaml":
			id, _, _ := strings.Cut(c.Place.Key, ":")
			c.Used = users(b, id)
		case "facility.yaml", "terms.yaml", "pack.yaml":
			_, lang, _ := strings.Cut(c.Place.Key, ": ")
			c.Topics = append(c.Topics, w.touched(lang, c.Words)...)
		}
		if c.File == "pack.yaml" {
			c.Topics = slices.DeleteFunc(c.Topics, func(t Topic) bool { return t == Number && c.Place.Key != "pass-mark" })
		}
	}
	return out
}

// users lists the modules that state a number in any language.
func users(p *pack.Pack, id string) []string {
	var out []string
	for _, m := range p.Modules {
		states := false
		for _, l := range m.Lessons {
			l.WalkInlines(func(in *lesson.Inline) { states = states || in.Scheme == "number" && in.Target == id })
		}
		if states {
			out = append(out, m.ID)
		}
	}
	return out
}

func localized(key string, l pack.Localized) []value {
	var out []value
	for _, lang := range pack.Sorted(l) {
		out = append(out, value{key: key + lang, text: l[lang]})
	}
	return out
}

func refs(rs []pack.Ref) string {
	var out []string
	for _, r := range rs {
		out = append(out, r.Name)
	}
	return strings.Join(out, ", ")
}

func packValues(p *pack.Pack) []value {
	var ids []string
	for _, m := range p.Modules {
		ids = append(ids, m.ID)
	}
	out := append(localized("title: ", p.Title), localized("subtitle: ", p.Subtitle)...)
	out = append(out, value{key: "version", text: p.Version}, value{key: "source-language", text: p.Source},
		value{key: "languages", text: strings.Join(p.Languages, ", ")})
	for _, lang := range pack.Sorted(p.Digits) {
		out = append(out, value{key: "digits: " + lang, text: p.Digits[lang]})
	}
	for _, c := range p.CautionPoints {
		for _, lang := range pack.Sorted(c.Ways) {
			out = append(out, value{key: "caution-points: " + c.ID + " " + lang, text: strings.Join(c.Ways[lang], ", "), topics: []Topic{Caution}})
		}
	}
	var silenced []string
	for _, q := range p.Silenced {
		silenced = append(silenced, strings.Join(strings.Fields(fmt.Sprintf("%s %s %s %s until %s: %s", q.Rule, q.Module, q.Lang, q.Says, q.Until.Text, q.Reason)), " "))
	}
	out = append(out, value{key: "silenced", text: strings.Join(silenced, "; ")})
	return append(out, value{key: "modules", text: strings.Join(ids, ", ")}, value{key: "wall", text: refs(p.Wall)},
		value{key: "pass-mark", text: strconv.Itoa(p.PassMark)},
		value{key: "session", text: fmt.Sprintf("start %02d:%02d, group %d, break %d", p.Session.Start/60, p.Session.Start%60, p.Session.Group, p.Session.Break)})
}

func facilityEntries(f *pack.Facility) []entry {
	var out []entry
	if len(f.Name) > 0 {
		out = append(out, entry{"name", localized("", f.Name)})
	}
	if len(f.Protocol) > 0 {
		out = append(out, entry{"protocol-note", localized("", f.Protocol)})
	}
	for _, c := range f.Contacts {
		out = append(out, entry{c.ID, append(localized("label ", c.Label), value{key: "value", text: c.Value})})
	}
	if t := f.Feeding; t != nil {
		vs := []value{{key: "dated", text: t.Dated.Text}}
		for _, b := range t.Bands {
			var feeds []string
			for _, ml := range b.PerFeed {
				feeds = append(feeds, strconv.Itoa(ml))
			}
			vs = append(vs, value{
				key:    fmt.Sprintf("%d to %d g", b.From, b.To),
				text:   fmt.Sprintf("feeds-a-day %d, ml-per-feed %s", b.Feeds, strings.Join(feeds, ", ")),
				topics: []Topic{Number},
			})
		}
		out = append(out, entry{"feeding-table", vs})
	}
	return out
}

func numberEntries(p *pack.Pack) []entry {
	var out []entry
	for _, id := range pack.Sorted(p.Numbers) {
		n := p.Numbers[id]
		touch := []Topic{Number}
		out = append(out, entry{id, []value{
			{"about", n.About, nil}, {"amount", n.Amount, touch}, {"low", n.Low, touch}, {"high", n.High, touch},
			{"compare", n.Compare, touch}, {"unit", n.Unit, touch}, {"source", n.Source.Name, nil}, {"place", n.Place, nil}, {"status", n.Status, nil},
		}})
	}
	return out
}

func sourceEntries(p *pack.Pack) []entry {
	var out []entry
	for _, id := range pack.Sorted(p.Sources) {
		s := p.Sources[id]
		year := ""
		if s.Year != 0 {
			year = strconv.Itoa(s.Year)
		}
		out = append(out, entry{id, []value{
			{key: "author", text: s.Author}, {key: "title", text: s.Title}, {key: "year", text: year},
			{key: "identifier", text: s.Identifier}, {key: "note", text: s.Note},
		}})
	}
	return out
}

func termEntries(p *pack.Pack) []entry {
	var out []entry
	for _, id := range pack.Sorted(p.Terms) {
		t := p.Terms[id]
		out = append(out, entry{id, append([]value{{key: "about", text: t.About}}, localized("", t.In)...)})
	}
	return out
}

// record compares module.yaml of a module that both packs have.
func (w *work) record(a, b *pack.Module) []Change {
	file := b.ID + "/module.yaml"
	if a.Lessons == nil || b.Lessons == nil {
		return nil // the lesson as a whole is new or gone, and its languages say so
	}
	if a.Unread || b.Unread {
		if a.Unread && b.Unread {
			return nil
		}
		return []Change{{Kind: Unread, File: file, Topics: []Topic{Whole}}}
	}
	return values(file, "", recordValues(&a.Record), recordValues(&b.Record))
}

func recordValues(r *pack.Record) []value {
	var steps, offs []string
	for _, s := range r.CriticalSteps {
		if s.Part == 1 {
			steps = append(steps, strconv.Itoa(s.Step))
			continue
		}
		steps = append(steps, fmt.Sprintf("%d.%d", s.Part, s.Step))
	}
	for _, s := range r.SignOffs {
		offs = append(offs, fmt.Sprintf("%s (%s, %s, %.19s)", s.Role, s.Lang, s.Date.Text, s.Digest))
	}
	minutes := ""
	if r.Minutes != 0 {
		minutes = strconv.Itoa(r.Minutes)
	}
	out := []value{
		{key: "audience", text: strings.Join(r.Audience, ", ")}, {key: "minutes", text: minutes},
		{key: "prepared", text: r.Prepared.Text}, {key: "due", text: r.Due.Text}, {key: "by", text: r.By},
		{key: "critical-steps", text: strings.Join(steps, ", "), topics: []Topic{CriticalStep}},
		{key: "sources", text: refs(r.Sources)}, {key: "sign-offs", text: strings.Join(offs, "; ")},
	}
	for _, lang := range pack.Sorted(r.Translations) {
		out = append(out, value{key: "translation " + lang, text: r.Translations[lang].State}, value{key: "translation " + lang + " by", text: r.Translations[lang].By})
	}
	return out
}
