package check

import (
	"fmt"
	"path"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/sheet"
)

var linkBroken = &Rule{
	Name:   "link-broken",
	Title:  "A link or a record names something that the pack does not hold",
	Why:    "The reader is sent to a page, a source or a telephone number that is not there.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "[feeding](module:feding)\n",
	After:  "[feeding](module:feeding)\n",
	Run: func(p *Pass) {
		names := namesOf(p.Pack)
		p.Lessons(func(_ *pack.Module, l *lesson.Lesson) {
			l.WalkInlines(func(in *lesson.Inline) {
				if in.Kind == lesson.Link {
					p.link(names, In(l, in.Span), in.Scheme, in.Target)
				}
			})
		})
		for _, m := range p.Pack.Modules {
			for _, r := range m.Record.Sources {
				p.link(names, InRecord(m, r.Span), "source", r.Name)
			}
		}
		for _, id := range pack.Sorted(p.Pack.Numbers) {
			if n := p.Pack.Numbers[id]; n.Source.Name != "" {
				p.link(names, Where{File: n.File, Span: n.Source.Span}, "source", n.Source.Name)
			}
		}
	},
}

// namesOf gives the names that each scheme can refer to, sorted.
func namesOf(p *pack.Pack) map[string][]string {
	files, modules, contacts := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for name := range p.Figures {
		files[name] = true
	}
	for _, m := range p.Modules {
		modules[m.ID] = true
		for lang := range m.Lessons {
			files[path.Join(m.ID, lang+".md")] = true
		}
	}
	for _, c := range p.Facility.Contacts {
		contacts[c.ID] = true
	}
	return map[string][]string{
		"": pack.Sorted(files), "module": pack.Sorted(modules), "facility": pack.Sorted(contacts),
		"number": pack.Sorted(p.Numbers), "source": pack.Sorted(p.Sources), "term": pack.Sorted(p.Terms),
		"sheet": sheet.Names(),
	}
}

// kept says where the things of a scheme are kept.
var kept = map[string]string{
	"module": "modules in pack.yaml", "facility": "contacts in facility.yaml", "number": "numbers.yaml",
	"source": "sources.yaml", "term": "terms.yaml",
}

func (p *Pass) link(names map[string][]string, at Where, scheme, target string) {
	known, ours := names[scheme]
	if !ours {
		return // an address outside the pack
	}
	for _, n := range known {
		if n == target {
			return
		}
	}
	switch scheme {
	case "":
		p.Report(at, fmt.Sprintf("there is no lesson or picture at %q in the pack", target),
			finding.Meant(target, known)+"refer to a lesson as module: and its name, and to files outside as https:")
	case "sheet":
		p.Report(at, fmt.Sprintf("there is no sheet %q", target), finding.Meant(target, known)+"take the link out")
	default:
		p.Report(at, fmt.Sprintf("there is no %s %q", scheme, target),
			fmt.Sprintf("%sadd it to %s", finding.Meant(target, known), kept[scheme]))
	}
}
