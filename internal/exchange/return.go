package exchange

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// A Return is a file that came back, as its format says it, not yet held against a pack.
type Return struct {
	File           *source.File
	Source, Target string      // language tags
	Head           source.Span // where they stand
	Units          []Returned
}

// A Returned is one block of a file that came back.
type Returned struct {
	Module, ID string
	Span       source.Span // where the block begins
	Source     Tagged
	Target     Tagged // empty when there is none
	TargetSpan source.Span
	State      string // of XLIFF
	// What the blocks were when they were handed off; empty when the file has lost it.
	SourceDigest, TargetDigest string
	digestSpan                 source.Span // of the text of TargetDigest
}

// The rules that a file that comes back is held to.
const (
	Malformed = "handback-malformed"
	Mismatch  = "handback-mismatch"
	TagLost   = "handback-tag-lost"
	BadState  = "handback-state"
	BadText   = "handback-text"
	Stale     = "handback-stale"
	Newer     = "handback-newer"
	Partial   = "handback-partial"
)

// why tells what each rule keeps from happening.
var why = map[string]string{
	Malformed: "What a file means that breaks its own format is a guess, and nothing of it is taken.",
	Mismatch:  "A translation put in the wrong place teaches the wrong thing.",
	TagLost:   "A tag stands for a number, a telephone, a source or a word in bold; a reader would be left without it.",
	BadState:  "A block that nobody has finished would be printed as a translation.",
	BadText:   "The words could not be printed as the translator wrote them.",
	Stale:     "It translates what the source no longer says.",
	Newer:     "Somebody's later correction would be lost without a word.",
	Partial:   "A lesson half in one language and half in another is not made.",
}

// A reader gathers a Return and what is wrong with the file.
type reader struct {
	file     *source.File
	out      *Return
	findings []finding.Finding
	failed   bool // an error was said
}

func newReader(f *source.File) *reader {
	return &reader{file: f, out: &Return{File: f}}
}

// maxFindings keeps the report of a file that is wrong all through within reason.
const maxFindings = 100

func (r *reader) say(rule string, at source.Span, what, mend string) {
	r.failed = true
	r.add(finding.Error, rule, at, what, mend)
}

// warn adds a finding that leaves a block as it is.
func (r *reader) warn(rule string, at source.Span, what, mend string) {
	r.add(finding.Warning, rule, at, what, mend)
}

func (r *reader) add(level finding.Level, rule string, at source.Span, what, mend string) {
	if len(r.findings) < maxFindings {
		r.findings = append(r.findings, finding.Finding{
			Rule: rule, Level: level, Place: finding.Place{File: r.file, Span: at},
			What: what, Why: why[rule], Mend: mend,
		})
	}
}

// readable says what no format may have: too many bytes, or bytes that are not text.
func (r *reader) readable() bool {
	if len(r.file.Bytes) > maxFile {
		r.file = source.New(r.file.Path, nil)
		r.say(Malformed, source.Span{}, "the file is larger than 16 MiB", "hand off fewer modules at once")
		return false
	}
	for i, c := range string(r.file.Bytes) {
		if c == '\uFFFD' && r.file.Bytes[i] != 0xEF || c == 0 {
			r.say(Malformed, source.Span{Start: i, End: i + 1}, "a byte that is not UTF-8 stands here", "save the file as UTF-8")
			return false
		}
	}
	return true
}
