package load

import (
	"bytes"
	"fmt"
	"path"
	"regexp"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// basisLine is a block's ID, the digest of the source block it was made from, and that
// of the translated block itself, which may be lacking.
var basisLine = regexp.MustCompile(`^([a-z]+(?:-[a-z]+)*(?:-[1-9][0-9]*)?(?:\.(?:[1-9][0-9]*|heading))*) ([0-9a-f]{12})(?: ([0-9a-f]{12}))?$`)

const (
	maxBasis      = 256 << 10 // bytes
	maxBasisLines = 5000
	maxBasisLine  = 200 // bytes
)

// basis reads what the blocks of a translation were made from. A translation may have
// no such file, and then the result is nil. What is wrong with it stops that language.
func (r *reader) basis(module, lang string) *pack.Basis {
	s := subject{r: r, lang: lang, module: module}
	if !s.open(path.Join(module, lang+".basis"), maxBasis, "") {
		return nil
	}
	return s.basis()
}

func (s subject) basis() *pack.Basis {
	out := &pack.Basis{File: s.file, Units: map[string]pack.BasisUnit{}}
	mend := fmt.Sprintf("compare the translation with the source, then run: wardleaf basis %s %s", s.lang, s.module)
	const why = "What has changed since the translation was made could not be told, and old advice would be printed as current."
	for n, at := 1, 0; at < len(s.file.Bytes); n++ {
		line := s.file.Bytes[at:]
		next := len(s.file.Bytes)
		if i := bytes.IndexByte(line, '\n'); i >= 0 {
			line, next = line[:i], at+i+1
		}
		line = bytes.TrimSuffix(line, []byte("\r"))
		span := source.Span{Start: at, End: at + len(line)}
		at = next
		if n > maxBasisLines {
			s.say("basis-malformed", span, fmt.Sprintf("the file has more than %d lines, and the rest was not read", maxBasisLines), why, mend)
			return out
		}
		if len(line) == 0 || line[0] == '#' {
			continue
		}
		m := [][]byte(nil)
		if len(line) <= maxBasisLine {
			m = basisLine.FindSubmatch(line)
		}
		if m == nil {
			s.say("basis-malformed", span, "this line is not the name of a block, and one or two times a blank and 12 hexadecimal digits", why, mend)
			return out // one such line, such as a mark of a conflict, seldom comes alone
		}
		id := string(m[1])
		if first, twice := out.Units[id]; twice {
			s.say("basis-malformed", span, fmt.Sprintf("%s stands here twice", id), why, mend)
			last := &s.r.findings[len(s.r.findings)-1]
			last.Related = []finding.Related{{Place: finding.Place{File: s.file, Span: first.Span}, Text: "first written here"}}
			continue
		}
		out.Units[id] = pack.BasisUnit{Digest: string(m[2]), Own: string(m[3]), Span: span}
	}
	return out
}
