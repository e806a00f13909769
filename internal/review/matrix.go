package review

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// A Matrix says how far every module has come in every language.
type Matrix struct {
	Langs []string
	Rows  []MatrixRow
}

// A MatrixRow is one module; it has a cell for each language.
type MatrixRow struct {
	Module *pack.Module
	Cells  []Cell
}

// A Cell is one module in one language. Blocks are counted as package translate pairs them.
type Cell struct {
	Source  bool   // it is the source language, and has no state of translation
	Missing bool   // there is no lesson
	State   string // initial, translated, reviewed, final
	Signed  bool   // a sign-off stands for exactly what is there
	New     int    // blocks not translated, or of which nobody said what they were made from
	Behind  int    // blocks whose source changed since
	Changed int    // translated blocks that changed since they were last compared
	// Findings that concern this module in this language, or all languages.
	Errors, Warnings int
}

// Clean reports whether nothing is left to do but what the state says.
func (c Cell) Clean() bool {
	return !c.Missing && c.New+c.Behind+c.Changed+c.Errors+c.Warnings == 0
}

// NewMatrix makes the matrix of a pack and what the checker found in it.
func NewMatrix(p *pack.Pack, fs []finding.Finding) Matrix {
	out := Matrix{Langs: p.Languages}
	for _, m := range p.Modules {
		row := MatrixRow{Module: m}
		for _, lang := range p.Languages {
			c := Cell{Source: lang == p.Source, Missing: m.Lessons[lang] == nil, Signed: translate.SignedOff(p, m, lang)}
			if !c.Source {
				c.State = m.Record.Translations[lang].State
				if c.State == "" {
					c.State = "initial"
				}
			}
			if pairing := translate.Paired(p, m, lang); pairing != nil {
				c.New, c.Behind, c.Changed = len(pairing.New()), len(pairing.Stale()), len(pairing.Touched())
			}
			for _, f := range fs {
				if f.Module != m.ID || f.Lang != "" && f.Lang != lang || f.Silenced != "" {
					continue
				}
				switch f.Level {
				case finding.Error:
					c.Errors++
				case finding.Warning:
					c.Warnings++
				}
			}
			row.Cells = append(row.Cells, c)
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}
