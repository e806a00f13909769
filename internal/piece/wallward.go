package piece

import (
	"slices"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// wallWard is one side of one sheet on the modules that pack.yaml chooses for the
// wall: a wall checklist under the pack's title, with the checklist of each module
// under the module's title, and the warning signs of all of them together.
func wallWard(j *Job) (*Result, error) {
	modules := chosen(j.Edition)
	for i := range modules {
		if modules[i].Fallback { // one sheet is in one language
			ward := *j
			ward.Mark = j.Edition.Mark(&modules[i])
			ward.Edition, _ = j.Edition.InSource(&modules[i])
			return wallWard(&ward)
		}
	}
	w := &wall{Job: j, label: j.Locale.Label("wall-checklist"), headings: true}
	res, err := w.sheet(together(j.Edition, modules), modules)
	if err == nil && res.TooLong != nil {
		res.TooLong.Pack = j.Pack
	}
	return res, err
}

// hasWall reports whether modules of a pack share a wall checklist.
func hasWall(p *pack.Pack) bool { return len(p.Wall) > 0 }

// chosen returns the modules for the wall that an edition has, in the order of pack.yaml.
func chosen(e *translate.Edition) []translate.Module {
	var out []translate.Module
	for _, ref := range e.Pack.Wall {
		i := slices.IndexFunc(e.Modules, func(m translate.Module) bool { return m.ID == ref.Name })
		if i >= 0 {
			out = append(out, e.Modules[i])
		}
	}
	return out
}

// together puts what modules have for the wall into one lesson: their checklists, the
// first of each module headed by its title, and one part with their warning signs.
func together(e *translate.Edition, modules []translate.Module) *lesson.Lesson {
	lang := e.Locale.Tag
	out := &lesson.Lesson{Lang: lang, Title: text(e.Pack.Title.In(lang, e.Pack.Source))}
	var signs []*lesson.Part
	for _, m := range modules {
		heading := m.Lesson.Title
		for i := range m.Lesson.Parts {
			switch p := &m.Lesson.Parts[i]; p.Role {
			case lesson.Checklist:
				list := *p
				list.Heading, heading = heading, nil
				out.Parts = append(out.Parts, list)
			case lesson.WarningSigns:
				signs = append(signs, p)
			}
		}
	}
	if len(signs) > 0 {
		out.Parts = append(out.Parts, merged(signs))
	}
	return out
}

// merged is one part with the signs of several, under the heading of the first. A sign
// that says no more than another with the same words is left out; where two lessons ask
// for different things, such as opening the wrap first, both stand.
func merged(parts []*lesson.Part) lesson.Part {
	out := *parts[0]
	list := lesson.Block{Kind: lesson.List}
	same := map[string][]int{} // by the words of the sign: where they stand in the list
	for _, p := range parts {
		for _, it := range p.Items(false) {
			sign, do := lesson.SplitSign(it.Blocks)
			if sign == nil {
				sign = inlines(it.Blocks)
			}
			id, told := alike(sign), false
			for _, k := range same[id] {
				_, kept := lesson.SplitSign(list.Items[k].Blocks)
				before, now := alike(inlines(kept)), alike(inlines(do))
				switch {
				case strings.Contains(before, now):
					told = true
				case strings.Contains(now, before):
					list.Items[k], told = it, true
				}
			}
			if !told {
				same[id] = append(same[id], len(list.Items))
				list.Items = append(list.Items, it)
			}
		}
	}
	out.Blocks = []lesson.Block{list}
	return out
}
