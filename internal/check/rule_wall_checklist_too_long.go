package check

import (
	"fmt"
	"strconv"

	"wardleaf/internal/finding"
	"wardleaf/internal/piece"
)

var wallChecklistTooLong = &Rule{
	Name:   "wall-checklist-too-long",
	Title:  "A wall checklist cannot be read from as far off as it should be",
	Why:    "Letters that are too small for their distance are not read, and the check is left out.",
	Level:  finding.Note,
	Needs:  Pages,
	Before: "- [ ] twelve things to check, each of them a whole sentence\n",
	After:  "- [ ] six things to check, in few words\n",
}

func wallChecklistIsTooLong(long *piece.TooLong) (what, mend string) {
	metres := func(tenths int) string { return strconv.FormatFloat(float64(tenths)/10, 'f', -1, 64) + " m" }
	sheet, mend := "the wall checklist", "use fewer words or fewer items in the checklist and the warning signs"
	if long.Pack != nil {
		sheet, mend = "in "+long.Lesson.Lang+", the wall checklist of these modules together", "choose fewer modules"
	}
	return fmt.Sprintf("%s has %s too many to be read from %s; as it is, it can be read from %s", sheet, count(long.Items, "item"), metres(long.Asked), metres(long.Fits)),
		mend + ", print it on larger paper, or hang it where people stand closer"
}
