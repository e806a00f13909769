package review

import (
	"testing"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/load"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// TestMatrix counts what is left of one module in three languages.
func TestMatrix(t *testing.T) {
	read := func(lang, text string) *lesson.Lesson {
		l, _ := load.Lesson("wrapping", lang, []byte(text))
		return l
	}
	m := &pack.Module{ID: "wrapping", Basis: map[string]*pack.Basis{}, Lessons: map[string]*lesson.Lesson{
		"en": read("en", "# Wrap\n\nOne.\n\nTwo.\n\nThree.\n"),
		"hi": read("hi", "# H\n\nA.\n\nB.\n\nC.\n"),
	}}
	m.Record.Translations = map[string]pack.Translation{"hi": {State: "reviewed"}}
	p := &pack.Pack{Source: "en", Languages: []string{"en", "hi", "ar"}, Modules: []*pack.Module{m}}
	units := map[string]pack.BasisUnit{}
	for _, pair := range translate.Paired(p, m, "hi").Followed() {
		units[pair.Source.ID] = pack.BasisUnit{Digest: pair.Basis, Own: translate.UnitDigest(*pair.Target)}
	}
	delete(units, "lead.1")                                                            // nobody said what it was made from
	units["lead.2"] = pack.BasisUnit{Digest: "000000000000", Own: units["lead.2"].Own} // its source changed
	units["lead.3"] = pack.BasisUnit{Digest: units["lead.3"].Digest, Own: "000000000000"}
	m.Basis["hi"] = &pack.Basis{Units: units}
	got := NewMatrix(p, []finding.Finding{
		{Module: "wrapping", Lang: "hi", Level: finding.Error},
		{Module: "wrapping", Level: finding.Warning},
		{Module: "wrapping", Lang: "hi", Level: finding.Warning, Silenced: "known"},
		{Module: "feeding", Lang: "hi", Level: finding.Error},
		{Level: finding.Error},
	}).Rows[0].Cells
	want := []Cell{
		{Source: true, Warnings: 1},
		{State: "reviewed", New: 1, Behind: 1, Changed: 1, Errors: 1, Warnings: 1},
		{Missing: true, State: "initial", New: 4, Warnings: 1},
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%s: got %+v, want %+v", p.Languages[i], got[i], want[i])
		}
	}
}
