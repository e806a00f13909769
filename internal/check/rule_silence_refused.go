package check

import (
	"fmt"

	"wardleaf/internal/finding"
)

var silenceRefused = &Rule{
	Name:   "silence-refused",
	Title:  "Something is silenced that cannot be",
	Why:    "Whoever wrote the line believes that somebody has decided about it.",
	Level:  finding.Error,
	Needs:  Source,
	Before: "silenced:\n  - {rule: caution-missing, reason: later, until: 2027-01-31}\n",
	After:  "silenced:\n  - {rule: sentence-long, reason: the law's own words, until: 2027-01-31}\n",
}

func init() { silenceRefused.Run = refuseSilences } // it looks rules up, and is one of them

func refuseSilences(p *Pass) {
	for _, q := range p.Pack.Silenced {
		at := Where{File: p.Pack.File, Span: q.Span}
		rule := Find(q.Rule)
		switch {
		case q.Rule == "":
			// the reader has said so
		case rule == nil:
			var names []string
			for _, r := range All() {
				names = append(names, r.Name)
			}
			p.Report(at, fmt.Sprintf("there is no rule %q", q.Rule), finding.Meant(q.Rule, names)+"write the name as the checker prints it")
		case rule.Level == finding.Error:
			p.Report(at, q.Rule+" finds errors, and an error cannot be silenced", "mend what it finds, and take this out")
		case q.Until.Text != "" && q.Until.Time.IsZero():
			p.Report(at, fmt.Sprintf("%q is no date", q.Until.Text), "write until as YYYY-MM-DD, such as 2027-02-25")
		}
	}
}
