package piece

import (
	"bytes"
	"os/exec"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
	"wardleaf/internal/pdf"
	"wardleaf/internal/sheet"
)

var wardSheets = map[string]int{"feeding-table": 2, "weight-record": 2, "contact-log": 1, "sign-tally": 1} // pages

// TestWardSheetPages: each page of a ward's sheet fits its paper, in every language.
func TestWardSheetPages(t *testing.T) {
	for name, pages := range wardSheets {
		made(t, name, []string{"A4", "Letter"}, func(what string, j *Job, r *Result) {
			if n := len(r.Document.Pages); n != pages {
				t.Errorf("%s: %d pages, want %d", what, n, pages)
			}
		})
	}
}

// TestWardSheetText has poppler read each row of the ward's tables back from the PDF.
// Rows of right-to-left tables are compared as sets of letters and digits, since poppler
// weaves their columns together.
func TestWardSheetText(t *testing.T) {
	pdftotext := tool(t, "pdftotext")
	for _, e := range editions(t) {
		for name := range wardSheets {
			s := sheet.Find(name)
			j := &Job{Edition: e, Fonts: library(t), Paper: measure.A4}
			r, _, err := Sheet(j, s, nil, nil)
			if err != nil {
				t.Fatal(err)
			}
			var b bytes.Buffer
			if err := pdf.Write(&b, r.Document); err != nil {
				t.Fatal(err)
			}
			args := []string{"-", "-"}
			if !e.Locale.RTL {
				args = []string{"-raw", "-", "-"} // in the order of the file
			}
			cmd := exec.Command(pdftotext, args...)
			cmd.Stdin = &b
			out, err := cmd.Output()
			if err != nil {
				t.Fatal(err)
			}
			got := words(string(out))
			for _, p := range s.Blank(e.Locale, e.Pack, sheet.A4).Pages {
				for _, bl := range p.Blocks {
					for _, row := range bl.Rows {
						want := ""
						for _, c := range row.Cells {
							cell := words(lesson.Plain(c))
							if fields := strings.Fields(lesson.Plain(c)); e.Locale.RTL && len(fields) < 4 {
								for _, f := range fields { // a number and its sign may change sides
									if !strings.Contains(got, words(f)) {
										t.Errorf("%s %s: %q of the cell %q is not in the text", name, e.Locale.Tag, f, lesson.Plain(c))
									}
								}
							}
							want += cell
						}
						if !e.Locale.RTL && !strings.Contains(got, want) {
							t.Errorf("%s %s: the row %q is not in the text", name, e.Locale.Tag, want)
						}
					}
				}
			}
		}
	}
}

// TestDayOneAtTheStart: the first day stands at the start side of the log, which is the
// right of a page that is read from right to left.
func TestDayOneAtTheStart(t *testing.T) {
	made(t, "contact-log", []string{"A4"}, func(what string, j *Job, r *Result) {
		x := map[string]measure.Length{}
		for _, el := range elements(r.Document, r.Document.Pages[0]) {
			x[squeeze(el.text)] = el.runs[0].X
		}
		day := func(n int) measure.Length {
			return x[squeeze(j.Locale.Label("day-number", locale.With("Day", j.Locale.Number(n))))]
		}
		first, last := day(1), day(7)
		if first == 0 || last == 0 || (first < last) == j.Locale.RTL {
			t.Errorf("%s: day 1 at %v, day 7 at %v", what, first, last)
		}
	})
}
