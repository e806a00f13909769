package site

import (
	"strings"
	"sync"

	"wardleaf/internal/locale"
	"wardleaf/internal/sewing"
	"wardleaf/internal/sheet"
	"wardleaf/internal/translate"
)

// cuttingMost is the most carriers that the page of the cutting plan can be asked for;
// the command plans more.
const cuttingMost = 20

// cuttingWork is what the script of the cutting plan's page works with. The plans are
// those that the printed sheet shows, for the default pieces.
type cuttingWork struct {
	Widths  []int64                  `json:"widths"` // of cloth, in centimetres
	Plans   map[string][]cuttingPlan `json:"plans"`  // by "90 plain" or "90 one-way"; one a number of carriers, from 1
	Sizes   map[string][2]int64      `json:"sizes"`  // across and along, in centimetres, by letter
	Each    map[string]int           `json:"each"`   // of a piece in one carrier
	Names   map[string]string        `json:"names"`
	Body    string                   `json:"body"` // outline in centimetres, its length along x
	Band    int64                    `json:"band"` // the longest stretch of cloth in one drawing, in centimetres
	Zero    rune                     `json:"zero"`
	Decimal string                   `json:"decimal"`
	Words   map[string]string        `json:"words"`
}

// A cuttingPlan is one plan; lengths are in centimetres.
type cuttingPlan struct {
	Length   int64            `json:"length"`
	Bound    int64            `json:"bound"`
	Sections []cuttingSection `json:"sections"`
}

type cuttingSection struct {
	Times    int    `json:"times"`
	Carriers int    `json:"carriers"`
	Length   int64  `json:"length"`
	Code     string `json:"code"` // where pieces lie, as sewing.Section writes it
}

// cuttingPlans are the same in every language.
var cuttingPlans = sync.OnceValue(func() map[string][]cuttingPlan {
	pattern, err := sewing.Draft(sewing.Default())
	if err != nil {
		panic(err) // the default measures are part of the program
	}
	out := map[string][]cuttingPlan{}
	for _, width := range sewing.SoldWidths {
		for _, oneWay := range []bool{false, true} {
			key := cuttingKey(width, oneWay)
			for n := 1; n <= cuttingMost; n++ {
				plan, err := sewing.MakePlan(pattern, sewing.Order{Count: n, Width: width, OneWay: oneWay})
				if err != nil {
					panic(err)
				}
				cp := cuttingPlan{Length: int64(plan.Length / sewing.CM), Bound: int64(plan.Bound / sewing.CM)}
				for i := range plan.Sections {
					s := &plan.Sections[i]
					cp.Sections = append(cp.Sections, cuttingSection{s.Times, s.Carriers, int64(s.Length / sewing.CM), s.Code()})
				}
				out[key] = append(out[key], cp)
			}
		}
	}
	return out
})

func cuttingKey(width sewing.Length, oneWay bool) string {
	if oneWay {
		return width.Centimetres() + " one-way"
	}
	return width.Centimetres() + " plain"
}

// newCuttingWork makes the data for a language.
func newCuttingWork(e *translate.Edition) *cuttingWork {
	loc := e.Locale
	w := &cuttingWork{
		Plans: cuttingPlans(), Sizes: map[string][2]int64{}, Each: map[string]int{}, Names: map[string]string{},
		Zero: []rune(loc.Digits("0"))[0], Decimal: string([]rune(loc.Decimal("0.0"))[1]), Words: map[string]string{},
	}
	for _, width := range sewing.SoldWidths {
		w.Widths = append(w.Widths, int64(width/sewing.CM))
	}
	pattern, err := sewing.Draft(sewing.Default())
	if err != nil {
		panic(err)
	}
	sizes := pattern.Rects()
	for k, letter := range []string{sewing.Body: "B", sewing.Belt: "T", sewing.Cap: "C"} {
		w.Sizes[letter] = [2]int64{int64(sizes[k].Width / sewing.CM), int64(sizes[k].Length / sewing.CM)}
		w.Each[letter] = sewing.Each[k]
		w.Names[letter] = loc.Label([]string{sewing.Body: "piece-body", sewing.Belt: "piece-belt", sewing.Cap: "piece-cap"}[k])
	}
	w.Body, w.Band = outline(pattern.Pieces[sewing.Body].Marks[0].Path), int64(sheet.CuttingBand/sewing.CM)
	w.Words["section"] = loc.Label("plan-section", locale.With("Carriers", "{carriers}"), locale.With("Length", "{length}"), locale.With("Times", "{times}"))
	w.Words["once"] = loc.Label("plan-section-once", locale.With("Carriers", "{carriers}"), locale.With("Length", "{length}"))
	w.Words["best"] = loc.Label("plan-best")
	w.Words["bound"] = loc.Label("plan-not-proved", locale.With("Bound", "{bound}"))
	w.Words["cm"] = loc.Label("centimetres", locale.With("Amount", "{n}"))
	w.Words["alt"] = loc.Label("plan-alt", locale.With("Length", "{length}"), locale.With("Width", "{width}"))
	return w
}

// outline writes a path as SVG in centimetres, along the cloth as it is drawn.
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
