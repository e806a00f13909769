package check

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/piece"
)

var handoutTooLong = &Rule{
	Name:   "handout-too-long",
	Title:  "A handout does not fit on one sheet",
	Why:    "A handout is taken home as one sheet; the second is lost, and with it whom to call.",
	Level:  finding.Warning,
	Needs:  Pages,
	Before: "1. twenty steps, each of them a paragraph\n",
	After:  "1. eight steps, each of them a short sentence\n",
}

func handoutIsTooLong(long *piece.TooLong) (what, mend string) {
	return fmt.Sprintf("the handout has %s too many for both sides of one sheet in letters of 12 points", count(long.Items, "item")),
		"use fewer words or fewer items in the steps and the warning signs, or make two lessons of it"
}
