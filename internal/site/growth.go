package site

import (
	"crypto/sha256"
	"encoding/base64"
	"html/template"
	"math"

	"wardleaf/internal/growth"
	"wardleaf/internal/locale"
	"wardleaf/internal/sheet"
	"wardleaf/internal/translate"
)

// growthWork is what the script of the growth chart's page works with. All of it is
// made by the functions that draw the chart in print.
type growthWork struct {
	First    int                      `json:"first"` // day of age that tables begin with
	Last     int                      `json:"last"`
	Measures map[string]growthMoments `json:"measures"`
	Charts   []growthPlace            `json:"charts"`
	Zero     rune                     `json:"zero"` // digit
	Decimal  string                   `json:"decimal"`
	Absurd   int                      `json:"absurd"` // standard deviations beyond which a row is refused
	Limits   growth.Limits            `json:"limits"`
	Marks    growthMarks              `json:"marks"`
	Missing  string                   `json:"missing"`
	Unread   string                   `json:"unread"` // {n} is the row
	Outside  string                   `json:"outside"`
	Far      string                   `json:"far"`
}

// growthMoments are those of one measure at each day, for girls; boys' means are
// greater by the same amount at every age.
type growthMoments struct {
	Log  bool      `json:"log"`
	Boy  float64   `json:"boy"`
	Mean []float64 `json:"mean"`
	SD   []float64 `json:"sd"`
}

// growthMarks are the words of each mark.
type growthMarks struct {
	Gain     string `json:"gain"`
	Loss     string `json:"loss"`
	VeryLoss string `json:"veryLoss"` // of the smaller band of birth weights
	Back     string `json:"back"`
}

// A growthPlace is one chart of the page and where its axes lie in it.
type growthPlace struct {
	Section string `json:"section"`
	Figure  string `json:"figure"`
	Measure string `json:"measure"`
	Sex     string `json:"sex"`
	sheet.PlotFrame
}

// newGrowthWork makes the data for charts on a page as sheet writes it: one a section,
// in the order of measures and sexes.
func newGrowthWork(e *translate.Edition, sections []sheetSection) *growthWork {
	loc, row := e.Locale, locale.With("Row", "{n}")
	w := &growthWork{
		First: growth.FirstDay, Last: growth.LastDay, Measures: map[string]growthMoments{},
		Zero: []rune(loc.Digits("0"))[0], Decimal: string([]rune(loc.Decimal("0.0"))[1]), Absurd: growth.Absurd,
		Missing: loc.Label("growth-missing"), Unread: loc.Label("growth-unread", row), Outside: loc.Label("growth-outside", row), Far: loc.Label("growth-far", row),
	}
	w.Limits = sheet.GrowthLimits(e.Pack)
	name := func(m growth.Mark, very bool) string { return sheet.MarkName(loc, m, w.Limits, very) }
	w.Marks = growthMarks{name(growth.LowGain, false), name(growth.MoreLoss, false), name(growth.MoreLoss, true), name(growth.NotBack, false)}
	n := 0
	for _, m := range growth.Measures {
		name := growth.Columns[m+1]
		var mo growthMoments
		for d := growth.FirstDay; d <= growth.LastDay; d++ {
			mean, sd, _ := growth.Moments(m, growth.Girl, d)
			mo.Mean, mo.SD = append(mo.Mean, places(mean)), append(mo.SD, places(sd))
		}
		girl, _, _ := growth.Moments(m, growth.Girl, growth.FirstDay)
		boy, _, _ := growth.Moments(m, growth.Boy, growth.FirstDay)
		mo.Log, mo.Boy = m != growth.Head, places(boy-girl)
		w.Measures[name] = mo
		for _, s := range growth.Sexes {
			w.Charts = append(w.Charts, growthPlace{
				Section: sections[n].ID + "-section", Figure: sections[n].Figure, Measure: name,
				Sex: []string{growth.Girl: "girl", growth.Boy: "boy"}[s], PlotFrame: sheet.GrowthFrame(m, sheet.A4),
			})
			n++
		}
	}
	return w
}

// places rounds to five places, which moves no z-score by a thousandth.
func places(v float64) float64 { return math.Round(v*1e5) / 1e5 }

// hash is the source expression that lets one inline script run and no other (CSP Level 3).
func hash(script template.JS) string {
	sum := sha256.Sum256([]byte(script))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
