package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// TestNumbersNamedAreThoseUsed takes every number out of the starter pack, one at a time:
// a sheet says otherwise than before if it names the number among its own, and only then.
func TestNumbersNamedAreThoseUsed(t *testing.T) {
	p, loc := starter(t, "en")
	log := source.New("log.csv", []byte("date,start,end\n2026-11-20,06:10,08:40\n"))
	for _, s := range List {
		said := func(p *pack.Pack) string {
			var out strings.Builder
			put := func(j Job) {
				j.Locale, j.Pack, j.Room = loc, p, A4
				c, err := s.Make(j)
				if err != nil {
					fmt.Fprintln(&out, err)
					return
				}
				out.WriteString(lines(c))
			}
			put(Job{})
			switch s {
			case weightRecord:
				put(Job{Inputs: map[string]string{"birth-weight": "1300"}})
				put(Job{Inputs: map[string]string{"birth-weight": "2000"}})
			case contactLog:
				put(Job{Files: map[string]*source.File{"csv": log}})
			case growthChart: // what it says of a baby's measurements, and marks them by
				for _, b := range GrowthNotes(loc, p) {
					fmt.Fprintln(&out, lesson.Plain(b.Inlines))
				}
				fmt.Fprintln(&out, GrowthLimits(p))
			}
			return out.String()
		}
		whole := said(p)
		for _, id := range s.Numbers {
			if p.Numbers[id] == nil {
				t.Errorf("the starter pack lacks %s, which %s uses", id, s.Name)
			}
		}
		for _, id := range s.Sources {
			if p.Sources[id] == nil {
				t.Errorf("the starter pack lacks %s, which %s cites", id, s.Name)
			}
		}
		for id, n := range p.Numbers {
			delete(p.Numbers, id)
			if used := said(p) != whole; used != slices.Contains(s.Numbers, id) {
				t.Errorf("%s: uses %s: %v; names it: %v", s.Name, id, used, !used)
			}
			p.Numbers[id] = n
		}
	}
}
