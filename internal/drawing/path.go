package drawing

import "fmt"

// arity says how many numbers each command of path data takes at a time.
var arity = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// parsePath reads path data by the grammar of SVG 1.1, section 8.3.9.
func parsePath(s string) ([]Segment, *fault) {
	sc := scanner{s: s}
	t := turtle{}
	first := true
	for sc.space(); !sc.done(); sc.space() {
		c := sc.peek()
		command := c &^ 0x20 // upper case
		n, ok := arity[command]
		if !ok {
			sc.fail(sc.i, "a path command is expected here"+sc.notHere(), "use M L H V C S Q T A Z, with as many numbers as each takes")
			break
		}
		if first && command != 'M' {
			sc.fail(sc.i, fmt.Sprintf("the path starts with %c", c), "start it with M and a point")
			break
		}
		sc.i++
		if command == 'Z' {
			t.close()
			t.previous = 'Z'
			continue
		}
		sc.space()
		for again := false; ; again = true {
			v := arguments(&sc, command, n)
			if sc.fault != nil {
				break
			}
			if again && command == 'M' { // 8.3.2: further pairs are lines
				command = 'L'
			}
			t.obey(command, c >= 'a', v)
			if !sc.more() {
				break
			}
			sc.commaSpace()
		}
		first = false
	}
	return t.segments, sc.fault
}

// arguments takes the n numbers of a command.
func arguments(sc *scanner, command byte, n int) (v [7]float64) {
	for i := range n {
		if i > 0 {
			sc.commaSpace()
		}
		at := sc.i
		switch {
		case command == 'A' && (i == 3 || i == 4):
			v[i] = sc.flag()
		default:
			v[i] = sc.number()
		}
		if command == 'A' && i < 2 && at < len(sc.s) && sc.s[at] == '-' {
			sc.fail(at, "the radius of an arc is negative", "write it without the minus sign")
		}
	}
	return v
}

// A turtle obeys path commands.
type turtle struct {
	pen
	previous byte  // command
	control  Point // the last control point of the previous curve
}

// obey carries out one command; relative points count from where the turtle is.
func (t *turtle) obey(command byte, relative bool, v [7]float64) {
	var origin Point
	if relative {
		origin = t.at
	}
	p := func(i int) Point { return Point{origin.X + v[i], origin.Y + v[i+1]} }
	here := t.at
	// 8.3.6, 8.3.7: a smooth curve goes on in the direction of a like curve before it.
	smooth := func(like string) Point {
		if t.previous == like[0] || t.previous == like[1] {
			return Point{2*here.X - t.control.X, 2*here.Y - t.control.Y}
		}
		return here
	}
	switch command {
	case 'M':
		t.moveTo(p(0))
	case 'L':
		t.lineTo(p(0))
	case 'H':
		t.lineTo(Point{origin.X + v[0], here.Y})
	case 'V':
		t.lineTo(Point{here.X, origin.Y + v[0]})
	case 'C':
		t.control = p(2)
		t.cubicTo(p(0), t.control, p(4))
	case 'S':
		c1 := smooth("CS")
		t.control = p(0)
		t.cubicTo(c1, t.control, p(2))
	case 'Q':
		t.control = p(0)
		t.quadTo(t.control, p(2))
	case 'T':
		t.control = smooth("QT")
		t.quadTo(t.control, p(0))
	case 'A':
		t.arcTo(arc{v[0], v[1], v[2], v[3] == 1, v[4] == 1}, p(5))
	}
	t.previous = command
}
