package drawing

import (
	"slices"
	"strconv"
	"strings"
)

// A style is how an element is painted and placed. A child inherits all of it.
type style struct {
	matrix  matrix
	fill    Paint
	evenOdd bool
	stroke  Paint
	width   float64 // before the matrix
	cap     Cap
	join    Join
	dash    []float64 // before the matrix; nil is solid
}

// initial is the style of SVG 1.1, sections 11.3 and 11.4, before anything is said.
var initial = style{matrix: identity, fill: Paint{Set: true}, width: 1}

// styleAttributes may stand on every element.
var styleAttributes = []string{"fill", "fill-rule", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-dasharray"}

// set applies one attribute; an attribute that is not of a style changes nothing.
func (st *style) set(name, value string) (f *fault) {
	switch name {
	case "transform":
		var m matrix
		if m, f = parseTransform(value); f == nil {
			st.matrix = st.matrix.times(m)
			if st.matrix.scale() == 0 {
				f = whole(value, "the transform leaves nothing to see", "scale by numbers other than 0")
			}
		}
	case "fill":
		st.fill, f = paint(value)
	case "stroke":
		st.stroke, f = paint(value)
	case "fill-rule":
		var i int
		i, f = choice(value, []string{"nonzero", "evenodd"})
		st.evenOdd = i == 1
	case "stroke-width":
		if st.width, f = number(value); f == nil && st.width < 0 {
			f = whole(value, "the line width is negative", "write 0 or more")
		}
	case "stroke-linecap":
		var i int
		i, f = choice(value, capNames)
		st.cap = Cap(i)
	case "stroke-linejoin":
		var i int
		i, f = choice(value, joinNames)
		st.join = Join(i)
	case "stroke-dasharray":
		st.dash, f = dashes(value)
	}
	return f
}

// whole is a fault of a whole value.
func whole(value, what, mend string) *fault { return &fault{0, len(value), what, mend} }

// choice returns the index of the word that value is.
func choice(value string, words []string) (int, *fault) {
	i := slices.Index(words, strings.TrimSpace(value))
	if i < 0 {
		return 0, whole(value, "this value is unknown here", "write "+strings.Join(words, " or "))
	}
	return i, nil
}

// paint reads none, black, white, #rgb or #rrggbb.
func paint(value string) (Paint, *fault) {
	s := strings.TrimSpace(value)
	switch s {
	case "none":
		return Paint{}, nil
	case "black":
		s = "#000"
	case "white":
		s = "#fff"
	}
	bad := whole(value, "this is not a colour we can print", "write none, black, white, #rgb or #rrggbb")
	hex, ok := strings.CutPrefix(s, "#")
	if ok && len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	if !ok || len(hex) != 6 {
		return Paint{}, bad
	}
	v, err := strconv.ParseUint(hex, 16, 32)
	if err != nil {
		return Paint{}, bad
	}
	return Paint{uint8(v >> 16), uint8(v >> 8), uint8(v), true}, nil
}

// maxDashes bounds the lengths of one dash pattern.
const maxDashes = 16

// dashes reads a dash pattern and repeats it when its count is odd.
func dashes(value string) ([]float64, *fault) {
	if strings.TrimSpace(value) == "none" {
		return nil, nil
	}
	vs, f := numbers(value)
	if f != nil {
		return nil, f
	}
	if len(vs) == 0 {
		return nil, whole(value, "the dash pattern is empty", "write none, or the lengths of lines and gaps")
	}
	if slices.Min(vs) < 0 {
		return nil, whole(value, "a length of the dash pattern is negative", "write 0 or more")
	}
	if len(vs)%2 == 1 {
		vs = append(vs, vs...)
	}
	if len(vs) > maxDashes {
		return nil, whole(value, "the dash pattern is too long", "keep it to 8 lengths")
	}
	if slices.Max(vs) == 0 { // 11.4: a solid line
		return nil, nil
	}
	return vs, nil
}
