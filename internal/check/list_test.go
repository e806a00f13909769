package check

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestListIsTheFolder compares list.go with the files of rules.
func TestListIsTheFolder(t *testing.T) {
	files, err := filepath.Glob("rule_*.go")
	if err != nil {
		t.Fatal(err)
	}
	var want, got []string
	for _, f := range files {
		name := strings.TrimSuffix(strings.TrimPrefix(f, "rule_"), ".go")
		want = append(want, strings.ReplaceAll(name, "_", "-"))
	}
	for _, r := range List {
		got = append(got, r.Name)
	}
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("list.go and the files differ, or the list is out of order:\n%v\n%v", got, want)
	}
}

// TestRulesAreDescribed refuses a rule without its words.
func TestRulesAreDescribed(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range All() {
		for what, s := range map[string]string{"title": r.Title, "why": r.Why, "before": r.Before, "after": r.After} {
			if strings.TrimSpace(s) == "" {
				t.Errorf("%s has no %s", r.Name, what)
			}
		}
		if strings.HasSuffix(r.Title, ".") || !strings.HasSuffix(r.Why, ".") {
			t.Errorf("%s: a title has no full stop, a reason has one", r.Name)
		}
		if r.Before == r.After {
			t.Errorf("%s: before and after are the same", r.Name)
		}
		if seen[r.Name] {
			t.Errorf("%s is there twice", r.Name)
		}
		seen[r.Name] = true
		if runs := r.Needs == Source || r.Needs == Joined; runs != (r.Run != nil) {
			t.Errorf("%s: a rule about files has Run, and no other", r.Name)
		}
	}
}
