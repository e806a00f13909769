package load

import (
	"slices"
	"testing"

	"wardleaf/internal/lesson"
)

// TestLesson reads a lesson with every kind of part and looks at what it means.
func TestLesson(t *testing.T) {
	l, found := read(`# Wrapping

Two
lines &copy; and  blanks.

## Caution {.caution #id .extra}

- **Stop.**

## Steps {.steps}

3. First[, see](module:feeding).

   ![What *to* do](../wrapping/./figures/a%20b.svg)
4. Second

![Chart](sheet:growth-chart)

## Why it helps

### Deeper

## Quiz {.quiz}

1. Is it so?

   - [ ] No
   - [X] Yes

   > Because.

| a | b |
|--:|:-:|
| c | d |
`)
	if len(found) > 0 {
		t.Fatal(found)
	}
	if got := lesson.Plain(l.Title) + "|" + lesson.Plain(l.Lead[0].Inlines); got != "Wrapping|Two lines © and blanks." {
		t.Errorf("got %q", got)
	}
	var roles []lesson.Role
	for _, p := range l.Parts {
		roles = append(roles, p.Role)
	}
	if !slices.Equal(roles, []lesson.Role{lesson.Caution, lesson.Steps, lesson.Prose, lesson.Quiz}) {
		t.Fatalf("got %q", roles)
	}
	if !slices.Equal(l.Parts[0].Classes, []string{"caution", "extra"}) {
		t.Errorf("got %q", l.Parts[0].Classes)
	}
	steps := l.Parts[1].Blocks[0]
	if !steps.Ordered || steps.Start != 3 || len(steps.Items) != 2 {
		t.Errorf("got %+v", steps)
	}
	link := steps.Items[0].Blocks[0].Inlines[1]
	if link.Kind != lesson.Link || link.Scheme != "module" || link.Target != "feeding" || lesson.Plain(link.Children) != ", see" {
		t.Errorf("got %+v", link)
	}
	figure := steps.Items[0].Blocks[1]
	if figure.Kind != lesson.Figure || figure.Source != "wrapping/figures/a b.svg" || figure.Alt != "What to do" {
		t.Errorf("got %+v", figure)
	}
	if b := l.Parts[1].Blocks[1]; b.Kind != lesson.Figure || b.Source != "sheet:growth-chart" {
		t.Errorf("got %+v", b)
	}
	q := l.Parts[3].Questions()
	if len(q) != 1 || len(q[0].Options) != 2 || q[0].Options[0].Right || !q[0].Options[1].Right || len(q[0].Reason) != 1 {
		t.Errorf("got %+v", q)
	}
	table := l.Parts[3].Blocks[1]
	if table.Kind != lesson.Table || len(table.Rows) != 2 || !slices.Equal(table.Align, []lesson.Align{lesson.AlignEnd, lesson.AlignCentre}) {
		t.Errorf("got %+v", table)
	}
}

// TestRefusedLinksKeepTheirWords: what is unsafe goes, what is readable stays.
func TestRefusedLinksKeepTheirWords(t *testing.T) {
	l, found := read("a [b **c**](javascript:x) <data:y> <i>d</i>\n")
	if got := lesson.Plain(l.Lead[0].Inlines); got != "a b c data:y d" {
		t.Errorf("got %q", got)
	}
	if len(found) != 4 {
		t.Errorf("found %v", found)
	}
	l.WalkInlines(func(in *lesson.Inline) {
		if in.Kind == lesson.Link {
			t.Errorf("a link is left: %+v", in)
		}
	})
}
