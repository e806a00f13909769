package sheet

import (
	"strconv"

	"wardleaf/internal/drawing"
	"wardleaf/internal/growth"
	"wardleaf/internal/locale"
	"wardleaf/internal/measure"
)

// A growthPlot is the chart of one measure and sex: where its axes lie, in mm.
type growthPlot struct {
	drawing                  *drawing.Drawing
	left, right, top, bottom float64 // of the plot
	low, high                float64 // of the measure, at bottom and top
}

// axis says how a measure is ruled: the range, a fine line every fine hundredths, and a
// strong line with its number every strong hundredths.
type axis struct{ low, high, fine, strong int }

var axes = map[growth.Measure]axis{
	growth.Weight: {0, 1050, 10, 50},
	growth.Length: {2800, 7400, 50, 200},
	growth.Head:   {2000, 4800, 50, 100},
}

// Share of the height of a page that a chart takes; the rest is for words.
const chartShare = 0.775

func newGrowthPlot(loc *locale.Locale, m growth.Measure, s growth.Sex, room measure.Size) *growthPlot {
	a := axes[m]
	w, h := room.Width.Millimetres(), room.Height.Millimetres()*chartShare
	d := &drawing.Drawing{Width: tenths(w), Height: tenths(h)}
	p := &growthPlot{drawing: d, left: 10, right: d.Width - 10, top: 6, bottom: d.Height - 11, low: float64(a.low) / 100, high: float64(a.high) / 100}
	p.grid(loc, a)
	for _, c := range growth.Centiles {
		p.curve(loc, m, s, c)
	}
	d.Say(drawing.Label{Text: loc.Label(measureLabels[m]) + " (" + units[m] + ")", X: 0, Y: 3.4, Size: 3, Bold: true, Colour: drawing.Ink})
	d.Say(drawing.Label{Text: loc.Label("centile"), X: d.Width, Y: 3.4, Size: 3, Anchor: drawing.AtRight, Bold: true, Colour: drawing.Ink})
	d.Say(drawing.Label{Text: loc.Label("growth-axis"), X: (p.left + p.right) / 2, Y: d.Height - 1.4, Size: 3, Anchor: drawing.AtMiddle, Bold: true, Colour: drawing.Ink})
	return p
}

func tenths(mm float64) float64 { return float64(int(mm*10)) / 10 }

// at returns where an age in days and a measure lie.
func (p *growthPlot) at(days int, value float64) drawing.Point {
	return drawing.Point{
		X: p.left + float64(days-growth.FirstDay)/float64(growth.LastDay-growth.FirstDay)*(p.right-p.left),
		Y: p.bottom - (value-p.low)/(p.high-p.low)*(p.bottom-p.top),
	}
}

// term is the day that full term is counted to, by convention: 40 weeks.
const term = 40 * 7

func (p *growthPlot) grid(loc *locale.Locale, a axis) {
	d := p.drawing
	for day := growth.FirstDay; day <= growth.LastDay; day++ {
		x := p.at(day, 0).X
		switch {
		case day == term:
			d.Line(drawing.Leaf, 0.4, nil, drawing.Point{X: x, Y: p.top}, drawing.Point{X: x, Y: p.bottom + 1.2})
		case day%14 == 0:
			d.Line(drawing.Grid, 0.2, nil, drawing.Point{X: x, Y: p.top}, drawing.Point{X: x, Y: p.bottom + 1.2})
		case day%7 == 0:
			d.Line(drawing.Grid, 0.09, nil, drawing.Point{X: x, Y: p.top}, drawing.Point{X: x, Y: p.bottom + 1.2})
		default:
			d.Line(drawing.Grid, 0.09, nil, drawing.Point{X: x, Y: p.bottom}, drawing.Point{X: x, Y: p.bottom + 0.7})
		}
		if day%14 == 0 {
			d.Say(drawing.Label{Text: loc.Number(day / 7), X: x, Y: p.bottom + 4.6, Size: 2.9, Anchor: drawing.AtMiddle, Bold: day == term, Colour: drawing.Ink})
		}
	}
	for v := a.low; v <= a.high; v += a.fine {
		y := p.at(0, float64(v)/100).Y
		width := 0.09
		if v%a.strong == 0 {
			width = 0.2
			d.Say(drawing.Label{Text: loc.Decimal(strconv.FormatFloat(float64(v)/100, 'f', -1, 64)), X: p.left - 1.4, Y: y + 1, Size: 2.9, Anchor: drawing.AtRight, Colour: drawing.Ink})
		}
		d.Line(drawing.Grid, width, nil, drawing.Point{X: p.left, Y: y}, drawing.Point{X: p.right, Y: y})
	}
	d.Area(drawing.Paint{}, drawing.Leaf, 0.3, drawing.Point{X: p.left, Y: p.top}, drawing.Point{X: p.right, Y: p.top},
		drawing.Point{X: p.right, Y: p.bottom}, drawing.Point{X: p.left, Y: p.bottom})
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
	width, dash := 0.35, []float64(nil)
	switch c.Percent {
	case 50:
		width = 0.7
	case 10, 90:
		dash = []float64{2.2, 1.2}
	}
	p.drawing.Line(drawing.Ink, width, dash, append(points, end)...)
	p.drawing.Say(drawing.Label{Text: loc.Number(c.Percent), X: end.X + 1.4, Y: end.Y + 1.1, Size: 3.2, Bold: true, Colour: drawing.Ink})
}
