package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"wardleaf/internal/lesson"
	"wardleaf/internal/locale"
	"wardleaf/internal/sewing"
)

// carrierPattern is the pattern of the carrier: a page to check the print, the pieces
// small with their sizes, and the pieces at true size over sheets of paper.
var carrierPattern = &Sheet{
	Name:   "carrier-pattern",
	About:  "the pattern of a simple carrier at true size, over sheets of paper to glue",
	Inputs: patternInputs(),
	Whole:  true,
	Exact:  true,

	Numbers: proofNumbers,
}

// proofNumbers are those of the proof of a seam.
var proofNumbers = []string{"proof-load", "proof-time"}

func init() { carrierPattern.Make = makeCarrierPattern }

// aboutMeasures says in English what each measure of sewing.Ranges is.
var aboutMeasures = map[string]string{
	"chest": "adult: round the chest under the arms, CM",
	"drop":  "adult: from the nape down to the upper corner of the carrier, CM",
	"back":  "baby: from the seat up to just under the ear, CM",
	"hips":  "baby: round the hips with nappy, CM",
	"thigh": "baby: round the thigh, CM",
	"head":  "baby: round the head, CM",
	"hem":   "hem of body and cap, CM",
	"seam":  "beside the seams of the cap, CM",
}

// patternInputs are the measures and allowances that the pieces are drafted from.
func patternInputs() []Input {
	m := sewing.Default()
	var out []Input
	for _, r := range sewing.Ranges {
		out = append(out, Input{Name: r.Name, Value: "CM", About: aboutMeasures[r.Name], Default: r.Of(&m).Centimetres()})
	}
	return append(out,
		Input{Name: "shrink-along", Value: "PERCENT", About: "how much unwashed cloth shrinks along the grain, PERCENT", Default: "0"},
		Input{Name: "shrink-across", Value: "PERCENT", About: "how much unwashed cloth shrinks across the grain, PERCENT", Default: "0"})
}

// centimetres reads a length as it is typed: whole or with a decimal point.
func centimetres(name, value string) (sewing.Length, error) {
	tenths, err := decimal(name, value, "centimetres", 4)
	return sewing.Length(tenths), err
}

// option names the option that an error of package sewing begins with as it is typed.
func option(err error) error { return fmt.Errorf("--%w", err) }

// decimal reads a number with at most so many decimals as a whole number of the last one.
func decimal(name, value, unit string, decimals int) (int64, error) {
	whole, part, _ := strings.Cut(value, ".")
	part = strings.TrimRight(part, "0")
	n, err := strconv.ParseUint(whole+part+strings.Repeat("0", max(0, decimals-len(part))), 10, 40)
	if err != nil || whole == "" || len(part) > decimals {
		return 0, fmt.Errorf("--%s is %q: it must be a number of %s, such as 12 or 12.5, or nothing can be drawn from it", name, value, unit)
	}
	return int64(n), nil
}

// measures reads the inputs.
func (j *Job) measures(s *Sheet) (sewing.Measures, error) {
	m := sewing.Default()
	for _, r := range sewing.Ranges {
		v, err := centimetres(r.Name, j.Value(s, r.Name))
		if err != nil {
			return m, err
		}
		*r.Of(&m) = v
	}
	for name, to := range map[string]*int{"shrink-along": &m.ShrinkAlong, "shrink-across": &m.ShrinkAcross} {
		v, err := decimal(name, strings.TrimSuffix(j.Value(s, name), "%"), "percent", 1)
		if err != nil {
			return m, err
		}
		*to = int(v)
	}
	return m, nil
}

func makeCarrierPattern(j Job) (*Content, error) {
	m, err := j.measures(carrierPattern)
	if err != nil {
		return nil, err
	}
	p, err := sewing.Draft(m)
	if err != nil {
		return nil, option(err)
	}
	loc := j.Locale
	t, landscape := fewestTiles(p, j.Room)
	c := &Content{Title: loc.Label("carrier-pattern"), Caution: loc.Label("sewing-caution")}
	c.Pages = append(c.Pages,
		Page{
			Title: c.Title + ": " + loc.Label("pattern-check"), Apart: true,
			Blocks: []lesson.Block{
				numbered(
					loc.Label("pattern-check-print", locale.With("Percent", percent(loc, 1000))),
					loc.Label("pattern-check-measure", locale.With("Size", loc.Number(checkSide))),
					loc.Label("pattern-check-wrong"),
					loc.Label("pattern-check-join"),
					loc.Label("pattern-check-again"),
				),
				Chart(checkChart(loc, t), loc.Label("pattern-check-alt", locale.With("Size", loc.Number(checkSide))), nil),
			},
		},
		Page{
			Title: c.Title + ": " + loc.Label("pattern-pieces"),
			Blocks: []lesson.Block{
				bullets(sewingRules(j)...),
				Chart(overview(loc, p), loc.Label("pattern-pieces-alt"), nil),
				Table([]float64{0.34, 0.18, 0.24, 0.24}, pieceTable(loc, p), true, 1, 2, 3),
				Text(loc.Label("pattern-upper-how") + " " + loc.Label("sewing-practice")),
				Table([]float64{0.36, 0.13, 0.36, 0.15}, measureTable(loc, p), true, 1, 3),
			},
		})
	for i := range t.Tiles {
		c.Pages = append(c.Pages, Page{
			Title: c.Title + ": " + sheetOf(loc, i, t), Landscape: landscape, Bare: true, Apart: true,
			Blocks: []lesson.Block{Chart(tileChart(loc, p, t, i),
				loc.Label("pattern-tile-alt", locale.With("Sheet", loc.Number(i+1)), locale.With("Sheets", loc.Number(len(t.Tiles)))), nil)},
		})
	}
	return c, nil
}

// sewingRules are the rules that every sewing sheet says.
func sewingRules(j Job) []string {
	loc := j.Locale
	out := []string{loc.Label("sewing-airway")}
	load, minutes := j.Pack.Numbers["proof-load"], j.Pack.Numbers["proof-time"]
	if load != nil && minutes != nil {
		out = append(out, loc.Label("sewing-proof", locale.With("Load", loc.Decimal(load.Amount)), locale.With("Minutes", loc.Decimal(minutes.Amount))))
	}
	return append(out, loc.Label("sewing-sleep"), loc.Label("sewing-retire"))
}

var pieceLabels = map[sewing.Kind]string{sewing.Body: "piece-body", sewing.Belt: "piece-belt", sewing.Cap: "piece-cap"}

// cm writes a length in centimetres in the language's digits, with its unit.
func cm(loc *locale.Locale, l sewing.Length) string {
	return loc.Label("centimetres", locale.With("Amount", loc.Decimal(l.Centimetres())))
}

// percent writes tenths of a percent.
func percent(loc *locale.Locale, tenths int) string {
	return loc.Decimal(strconv.FormatFloat(float64(tenths)/10, 'f', -1, 64)) + "\u00a0%"
}

// sizeOf writes the length and width of a piece.
func sizeOf(loc *locale.Locale, length, width sewing.Length) string {
	return loc.Label("size-cm", locale.With("Length", loc.Decimal(length.Centimetres())), locale.With("Width", loc.Decimal(width.Centimetres())))
}

// longAndShort returns a piece's sides, the longer first, as people name a piece.
func longAndShort(r sewing.Rect) (sewing.Length, sewing.Length) {
	return max(r.Width, r.Length), min(r.Width, r.Length)
}

func pieceTable(loc *locale.Locale, p *sewing.Pattern) [][]string {
	out := [][]string{{loc.Label("piece"), loc.Label("piece-count"), loc.Label("length"), loc.Label("width")}}
	for i, r := range p.Rects() {
		long, short := longAndShort(r)
		out = append(out, []string{loc.Label(pieceLabels[sewing.Kinds[i]]), loc.Number(p.Pieces[i].Count), cm(loc, long), cm(loc, short)})
	}
	return out
}

func measureTable(loc *locale.Locale, p *sewing.Pattern) [][]string {
	m := p.Measures
	var all [][2]string
	for _, r := range sewing.Ranges {
		all = append(all, [2]string{loc.Label("pattern-" + r.Name), cm(loc, *r.Of(&m))})
	}
	all = append(all,
		[2]string{loc.Label("pattern-shrink"), percent(loc, m.ShrinkAlong) + " · " + percent(loc, m.ShrinkAcross)},
		[2]string{loc.Label("pattern-pouch"), cm(loc, p.Pouch)},
		[2]string{loc.Label("pattern-leg"), sizeOf(loc, p.LegAcross, p.LegUp)},
		[2]string{loc.Label("pattern-loop"), cm(loc, p.Loop)})
	// Two measures in a row, so that the page holds them all.
	out := [][]string{{loc.Label("pattern-measures"), "", "", ""}}
	half := (len(all) + 1) / 2
	for i := range half {
		out = append(out, []string{all[i][0], all[i][1], all[half+i][0], all[half+i][1]})
	}
	return out
}
