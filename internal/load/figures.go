package load

import (
	"errors"
	"io/fs"
	"path"
	"slices"

	"wardleaf/internal/drawing"
	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// wanted is a picture that a lesson refers to, and where.
type wanted struct {
	name string
	by   subject
	at   source.Span
}

func (c converter) want(name string, at source.Span) {
	c.r.wanted = append(c.r.wanted, wanted{name, c.subject, at})
}

// figures reads every drawing that a lesson refers to, once. One that is missing is
// left out, for a rule to say where it was wanted. What is wrong in a drawing stops
// every language, since translations share it.
func (r *reader) figures() {
	tried := map[string]bool{}
	for _, w := range r.wanted {
		if tried[w.name] {
			continue
		}
		tried[w.name] = true
		s := subject{r: r, module: w.by.module}
		if !s.open(w.name, maxFigure, "") {
			if _, err := fs.Stat(r.fsys, w.name); !errors.Is(err, fs.ErrNotExist) {
				r.pack.Figures[w.name] = &pack.Figure{File: s.file} // it is there, and was complained of
			}
			continue
		}
		f := &pack.Figure{File: s.file}
		r.pack.Figures[w.name] = f
		d, problems := drawing.Read(s.file)
		for _, p := range problems {
			s.say("figure-unsafe", p.Span, p.What, "What a drawing may hold is kept small, so that every printer gives it alike and nothing in it can run on a page.", p.Mend)
		}
		if len(problems) == 0 {
			f.Drawing = d
		}
	}
}

// unusedFigures notes drawings in the folders of modules that no lesson refers to.
func (r *reader) unusedFigures(ids []pack.Ref) {
	for _, id := range ids {
		folder := path.Join(id.Name, "figures")
		entries, _ := fs.ReadDir(r.fsys, folder) // a module may have none
		for _, e := range entries {
			name := path.Join(folder, e.Name())
			if e.IsDir() || path.Ext(name) != ".svg" || slices.ContainsFunc(r.wanted, func(w wanted) bool { return w.name == name }) {
				continue
			}
			s := subject{r: r, module: id.Name, file: source.New(name, nil)}
			s.sayAt(finding.Note, "figure-unused", source.Span{}, "no lesson shows this picture",
				"It is not looked at in a review, and may be put into a lesson later by mistake.", "show it where it belongs, or take the file out")
		}
	}
}
