package drawing

import "testing"

func TestSVG(t *testing.T) {
	d := &Drawing{Width: 100, Height: 50, Shapes: []Shape{
		{Path: []Segment{m(0.5, -0.25), l(10, 20.125), c(1, 2, -3, 4, 5, -6), {Op: Close}}, Fill: Paint{0x11, 0x22, 0x33, true}, EvenOdd: true},
		{Path: []Segment{m(1, 1), l(2, 2)}, Stroke: Paint{1, 2, 3, true}, StrokeWidth: 1.5, Cap: RoundCap, Join: BevelJoin, Dash: []float64{1, 0.5}},
		{Key: &Key{Text: "3", X: 10, Y: 20, Size: 8, Bold: true, Colour: Paint{Set: true}}},
	}}
	shapes := `<path d="M.5-.25L10 20.13C1 2-3 4 5-6Z" fill="#123" fill-rule="evenodd"/>
<path d="M1 1L2 2" fill="none" stroke="#010203" stroke-width="1.5" stroke-linecap="round" stroke-linejoin="bevel" stroke-dasharray="1 .5"/>
`
	tests := []struct {
		name   string
		labels Labels
		want   string
	}{
		{"named, with the digits of the language",
			Labels{ID: "wrapping-2", Title: `हाथ "<&>"`, Key: func(string) string { return "३" }},
			`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50" role="img" aria-labelledby="wrapping-2-title">
<title id="wrapping-2-title">हाथ &#34;&lt;&amp;&gt;&#34;</title>
` + shapes + `<text x="10" y="20" font-size="8" text-anchor="middle" font-weight="bold" fill="#000">३</text>
</svg>
`},
		{"described",
			Labels{ID: `a"b`, Title: "Title", Description: "More\x00", Key: func(string) string { return "<" }},
			`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50" role="img" aria-labelledby="a&#34;b-title" aria-describedby="a&#34;b-desc">
<title id="a&#34;b-title">Title</title>
<desc id="a&#34;b-desc">More` + "\ufffd" + `</desc>
` + shapes + `<text x="10" y="20" font-size="8" text-anchor="middle" font-weight="bold" fill="#000">&lt;</text>
</svg>
`},
		{"for the eye alone", Labels{},
			`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50" aria-hidden="true">
` + shapes + `<text x="10" y="20" font-size="8" text-anchor="middle" font-weight="bold" fill="#000">3</text>
</svg>
`},
	}
	for _, tt := range tests {
		if got := string(d.SVG(tt.labels)); got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}
