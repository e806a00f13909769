package load

import (
	"bytes"
	"fmt"
	"path"
	"regexp"
	"strconv"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// record reads module.yaml of a module.
func (r *reader) record(id string) *pack.Module {
	m := &pack.Module{ID: id, Lessons: map[string]*lesson.Lesson{}, Basis: map[string]*pack.Basis{}, Unread: true}
	s := subject{r: r, module: id}
	opened := s.open(path.Join(id, "module.yaml"), maxYAML, "audience, minutes, review dates and sources of the lesson")
	m.File = s.file
	if !opened {
		return m
	}
	v := s.yaml()
	if v == nil {
		return m
	}
	m.Unread = false
	s.recordValues(v, &m.Record)
	return m
}

// Record reads a module's record from bytes that need not be in a pack.
func Record(module string, b []byte) (pack.Record, []finding.Finding) {
	s := subject{r: &reader{pack: &pack.Pack{}}, module: module}
	s.file = source.New(path.Join(module, "module.yaml"), bytes.TrimPrefix(b, byteOrderMark))
	var rec pack.Record
	if s.isText() {
		if v := s.yaml(); v != nil {
			s.recordValues(v, &rec)
		}
	}
	return rec, s.r.findings
}

func (s subject) recordValues(v *value, rec *pack.Record) {
	rec.Translations = map[string]pack.Translation{}
	var audience []pack.Ref
	s.group(v, "module.yaml", map[string]field{
		"audience": s.refs(&audience, "audience"),
		"minutes":  s.whole(&rec.Minutes, "minutes"),
		"review": func(v *value) {
			s.group(v, "review", map[string]field{
				"prepared": s.date(&rec.Prepared, "prepared"),
				"due":      s.date(&rec.Due, "due"),
				"by":       s.text(&rec.By, "by"),
			})
		},
		"critical-steps": s.steps(&rec.CriticalSteps),
		"sources":        s.refs(&rec.Sources, "sources"),
		"sign-offs":      s.signOffs(&rec.SignOffs),
		"translations": s.byLanguage("translations", func(tag string, v *value) {
			t := pack.Translation{Span: v.span}
			s.group(v, "translation "+tag, map[string]field{
				"state": s.oneOf(&t.State, "state", "initial", "translated", "reviewed", "final"),
				"by":    s.text(&t.By, "by"),
			})
			rec.Translations[tag] = t
		}),
	})
	for _, a := range audience {
		rec.Audience = append(rec.Audience, a.Name)
	}
}

var stepNumber = regexp.MustCompile(`^(?:([1-9][0-9]?)\.)?([1-9][0-9]?)$`)

// steps reads references to steps: 3 is a step of the only steps part, 2.3 the third step of the second.
func (s subject) steps(dst *[]pack.StepRef) field {
	return func(v *value) {
		if !s.is(v, list, "critical-steps") {
			return
		}
		for _, item := range v.items {
			if !s.is(item, scalar, "each of critical-steps") {
				continue
			}
			m := stepNumber.FindStringSubmatch(item.text)
			if m == nil {
				s.say("record-value", item.span, fmt.Sprintf("%q is not the number of a step", item.text),
					"A step that must never be missed would not be marked.", `write 3, or "2.3" for the third step of the second part of steps`)
				continue
			}
			ref := pack.StepRef{Part: 1, Span: item.span}
			if m[1] != "" {
				ref.Part, _ = strconv.Atoi(m[1])
			}
			ref.Step, _ = strconv.Atoi(m[2])
			*dst = append(*dst, ref)
		}
	}
}

func (s subject) signOffs(dst *[]pack.SignOff) field {
	return func(v *value) {
		if !s.is(v, list, "sign-offs") {
			return
		}
		for _, item := range v.items {
			so := pack.SignOff{Span: item.span}
			s.group(item, "a sign-off", map[string]field{
				"role":   s.text(&so.Role, "role"),
				"lang":   s.text(&so.Lang, "lang"),
				"digest": s.text(&so.Digest, "digest"),
				"date":   s.date(&so.Date, "date"),
			})
			*dst = append(*dst, so)
		}
	}
}
