package drawing

import "wardleaf/internal/source"

// An attribute is a name and a value as they stand in the file.
type attribute struct {
	name  string
	value string
	span  source.Span // of name and value
	at    int         // byte offset of the value
}

// scanTag finds the attributes of a start tag, which encoding/xml has accepted,
// because encoding/xml does not say where they are. The tag starts at byte base of
// the file, the element's name ends before byte nameEnd.
func scanTag(tag string, base int) (nameEnd int, as []attribute) {
	i := 0
	skip := func(stop func(c byte) bool) string {
		start := i
		for i < len(tag) && !stop(tag[i]) {
			i++
		}
		return tag[start:i]
	}
	notSpace := func(c byte) bool { return !isSpace(c) }
	endOfName := func(c byte) bool { return isSpace(c) || c == '=' || c == '/' || c == '>' }
	skip(endOfName)
	nameEnd = base + i
	for {
		skip(notSpace)
		start := i
		name := skip(endOfName)
		skip(func(c byte) bool { return c == '"' || c == '\'' })
		if name == "" || i >= len(tag) {
			return nameEnd, as
		}
		quote := tag[i]
		i++
		at := i
		value := skip(func(c byte) bool { return c == quote })
		i++
		as = append(as, attribute{name, value, source.Span{Start: base + start, End: base + i}, base + at})
	}
}
