package finding

import "testing"

func TestExplain(t *testing.T) {
	d := RuleDoc{
		Name: "part-empty", Title: "A part is empty", Why: "A heading with nothing below it tells nobody anything.",
		Level: Warning, Before: "## Steps\n\n\n", After: "## Steps\n\n1. Wash.\n",
	}
	const want = `part-empty: warning

A part is empty.

why: A heading with nothing below it tells nobody anything.

before:
    ## Steps

after:
    ## Steps

    1. Wash.
`
	if got := d.Explain(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
