package translate

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"slices"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
)

// Digest identifies exactly what a clinician reads of a module in a language: SHA-256
// over the lesson's file, which steps are marked as never to be missed, the numbers it
// links to with their sources, and the figures it shows, written "sha256:" and hex. It is empty when the module has no lesson in the language.
func Digest(p *pack.Pack, m *pack.Module, lang string) string {
	l := m.Lessons[lang]
	if l == nil {
		return ""
	}
	h := sha256.New()
	// Every field carries its length, so that no text can pass from one to the next unseen.
	field := func(s string) { fmt.Fprintf(h, "%d:", len(s)); io.WriteString(h, s) }
	field("lesson")
	field(string(l.File.Bytes))
	for _, r := range m.Record.CriticalSteps {
		field(fmt.Sprintf("critical step %d.%d", r.Part, r.Step))
	}
	numbers, figures := Covers(p, l)
	for _, id := range numbers {
		n := p.Numbers[id]
		for _, s := range []string{"number", id, n.Amount, n.Low, n.High, n.Compare, n.Unit, n.Source.Name, n.Place, n.Status} {
			field(s)
		}
		if src := p.Sources[n.Source.Name]; src != nil {
			for _, s := range []string{"source", src.Author, src.Title, fmt.Sprint(src.Year), src.Identifier} {
				field(s)
			}
		}
	}
	for _, name := range figures {
		field("figure")
		field(name)
		field(string(p.Figures[name].File.Bytes))
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil))
}

// Covers returns the IDs of the numbers that a lesson links to and the paths of the
// figures that it shows, each once and sorted. What the pack lacks is left out.
func Covers(p *pack.Pack, l *lesson.Lesson) (numbers, figures []string) {
	l.WalkInlines(func(in *lesson.Inline) {
		if in.Kind == lesson.Link && in.Scheme == "number" && p.Numbers[in.Target] != nil {
			numbers = append(numbers, in.Target)
		}
	})
	l.Walk(func(b *lesson.Block) {
		if b.Kind == lesson.Figure && p.Figures[b.Source] != nil {
			figures = append(figures, b.Source)
		}
	})
	slices.Sort(numbers)
	slices.Sort(figures)
	return slices.Compact(numbers), slices.Compact(figures)
}

// SignedOff reports whether a clinician has signed off a module in a language as it stands.
func SignedOff(p *pack.Pack, m *pack.Module, lang string) bool {
	digest := Digest(p, m, lang)
	return digest != "" && slices.ContainsFunc(m.Record.SignOffs, func(s pack.SignOff) bool {
		return s.Lang == lang && s.Digest == digest
	})
}
