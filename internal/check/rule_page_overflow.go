package check

import (
	"wardleaf/internal/finding"
)

var pageOverflow = &Rule{
	Name:   "page-overflow",
	Title:  "Something is set off the page",
	Why:    "It is cut off in print, and the words that are missing may be the caution.",
	Level:  finding.Error,
	Needs:  Pages,
	Before: "a line that goes on behind the edge of the paper\n",
	After:  "a line that ends before it\n",
}
