package check

import (
	"wardleaf/internal/finding"
)

var textSmall = &Rule{
	Name:   "text-small",
	Title:  "Words of a piece are too small to read",
	Why:    "Under 6 points a tired eye in a dim ward reads 6 for 8, and a copy of a copy loses the dots of letters.",
	Level:  finding.Warning,
	Needs:  Pages,
	Before: "a table squeezed to 4 points\n",
	After:  "the table on a page of its own\n",
}
