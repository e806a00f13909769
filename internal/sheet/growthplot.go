package sheet

import (
	"strconv"

	"wardleaf/internal/drawing"
	"wardleaf/internal/growth"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
)

// A PlotFrame is where the axes of a growth chart lie in its drawing, in mm, and what
// measure stands at bottom and top.
type PlotFrame struct {
	Left   float64 `json:"left"`
	Right  float64 `json:"right"`
	Top    float64 `json:"top"`
	Bottom float64 `json:"bottom"`
	Low    float64 `json:"low"` // kg or cm
	High   float64 `json:"high"`
}

// A growthPlot is the chart of one measure and sex.
type growthPlot struct {
	drawing *drawing.Drawing
	PlotFrame
}

// GrowthFrame returns the axes of the chart of a measure on a page.
func GrowthFrame(m growth.Measure, room measure.Size) PlotFrame {
	a := axes[m]
	w, h := chartSize(room)
	return PlotFrame{Left: 10, Right: w - 10, Top: 6, Bottom: h - 11, Low: float64(a.low) / 100, High: float64(a.high) / 100}
}

func chartSize(room measure.Size) (width, height float64) {
	return tenths(room.Width.Millimetres()), tenths(room.Height.Millimetres() - wordsHeight)
}

// axis says how a measure is ruled: the range, a fine line every fine hundredths, and a
// strong line with its number every strong hundredths.
type axis struct{ low, high, fine, strong int }

var axes = map[growth.Measure]axis{
	growth.Weight: {0, 1050, 10, 50},
	growth.Length: {2800, 7400, 50, 200},
	growth.Head:   {2000, 4800, 50, 100},
}

// wordsHeight is what a page keeps for title, caution, form and source, in mm. It is
// enough in every language.
const wordsHeight = 60

func newGrowthPlot(loc *locale.Locale, m growth.Measure, s growth.Sex, room measure.Size) *growthPlot {
	a := axes[m]
	w, h := chartSize(room)
	d := &drawing.Drawing{Width: w, Height: h}
	p := &growthPlot{d, GrowthFrame(m, room)}
	p.grid(loc, a)
	for _, c := range growth.Centiles {
		p.curve(loc, m, s, c)
	}
	d.Say(drawing.Label{Text: loc.Label(measureLabels[m]) + " (" + units[m] + ")", X: 0.3, Y: 3.6, Size: 3, Bold: true, Colour: drawing.Ink})
	d.Say(drawing.Label{Text: loc.Label("centile"), X: d.Width - 0.3, Y: 3.6, Size: 3, Anchor: drawing.AtRight, Bold: true, Colour: drawing.Ink})
	d.Say(drawing.Label{Text: loc.Label("growth-axis"), X: (p.Left + p.Right) / 2, Y: d.Height - 1.4, Size: 3, Anchor: drawing.AtMiddle, Bold: true, Colour: drawing.Ink})
	return p
}

func tenths(mm float64) float64 { return float64(int(mm*10)) / 10 }

// at returns where an age in days and a measure lie.
func (p *growthPlot) at(days int, value float64) drawing.Point {
	return drawing.Point{
		X: p.Left + float64(days-growth.FirstDay)/float64(growth.LastDay-growth.FirstDay)*(p.Right-p.Left),
		Y: p.Bottom - (value-p.Low)/(p.High-p.Low)*(p.Bottom-p.Top),
	}
}

// term is the day that full term is counted to, by convention: 40 weeks.
const term = 40 * 7

func (p *growthPlot) grid(loc *locale.Locale, a axis) {
	d := p.drawing
	var fine, strong, middle [][2]drawing.Point
	for v := a.low; v <= a.high; v += a.fine {
		y := p.at(0, float64(v)/100).Y
		line := [2]drawing.Point{{X: p.Left, Y: y}, {X: p.Right, Y: y}}
		if v%a.strong != 0 {
			fine = append(fine, line)
			continue
		}
		strong = append(strong, line)
		d.Say(drawing.Label{Text: loc.Decimal(strconv.FormatFloat(float64(v)/100, 'f', -1, 64)), X: p.Left - 1.4, Y: y + 1, Size: 2.9, Anchor: drawing.AtRight, Colour: drawing.Ink})
	}
	for day := growth.FirstDay; day <= growth.LastDay; day++ {
		x := p.at(day, 0).X
		line := [2]drawing.Point{{X: x, Y: p.Top}, {X: x, Y: p.Bottom + 1.2}}
		switch {
		case day == term:
			middle = append(middle, line)
		case day%14 == 0:
			strong = append(strong, line)
		case day%7 == 0:
			fine = append(fine, line)
		default: // a tick for each day
			fine = append(fine, [2]drawing.Point{{X: x, Y: p.Bottom}, {X: x, Y: p.Bottom + 0.7}})
		}
		if day%14 == 0 {
			d.Say(drawing.Label{Text: loc.Number(day / 7), X: x, Y: p.Bottom + 4.6, Size: 2.9, Anchor: drawing.AtMiddle, Bold: day == term, Colour: drawing.Ink})
		}
	}
	d.Rules(drawing.Grid, 0.09, fine...)
	d.Rules(drawing.Grid, 0.2, strong...)
	d.Rules(drawing.Leaf, 0.4, middle...)
	d.Area(drawing.Paint{}, drawing.Leaf, 0.3, drawing.Point{X: p.Left, Y: p.Top}, drawing.Point{X: p.Right, Y: p.Top},
		drawing.Point{X: p.Right, Y: p.Bottom}, drawing.Point{X: p.Left, Y: p.Bottom})
}

// curve draws a centile, told from the others by its line, and its number at the end.
func (p *growthPlot) curve(loc *locale.Locale, m growth.Measure, s growth.Sex, c growth.Centile) {
	var points []drawing.Point
	for day := growth.FirstDay; day <= growth.LastDay; day += 2 {
		if v, ok := growth.Value(m, s, day, c.Z); ok {
			points = append(points, p.at(day, v))
		}
	}
	v, _ := growth.Value(m, s, growth.LastDay, c.Z)
	end := p.at(growth.LastDay, v)
	width, dash := 0.45, []float64(nil)
	switch c.Percent {
	case 50:
		width = 0.8
	case 10, 90:
		width, dash = 0.4, []float64{2.2, 1.2}
	}
	p.drawing.Line(drawing.Ink, width, dash, append(points, end)...)
	p.drawing.Say(drawing.Label{Text: loc.Number(c.Percent), X: end.X + 1.4, Y: end.Y + 1.1, Size: 3.2, Bold: true, Colour: drawing.Ink})
}
