package site

import (
	"fmt"
	"strings"

	"wardleaf/internal/locale"
	"wardleaf/internal/sewing"
	"wardleaf/internal/translate"
)

// planWork is what the script of the cutting plan's page works with: every plan for the
// default pieces on cloth of the sold widths, and the words. Lengths are in cm.
type planWork struct {
	Zero    rune                 `json:"zero"`
	Decimal string               `json:"decimal"`
	CM      string               `json:"cm"`
	Most    int                  `json:"most"` // carriers
	Widths  []int                `json:"widths"`
	Names   []string             `json:"names"` // of the pieces, by kind
	Sizes   [][2]int             `json:"sizes"` // width and length, by kind
	Body    string               `json:"body"`  // outline, lying along x
	Cloths  map[string]planCloth `json:"cloths"`
	Lengths map[string][]int     `json:"lengths"` // of a section, by its carriers
	Words   planWords            `json:"words"`
}

// A planCloth is every plan on one cloth.
type planCloth struct {
	Plans    []planRow `json:"plans"`    // for 1, 2, 3 carriers and on
	Sections []string  `json:"sections"` // by carriers: sewing.Section.Code
}

type planRow struct {
	Length   int      `json:"length"`
	Bound    int      `json:"bound"`
	Gap      string   `json:"gap"`
	Waste    string   `json:"waste"`
	Sections [][2]int `json:"sections"` // carriers and times
}

type planWords struct {
	Length   string   `json:"length"`
	Bound    string   `json:"bound"`
	Gap      string   `json:"gap"`
	Waste    string   `json:"waste"`
	Best     string   `json:"best"`
	Unproved string   `json:"unproved"`
	Section  string   `json:"section"`
	Once     string   `json:"once"`
	Alt      string   `json:"alt"`
	Table    string   `json:"table"`
	Places   []string `json:"places"`
}

// mostWorked is the most carriers that the page shows plans for.
const mostWorked = 20

func newPlanWork(e *translate.Edition) *planWork {
	loc := e.Locale
	p, err := sewing.Draft(sewing.Default())
	if err != nil {
		panic(err) // the default is drafted in every test
	}
	with := func(names ...string) []locale.Var {
		var out []locale.Var
		for _, n := range names {
			out = append(out, locale.With(n, "{"+strings.ToLower(n)+"}"))
		}
		return out
	}
	w := &planWork{
		Zero: []rune(loc.Digits("0"))[0], Decimal: string([]rune(loc.Decimal("0.0"))[1]),
		CM: loc.Label("centimetres", locale.With("Amount", "{n}")), Most: mostWorked,
		Cloths: map[string]planCloth{}, Lengths: map[string][]int{},
		Words: planWords{
			Length: loc.Label("plan-length"), Bound: loc.Label("plan-bound"), Gap: loc.Label("plan-gap"), Waste: loc.Label("plan-waste"),
			Best: loc.Label("plan-best"), Unproved: loc.Label("plan-not-proved", with("Bound")...),
			Section: loc.Label("plan-section", with("Carriers", "Length", "Times")...),
			Once:    loc.Label("plan-section-once", with("Carriers", "Length")...),
			Alt:     loc.Label("plan-alt", with("Length", "Width")...), Table: loc.Label("table-behind"),
			Places: []string{loc.Label("piece"), loc.Label("plan-along"), loc.Label("plan-across"), loc.Label("length"), loc.Label("width")},
		},
	}
	for i, r := range p.Rects() {
		w.Names = append(w.Names, loc.Label("piece-"+sewing.Kinds[i].Name()))
		w.Sizes = append(w.Sizes, [2]int{inCM(r.Width), inCM(r.Length)})
	}
	w.Body = outline(p.Pieces[sewing.Body].Marks[0].Path)
	for _, width := range sewing.SoldWidths {
		w.Widths = append(w.Widths, inCM(width))
		for _, cloth := range []string{"plain", "one-way"} {
			key := fmt.Sprintf("%d %s", inCM(width), cloth)
			c := planCloth{Sections: make([]string, mostWorked+1)}
			lengths := make([]int, mostWorked+1)
			for n := 1; n <= mostWorked; n++ {
				pl, err := sewing.MakePlan(p, sewing.Order{Count: n, Width: width, OneWay: cloth == "one-way"})
				if err != nil {
					panic(err)
				}
				row := planRow{Length: inCM(pl.Length), Bound: inCM(pl.Bound), Gap: tenth(pl.Gap()), Waste: tenth(pl.Waste())}
				for i := range pl.Sections {
					s := &pl.Sections[i]
					row.Sections = append(row.Sections, [2]int{s.Carriers, s.Times})
					c.Sections[s.Carriers], lengths[s.Carriers] = s.Code(), inCM(s.Length)
				}
				c.Plans = append(c.Plans, row)
			}
			w.Cloths[key], w.Lengths[key] = c, lengths
		}
	}
	return w
}

// inCM returns a length in centimetres; the default pieces are whole centimetres.
func inCM(l sewing.Length) int { return int(l / sewing.CM) }

// tenth writes tenths of a percent.
func tenth(n int) string { return strings.TrimSuffix(fmt.Sprintf("%d.%d", n/10, n%10), ".0") }

// outline writes a path as SVG in cm, its length along x.
func outline(p sewing.Path) string {
	var b strings.Builder
	at := func(q sewing.Point) string { return q.Y.Centimetres() + " " + q.X.Centimetres() }
	b.WriteString("M" + at(p.Start))
	for _, s := range p.Segments {
		if s.Curve {
			b.WriteString("C" + at(s.P[0]) + " " + at(s.P[1]) + " " + at(s.P[2]))
		} else {
			b.WriteString("L" + at(s.P[0]))
		}
	}
	return b.String() + "Z"
}
