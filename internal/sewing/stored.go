package sewing

import (
	_ "embed" // the stored sections
	"fmt"
	"strconv"
	"strings"
	"sync"
)

// storedText holds what the search finds for the default pieces on the widths that cloth
// is mostly sold in. The search takes seconds, and pages and lessons show these plans.
// TestStored makes it again: a line for each width, print and number of carriers.
//
//go:embed stored.txt
var storedText string

// SoldWidths are the widths with stored sections.
var SoldWidths = []Length{70 * CM, 90 * CM, 110 * CM, 140 * CM}

var stored = sync.OnceValue(func() map[Order]*Section {
	out := map[Order]*Section{}
	for line := range strings.Lines(storedText) {
		var o Order
		var width, length Length
		var cloth, code string
		if _, err := fmt.Sscan(line, &width, &cloth, &o.Count, &length, &code); err != nil {
			panic("stored sections: " + err.Error())
		}
		o.Width, o.OneWay = width*CM, cloth == "one-way"
		out[o] = &Section{Carriers: o.Count, Times: 1, Length: length * CM}
		if code != "none" {
			out[o].Placed = decode(code)
		} else {
			out[o] = nil
		}
	}
	return out
})

// letters stand for the kinds in stored plans; the small one is a cap lying across.
const letters = "BTCc"

// Code writes where pieces lie, in whole centimetres: a letter, then two digits to the
// base 36 across the cloth and two along it. It returns "" when a place is no whole
// centimetre or too far.
func (s *Section) Code() string {
	var b strings.Builder
	for _, q := range s.Placed {
		k := int(q.Kind)
		if q.Turned {
			k++
		}
		x, y := int64(q.X/CM), int64(q.Y/CM)
		if q.X%CM != 0 || q.Y%CM != 0 || x >= 36*36 || y >= 36*36 {
			return ""
		}
		b.WriteByte(letters[k])
		for _, v := range []int64{x, y} {
			b.WriteString(strconv.FormatInt(v/36, 36) + strconv.FormatInt(v%36, 36))
		}
	}
	return b.String()
}

// decode reads what Code has written, for the default pieces.
func decode(code string) []Placed {
	sizes := defaultRects()
	var out []Placed
	for ; len(code) >= 5; code = code[5:] {
		k := strings.IndexByte(letters, code[0])
		x, _ := strconv.ParseInt(code[1:3], 36, 64)
		y, _ := strconv.ParseInt(code[3:5], 36, 64)
		q := Placed{Kind: Kind(min(k, int(Cap))), Turned: k > int(Cap), X: Length(x) * CM, Y: Length(y) * CM}
		q.Width, q.Length = sizes[q.Kind].Width, sizes[q.Kind].Length
		if q.Turned {
			q.Width, q.Length = q.Length, q.Width
		}
		out = append(out, q)
	}
	return out
}

var defaultRects = sync.OnceValue(func() [3]Rect {
	p, err := Draft(Default())
	if err != nil {
		panic(err)
	}
	return p.Rects()
})
