package check

import (
	"strings"
	"time"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
)

// Silence marks the warnings and notes that pack.yaml keeps out of the way today.
// Errors stay errors.
func Silence(p *pack.Pack, fs []finding.Finding, today time.Time) {
	for _, q := range p.Silenced {
		for i := range fs {
			if silences(q, &fs[i], today) {
				fs[i].Silenced = q.Reason
			}
		}
	}
}

func silences(q pack.Silence, f *finding.Finding, today time.Time) bool {
	return q.Reason != "" && !q.Until.Time.Before(today) && f.Level < finding.Error && f.Rule == q.Rule &&
		(q.Module == "" || q.Module == f.Module) && (q.Lang == "" || q.Lang == f.Lang) && says(f, q.Says)
}

// says reports whether words are in what a finding says, or in the line it stands on.
func says(f *finding.Finding, words string) bool {
	line, _ := f.Place.File.Position(f.Place.Span.Start)
	return strings.Contains(spaces.Replace(f.What), spaces.Replace(words)) || strings.Contains(spaces.Replace(f.Place.File.Line(line)), spaces.Replace(words))
}

var silenceUnused = &Rule{
	Name:   "silence-unused",
	Title:  "A warning is silenced that nothing gives",
	Why:    "It would silence the next one, which nobody has looked at.",
	Level:  finding.Note,
	Needs:  Pages,
	Before: "silenced:\n  - {rule: sentence-long, reason: mended since, until: 2027-01-31}\n",
	After:  "silenced: []\n",
}

// Unused says which lines of pack.yaml silence none of the findings of a whole pack.
func Unused(p *pack.Pack, fs []finding.Finding, today time.Time) []finding.Finding {
	pass := &Pass{Pack: p, rule: silenceUnused}
	for _, q := range p.Silenced {
		used := q.Until.Time.Before(today) // silence-expired or silence-refused says so
		for i := range fs {
			used = used || silences(q, &fs[i], today)
		}
		if r := Find(q.Rule); !used && r != nil && r.Level < finding.Error {
			pass.Report(Where{File: p.File, Span: q.Span}, q.Rule+" finds nothing that this would silence", "take it out")
		}
	}
	return pass.findings
}
