package piece

import "wardleaf/internal/typeset"

// attendance is a sheet on which those who come to a session sign.
func attendance(j *Job) (*Result, error) {
	loc := j.Locale
	label := loc.Label("attendance")
	p, err := j.work(11, label)
	if err != nil {
		return nil, err
	}
	w := p.frame.Width()
	strips := p.s.Text(label, typeset.TitleLook, 0, w, p.root.Add("H1"))
	strips = append(strips, p.s.FormLine([]typeset.Field{{Label: loc.Label("session"), Share: 0.5}, {Label: loc.Label("trainer"), Share: 0.3}, {Label: loc.Label("date"), Share: 0.2}}, w))
	strips = append(strips, p.shortCaution(), p.s.Space(1))
	table := typeset.RuledTable{
		Columns: []float64{0.07, 0.37, 0.24, 0.12, 0.2},
		Head: []typeset.Cell{typeset.Head("№"), typeset.Head(loc.Label("name")), typeset.Head(loc.Label("ward-or-village")),
			typeset.Head(loc.Label("score")), typeset.Head(loc.Label("signed"))},
		Row: 2 * p.s.Grid,
	}
	room := p.frame.Height() - typeset.Height(strips) - 3*p.s.Grid
	var rows [][]typeset.Cell
	for i := 0; i < int(room/(2*p.s.Grid+p.s.Grid/4)); i++ {
		rows = append(rows, []typeset.Cell{typeset.Plain(loc.Number(i + 1)), {}, {}, {}, {}})
	}
	strips = append(strips, p.s.Table(table, rows, w, p.root)...)
	return p.done(label, strips, j.Modules)
}
