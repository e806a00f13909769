package check

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the table of rules into README.md")

// TestReadme: the table of rules in README.md says what the rules say of themselves.
func TestReadme(t *testing.T) {
	const name, from, to = "../../README.md", "<!-- rules -->\n", "<!-- end of rules -->"
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var table strings.Builder
	table.WriteString("| rule | level | what is wrong |\n| --- | --- | --- |\n")
	for _, r := range All() {
		fmt.Fprintf(&table, "| `%s` | %s | %s |\n", r.Name, r.Level, r.Title)
	}
	start := bytes.Index(b, []byte(from))
	end := bytes.Index(b, []byte(to))
	if start < 0 || end < start {
		t.Fatalf("README.md lacks the marks %q and %q", from, to)
	}
	want := string(b[:start]) + from + table.String() + string(b[end:])
	if *update {
		if err := os.WriteFile(name, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if string(b) != want {
		t.Error("the table of rules in README.md is out of date; run: go test ./internal/check -run Readme -update")
	}
}
