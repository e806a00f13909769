package load

import (
	"strconv"

	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// optional opens a file that a pack may do without.
func (r *reader) optional(name string) (subject, *value) {
	s := subject{r: r}
	if !s.open(name, maxYAML, "") {
		return s, &value{}
	}
	v := s.yaml()
	if v == nil {
		v = &value{}
	}
	return s, v
}

func (r *reader) numbers() {
	s, v := r.optional("numbers.yaml")
	s.table(v, "numbers.yaml", func(id string, at source.Span, v *value) {
		n := &pack.Number{ID: id, File: s.file, Span: at}
		s.group(v, "the number "+id, map[string]field{
			"about":   s.text(&n.About, "about"),
			"amount":  s.amount(&n.Amount, "amount"),
			"low":     s.amount(&n.Low, "low"),
			"high":    s.amount(&n.High, "high"),
			"compare": s.oneOf(&n.Compare, "compare", "at-least", "up-to", "under", "over"),
			"unit":    s.text(&n.Unit, "unit"),
			"source":  s.ref(&n.Source, "source"),
			"place":   s.text(&n.Place, "place"),
			"status":  s.oneOf(&n.Status, "status", "published", "common-practice"),
		})
		s.wholeNumber(n)
		r.pack.Numbers[id] = n
	})
}

// wholeNumber says what a number lacks.
func (s subject) wholeNumber(n *pack.Number) {
	const why = "Families act on this number; it must be exact and traceable."
	single, isRange := n.Amount != "", n.Low != "" || n.High != ""
	switch {
	case single == isRange:
		s.say("record-value", n.Span, "a number is either an amount, or low and high", why, "keep amount, or low and high")
	case isRange && (n.Low == "" || n.High == ""):
		s.say("record-value", n.Span, "a range needs both ends", why, "give low and high")
	case isRange && toFloat(n.Low) >= toFloat(n.High):
		s.say("record-value", n.Span, "low is not below high", why, "put the smaller amount in low")
	case isRange && n.Compare != "":
		s.say("record-value", n.Span, "compare goes with a single amount", why, "take compare out, or give an amount instead of low and high")
	}
	switch {
	case n.Status == "":
		s.missing(n.Span, "the number "+n.ID, "status")
	case n.Status == "published" && n.Source.Name == "":
		s.missing(n.Span, "the number "+n.ID, "source")
	case n.Status == "common-practice" && n.Source.Name != "":
		s.say("record-value", n.Source.Span, "common practice has no source", why, "set status to published, or take the source out")
	}
}

// toFloat is for comparing amounts that were checked when they were read.
func toFloat(s string) float64 {
	f, _ := strconv.ParseFloat(s, 64)
	return f
}

func (r *reader) sources() {
	s, v := r.optional("sources.yaml")
	s.table(v, "sources.yaml", func(id string, at source.Span, v *value) {
		src := &pack.Source{ID: id, File: s.file, Span: at}
		s.group(v, "the source "+id, map[string]field{
			"author":     s.text(&src.Author, "author"),
			"title":      s.text(&src.Title, "title"),
			"year":       s.whole(&src.Year, "year"),
			"identifier": s.text(&src.Identifier, "identifier"),
			"note":       s.text(&src.Note, "note"),
		})
		if src.Title == "" {
			s.missing(at, "the source "+id, "title")
		}
		r.pack.Sources[id] = src
	})
}

func (r *reader) terms() {
	s, v := r.optional("terms.yaml")
	s.table(v, "terms.yaml", func(id string, at source.Span, v *value) {
		t := &pack.Term{ID: id, In: pack.Localized{}, File: s.file, Span: at}
		if s.is(v, mapping, "the term "+id) {
			for _, e := range v.entries {
				var text string
				s.text(&text, e.key)(e.value)
				if e.key == "about" {
					t.About = text
				} else if s.tag(e.key, e.at) {
					t.In[e.key] = text
				}
			}
		}
		r.pack.Terms[id] = t
	})
}

func (r *reader) facility() {
	s, v := r.optional("facility.yaml")
	f := &r.pack.Facility
	f.File = s.file
	s.group(v, "facility.yaml", map[string]field{
		"name":          s.localized(&f.Name, "name"),
		"protocol-note": s.localized(&f.Protocol, "protocol-note"),
		"feeding-table": s.feedingTable,
		"contacts": func(v *value) {
			s.table(v, "contacts", func(id string, at source.Span, v *value) {
				c := pack.Contact{ID: id, Span: at}
				s.group(v, "the contact "+id, map[string]field{
					"label": s.localized(&c.Label, "label"),
					"value": s.text(&c.Value, "value"),
				})
				f.Contacts = append(f.Contacts, c)
			})
		},
	})
}
