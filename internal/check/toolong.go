package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/piece"
)

// TooLong says that a lesson has too many words for a piece of few words, at the part
// to shorten. Nothing is said when long is nil.
func TooLong(pieceName string, long *piece.TooLong) []finding.Finding {
	if long == nil {
		return nil
	}
	pass := &Pass{rule: wallChecklistTooLong}
	words := wallChecklistIsTooLong
	if pieceName == "handout" {
		pass.rule, words = handoutTooLong, handoutIsTooLong
	}
	at := long.Lesson.Span
	if long.Part != nil {
		at = long.Part.Span
	}
	what, mend := words(long)
	pass.Report(In(long.Lesson, at), what, mend)
	return pass.findings
}
