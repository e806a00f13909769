package drawing

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// maxNumber bounds every number and every coordinate.
const maxNumber = 1e5

// A fault is what is wrong inside the value of an attribute.
type fault struct {
	start, end int // bytes of the value
	what, mend string
}

// A scanner takes numbers and separators from the value of an attribute. After its
// first fault it finds nothing more.
type scanner struct {
	s     string
	i     int
	fault *fault
}

func (sc *scanner) done() bool { return sc.fault != nil || sc.i >= len(sc.s) }

// peek returns the next byte, or 0.
func (sc *scanner) peek() byte {
	if sc.done() {
		return 0
	}
	return sc.s[sc.i]
}

// fail records the first fault, from byte start to the end of the character at sc.i.
func (sc *scanner) fail(start int, what, mend string) {
	if sc.fault == nil {
		_, n := utf8.DecodeRuneInString(sc.s[sc.i:])
		sc.fault = &fault{start, sc.i + n, what, mend}
	}
}

// space passes over white space.
func (sc *scanner) space() {
	for isSpace(sc.peek()) {
		sc.i++
	}
}

// commaSpace passes over what may stand between two numbers: white space with at most one comma.
func (sc *scanner) commaSpace() {
	sc.space()
	if sc.peek() == ',' {
		sc.i++
		sc.space()
	}
}

// more says whether a further number follows, after a separator or at once.
func (sc *scanner) more() bool {
	at := sc.i
	sc.commaSpace()
	c := sc.peek()
	sc.i = at
	return isDigit(c) || c == '.' || c == '+' || c == '-'
}

// number takes one number: sign, digits, point and exponent as in SVG 1.1 section 8.3.9.
func (sc *scanner) number() float64 {
	start := sc.i
	if c := sc.peek(); c == '+' || c == '-' {
		sc.i++
	}
	digits := sc.digits()
	if sc.peek() == '.' {
		sc.i++
		digits += sc.digits()
	}
	if digits == 0 {
		sc.i = start
		sc.fail(start, "a number is expected here"+sc.notHere(), "write a number such as 12 or -3.5")
		return 0
	}
	if c := sc.peek(); c == 'e' || c == 'E' {
		at := sc.i
		sc.i++
		if c := sc.peek(); c == '+' || c == '-' {
			sc.i++
		}
		if sc.digits() == 0 {
			sc.i = at // the letter belongs to what follows
		}
	}
	if sc.fault != nil {
		return 0
	}
	v, err := strconv.ParseFloat(sc.s[start:sc.i], 64)
	if err != nil || math.Abs(v) > maxNumber {
		sc.fault = &fault{start, sc.i, "this number is too large", "draw within 100000 units of 0"}
		return 0
	}
	return v
}

func (sc *scanner) digits() int {
	n := 0
	for isDigit(sc.peek()) {
		sc.i++
		n++
	}
	return n
}

// flag takes a 0 or 1, which needs no separator after it.
func (sc *scanner) flag() float64 {
	c := sc.peek()
	if c != '0' && c != '1' {
		sc.fail(sc.i, "a flag of an arc is expected here"+sc.notHere(), "write 0 or 1")
		return 0
	}
	sc.i++
	return float64(c - '0')
}

// notHere names the character that stands where something else should.
func (sc *scanner) notHere() string {
	if sc.i >= len(sc.s) {
		return ", not the end"
	}
	r, _ := utf8.DecodeRuneInString(sc.s[sc.i:])
	return fmt.Sprintf(", not %q", r)
}

// numbers reads a whole value that is a list of numbers.
func numbers(s string) ([]float64, *fault) {
	sc := scanner{s: s}
	var vs []float64
	for sc.space(); !sc.done(); sc.space() {
		if len(vs) > 0 {
			sc.commaSpace()
		}
		vs = append(vs, sc.number())
		sc.end()
	}
	return vs, sc.fault
}

// number reads a whole value that is one number.
func number(s string) (float64, *fault) {
	sc := scanner{s: s}
	sc.space()
	v := sc.number()
	sc.end()
	sc.space()
	if !sc.done() {
		sc.fail(sc.i, "one number is expected, and more follows", "keep one number")
	}
	return v, sc.fault
}

// end refuses a unit after a number.
func (sc *scanner) end() {
	if c := sc.peek(); c|0x20 >= 'a' && c|0x20 <= 'z' || c == '%' {
		sc.fail(sc.i, "the number has a unit, "+unit(sc.s[sc.i:]), "write the number alone: it counts drawing units")
	}
}

// unit returns the word that s begins with.
func unit(s string) string {
	if i := strings.IndexFunc(s, func(r rune) bool { return r != '%' && (r|0x20 < 'a' || r|0x20 > 'z') }); i > 0 {
		s = s[:i]
	}
	return strconv.Quote(s[:min(len(s), 12)])
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }
