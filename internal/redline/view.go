package redline

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"wardleaf/internal/locale"
)

// A View is a redline in the words of one language, for printers. What a pack says
// stays in its own language.
type View struct {
	Title    string
	Pack     string // title of the pack
	Was, Now string // the two states that were compared
	How      string // to read it
	None     string // that nothing changed; else empty
	// First are the changes to be read first, gravest first, each again in its section.
	FirstTitle string
	First      []Entry
	Sections   []Section
}

// A Section is the changes of one module in one language, or of the files that
// languages share.
type Section struct {
	Title   string
	Lang    string // of the words that changed; empty for that of the view
	RTL     bool   // how they are written
	Notes   []string
	Entries []Entry
}

// An Entry is one change.
type Entry struct {
	ID      string // Number in digits 0 to 9
	Number  string
	Section string // title of its section
	Where   string
	Lang    string // as in its section
	RTL     bool
	What    string   // happened to it, and what it touches
	Marks   []string // what changed beside its words
	Lines   []string // where else to look
	Runs    []Run
	Kind    Kind
}

// A Revision is a state of a pack: a commit, or the working tree when ID is empty.
type Revision struct {
	Name, ID string
	Date     time.Time
}

// Names say what a language is called, and whether it is written from right to left.
type Names func(tag string) (name string, rtl bool)

// View words a redline.
func (r *Redline) View(loc *locale.Locale, names Names, pack string, old, now Revision) *View {
	w := wording{loc, names}
	v := &View{
		Title: loc.Label("redline"), Pack: pack, FirstTitle: loc.Label("about-heading"), How: loc.Label("redline-how"),
		Was: loc.Label("redline-was") + ": " + w.revision(old), Now: loc.Label("redline-now") + ": " + w.revision(now),
	}
	if r.Empty() {
		v.None = loc.Label("redline-none")
		return v
	}
	type first struct {
		Entry
		grave int
	}
	var grave []first
	section := func(title, lang string, changes []Change, notes ...string) {
		if len(changes) == 0 {
			return
		}
		s := Section{Title: title, Lang: lang, RTL: loc.RTL, Notes: notes}
		if lang != "" {
			_, s.RTL = names(lang)
		}
		for i := range changes {
			e := w.entry(&changes[i], &s)
			s.Entries = append(s.Entries, e)
			if changes[i].Grave() {
				grave = append(grave, first{e, slices.Index(topics, changes[i].Topics[0])})
			}
		}
		v.Sections = append(v.Sections, s)
	}
	section(loc.Label("redline-shared"), "", r.Pack)
	for i := range r.Modules {
		m := &r.Modules[i]
		title := apart(cmp.Or(m.Titles.In(loc.Tag, r.Source), m.ID))
		section(title+" – "+loc.Label("redline-record"), "", m.Record)
		for _, l := range m.Lessons {
			var notes []string
			if l.Unlisted {
				notes = append(notes, loc.Label("redline-unlisted"))
			}
			section(title+" – "+apart(w.name(l.Lang)), l.Lang, l.Changes, notes...)
		}
	}
	slices.SortStableFunc(grave, func(a, b first) int { return a.grave - b.grave })
	for _, g := range grave {
		v.First = append(v.First, g.Entry)
	}
	return v
}

type wording struct {
	*locale.Locale
	names Names
}

func (w wording) name(tag string) string {
	name, _ := w.names(tag)
	return name
}

// apart isolates text that may run the other way (UAX #9).
func apart(s string) string { return "\u2068" + s + "\u2069" }

func (w wording) revision(r Revision) string {
	if r.ID == "" {
		return w.Label("redline-folder")
	}
	return apart(r.Name) + " (" + w.List([]string{apart(r.ID[:min(10, len(r.ID))]), w.Date(r.Date)}) + ")"
}

func (w wording) entry(c *Change, s *Section) Entry {
	e := Entry{ID: strconv.Itoa(c.Number), Number: w.Locale.Number(c.Number), Section: s.Title, Where: w.place(c.Place), Lang: s.Lang, RTL: s.RTL, Runs: c.Words, Kind: c.Kind}
	switch {
	case !c.whole():
		what := []string{w.Label("redline-" + string(c.Kind))}
		for _, t := range c.Topics {
			if t != Record {
				what = append(what, w.topic(t))
			}
		}
		e.What = w.List(what)
		if c.Place.Key != "" {
			e.Where = apart(c.File + ": " + c.Place.Key)
		}
	case c.Kind == Unread:
		e.Where, e.What = apart(c.File), w.Label("redline-unread", locale.With("File", apart(c.File)))
	default:
		e.Where, e.What = apart(c.File), w.Label(map[Kind]string{New: "redline-lesson-new", Gone: "redline-lesson-gone"}[c.Kind])
	}
	if c.Kind == Moved && c.From != c.Place {
		e.Lines = append(e.Lines, w.Label("redline-moved-from", locale.With("Place", w.place(c.From))))
	}
	for _, m := range c.Marks {
		e.Marks = append(e.Marks, w.mark(m))
	}
	if len(c.Used) > 0 {
		e.Lines = append(e.Lines, w.Label("redline-used", locale.With("Modules", w.List(c.Used))))
	}
	if len(c.Unfollowed) > 0 {
		var ls []string
		for _, l := range c.Unfollowed {
			ls = append(ls, apart(w.name(l)))
		}
		e.Lines = append(e.Lines, w.Label("redline-unfollowed", locale.With("Languages", w.List(ls))))
	}
	if c.Alone {
		e.Lines = append(e.Lines, w.Label("redline-alone"))
	}
	return e
}

func (w wording) topic(t Topic) string {
	switch t {
	case Caution, CriticalStep, RightAnswer:
		return w.Label(string(t))
	}
	return w.Label("redline-" + string(t))
}

func (w wording) mark(m Mark) string {
	if m.Topic == Figure && m.Was == m.Now {
		return w.Label("redline-drawn-anew")
	}
	value := func(s string) string {
		switch {
		case s == Yes:
			return w.Label("yes")
		case s != "":
			return apart(s)
		case m.Topic == CriticalStep || m.Topic == RightAnswer:
			return w.Label("no")
		}
		return "–"
	}
	return w.Label("redline-from-to", locale.With("What", w.topic(m.Topic)), locale.With("Was", value(m.Was)), locale.With("Now", value(m.Now)))
}

// place says where a block stands: the heading of its part, its number, the letter of
// an answer.
func (w wording) place(p Place) string {
	if p.Title {
		return w.Label("redline-title")
	}
	parts := []string{apart(p.Heading)}
	if p.Heading == "" {
		parts[0] = w.Label("redline-opening")
	}
	if p.Number > 0 {
		n := w.Locale.Number(p.Number)
		if p.Option > 0 {
			n += " " + w.Letter(p.Option-1)
		}
		parts = append(parts, n)
	}
	if p.Reason {
		parts = append(parts, w.Label("reason"))
	}
	if p.Picture {
		parts = append(parts, w.Label("redline-figure"))
	}
	return strings.Join(parts, " – ")
}

// Excerpt shortens what was kept to a few words beside those that changed, and leaves
// out the rest of what is very long.
func Excerpt(runs []Run) []Run {
	const near, most = 7, 80 // words and spaces
	var out []Run
	for i, r := range runs {
		if r.Op == Same {
			ws := words(r.Text)
			switch first, last := i == 0, i == len(runs)-1; {
			case first && last && len(ws) > 4*near:
				r.Text = strings.Join(ws[:4*near], "") + "…"
			case first && !last && len(ws) > near:
				r.Text = "…" + strings.Join(ws[len(ws)-near:], "")
			case last && !first && len(ws) > near:
				r.Text = strings.Join(ws[:near], "") + "…"
			case len(ws) > 2*near && !first && !last:
				r.Text = strings.Join(ws[:near], "") + " … " + strings.Join(ws[len(ws)-near:], "")
			}
		}
		if ws := words(r.Text); r.Op != Same && len(ws) > most {
			r.Text = strings.Join(ws[:most], "") + "…"
		}
		out = append(out, r)
	}
	return out
}

// Portions cuts runs between words into portions in which neither side has many more
// than so many characters, for a column that must not grow higher than a page.
func Portions(runs []Run, most int) [][]Run {
	var out [][]Run
	var now []Run
	was, is := 0, 0
	for _, r := range runs {
		for _, word := range words(r.Text) {
			if was > most || is > most {
				out, now, was, is = append(out, now), nil, 0, 0
			}
			if n := len(now); n > 0 && now[n-1].Op == r.Op {
				now[n-1].Text += word
			} else {
				now = append(now, Run{r.Op, word})
			}
			size := utf8.RuneCountInString(word)
			if r.Op != Added {
				was += size
			}
			if r.Op != Struck {
				is += size
			}
		}
	}
	return append(out, now)
}
