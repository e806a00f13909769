package sewing

// Kind names one of the three pieces.
type Kind uint8

// The pieces of a carrier, in the order they are cut.
const (
	Body Kind = iota
	Belt
	Cap
)

// Kinds lists the pieces in order, and Each how many of each one carrier needs.
var (
	Kinds = [3]Kind{Body, Belt, Cap}
	Each  = [3]int{1, 3, 1}
)

// Name returns what the piece is called in labels and data.
func (k Kind) Name() string { return [...]string{"body", "belt", "cap"}[k] }

// Style says what a line on a piece means.
type Style uint8

// The lines of a pattern.
const (
	Cut   Style = iota // cut along it
	Sew                // rows of stitches
	Turn               // an edge is turned in up to here
	Fold               // the piece is folded here
	Grain              // the threads of the cloth run this way
	Notch              // a mark on the edge
	Place              // another piece lies here
)

// A Mark is one line of a piece with its meaning.
type Mark struct {
	Style Style
	Path
}

// A Piece is one shape to cut. Its y axis is the grain: the piece lies with it along
// the length of the cloth. Its corner is at 0, 0.
type Piece struct {
	Kind          Kind
	Count         int    // to cut for one carrier
	Width, Length Length // across and along the grain
	Marks         []Mark // the first is the cutting line, closed
}

// A Join is two lines that are sewn to each other and so must be equally long.
type Join struct {
	Name string
	A, B Path
}

// A Pattern is all the pieces of one carrier and what is joined to what.
type Pattern struct {
	Measures Measures
	Pieces   [3]Piece // by Kind
	Joins    []Join
	// Sizes that steps and sheets name, as drawn: shrinkage is in them.
	Pouch, LegAcross, LegUp, Back Length
	Loop                          Length // finished neck loop from corner to corner
}

// Draft returns the pattern for the measures, or says why there is none.
func Draft(m Measures) (*Pattern, error) {
	if err := m.Check(); err != nil {
		return nil, err
	}
	d := m.draft()
	p := &Pattern{Measures: m}
	p.body(d)
	p.belt(d)
	p.cap(d)
	along, across := grow(m.ShrinkAlong), grow(m.ShrinkAcross)
	wash := func(q Point) Point { return Point{across(q.X), along(q.Y)} }
	for i := range p.Pieces {
		pc := &p.Pieces[i]
		pc.Kind, pc.Count = Kinds[i], Each[i]
		pc.Width, pc.Length = across(pc.Width), along(pc.Length)
		for j := range pc.Marks {
			pc.Marks[j].Path = pc.Marks[j].Map(wash)
		}
	}
	for i := range p.Joins {
		j := &p.Joins[i]
		j.A, j.B = j.A.Map(wash), j.B.Map(wash)
	}
	p.Pouch, p.LegAcross, p.LegUp, p.Back = along(d.pouch), across(d.leg), along(d.leg), along(m.Back)
	p.Loop = d.beltLength - 2*lap
	return p, nil
}

// grow returns how long a length must be cut to be that long after washing: cloth
// that loses s tenths of a percent keeps (1000-s)/1000 of its length. Rounded up.
func grow(s int) func(Length) Length {
	keep := Length(1000 - s)
	return func(l Length) Length { return (l*1000 + keep - 1) / keep }
}

func (pc *Piece) mark(s Style, p Path) { pc.Marks = append(pc.Marks, Mark{s, p}) }

// grain draws the arrow of the grain, pointed at both ends.
func (pc *Piece) grain(x, from, to Length) {
	const head = 3 * MM
	pc.mark(Grain, line(x, from, x, to))
	for _, end := range []struct{ y, back Length }{{from, from + 2*head}, {to, to - 2*head}} {
		p := Path{Start: Point{x - head, end.back}}
		p.to(x, end.y)
		p.to(x+head, end.back)
		pc.mark(Grain, p)
	}
}

func rectangle(x, y, w, h Length) Path {
	p := Path{Start: Point{x, y}}
	p.to(x+w, y)
	p.to(x+w, y+h)
	p.to(x, y+h)
	p.to(x, y)
	return p
}
