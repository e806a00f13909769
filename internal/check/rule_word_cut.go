package check

import (
	"wardleaf/internal/finding"
)

var wordCut = &Rule{
	Name:   "word-cut",
	Title:  "A word is wider than its line, and was cut",
	Why:    "A word that is cut anywhere is hard to read, and an address that is cut does not work.",
	Level:  finding.Warning,
	Needs:  Pages,
	Before: "| https://example.org/a-very-long-address-in-a-narrow-column |\n",
	After:  "| [the ward's page](https://example.org/a-very-long-address-in-a-narrow-column) |\n",
}
