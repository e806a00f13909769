package check

import (
	"wardleaf/internal/finding"
	"wardleaf/internal/piece"
	"wardleaf/internal/source"
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
	what, mend := words(long)
	pass.Report(tooLongAt(long), what, mend)
	return pass.findings
}

// tooLongAt is where to mend it: the part to shorten or, of modules that share a
// sheet, the line that chooses them.
func tooLongAt(long *piece.TooLong) Where {
	switch {
	case long.Pack != nil:
		at := Where{File: long.Pack.File, Lang: long.Lesson.Lang}
		if wall := long.Pack.Wall; len(wall) > 0 {
			at.Span = source.Span{Start: wall[0].Span.Start, End: wall[len(wall)-1].Span.End}
		}
		return at
	case long.Part != nil:
		return In(long.Lesson, long.Part.Span)
	}
	return In(long.Lesson, long.Lesson.Span)
}
