package exchange

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

// Limits of a PO file.
const (
	maxPOLine    = 64 << 10 // bytes
	maxPOEntries = 50_000
)

// ReadPO reads a PO file as it comes back from a translator. Only what a hand-off
// contains is known: no plurals and no domains. Obsolete entries (#~) are passed over.
func ReadPO(f *source.File) (*Return, []finding.Finding) {
	r := &poReader{reader: newReader(f), seen: map[string]bool{}}
	if !r.readable() {
		return nil, r.findings
	}
	r.lines()
	if !r.failed && !r.header {
		r.say(Malformed, source.Span{}, "the file has no header", asHandedOff)
	}
	if r.failed {
		return nil, r.findings
	}
	return r.out, nil
}

type poReader struct {
	*reader
	header bool
	seen   map[string]bool
	entry  poEntry
}

// A poEntry is the entry being read. Strings are nil until their keyword came.
type poEntry struct {
	context, id, str *string
	last             *string // the one that a continued line adds to
	at, strAt        source.Span
	digests          []string
	fuzzy            bool
	begun            bool // something stands in it
}

const poMend = "save the file again with the program it was translated in"

func (r *poReader) lines() {
	b := r.file.Bytes
	at := 0
	if bytes.HasPrefix(b, []byte("\xef\xbb\xbf")) {
		at = 3
	}
	for at < len(b) && !r.failed {
		end := len(b)
		next := end
		if i := bytes.IndexByte(b[at:], '\n'); i >= 0 {
			end, next = at+i, at+i+1
		}
		span := source.Span{Start: at, End: end}
		line := strings.TrimSuffix(string(b[at:end]), "\r")
		at = next
		if len(line) > maxPOLine {
			r.say(Malformed, span, "the line is longer than 64 KiB", poMend)
			return
		}
		r.line(strings.TrimRight(line, " \t"), span)
	}
	if !r.failed {
		r.finish()
	}
}

func (r *poReader) line(line string, span source.Span) {
	e := &r.entry
	switch {
	case line == "":
		r.finish()
		return
	case strings.HasPrefix(line, "#~"):
		return
	case strings.HasPrefix(line, "#"):
		if e.id != nil || e.context != nil { // a remark begins the next entry, blank line or not
			r.finish()
			e = &r.entry
		}
		e.remark(line)
		return
	}
	if !e.begun {
		e.begun, e.at = true, span
	}
	keyword, rest, _ := strings.Cut(line, " ")
	if strings.HasPrefix(line, `"`) {
		keyword, rest = "", line
	}
	var dst **string
	switch keyword {
	case "":
		if e.last == nil {
			r.say(Malformed, span, "a text stands here that belongs to no keyword", poMend)
			return
		}
	case "msgctxt":
		if e.id != nil {
			r.finish()
			e = &r.entry
			e.begun, e.at = true, span
		}
		dst = &e.context
	case "msgid":
		if e.str != nil {
			r.finish()
			e = &r.entry
			e.begun, e.at = true, span
		}
		dst = &e.id
	case "msgstr":
		if e.id == nil {
			r.say(Malformed, span, "msgstr stands before msgid", poMend)
			return
		}
		dst, e.strAt = &e.str, span
	default:
		what := fmt.Sprintf("%q is no keyword that is known here", short(keyword))
		if strings.HasPrefix(keyword, "msgid_plural") || strings.HasPrefix(keyword, "msgstr[") {
			what = "plural forms are not used here"
		}
		r.say(Malformed, span, what, asHandedOff)
		return
	}
	if r.failed {
		return
	}
	text, wrong := unquotePO(strings.TrimLeft(rest, " \t"))
	if wrong != "" {
		r.say(Malformed, span, wrong, poMend)
		return
	}
	if dst == nil {
		*e.last += text
		return
	}
	if *dst != nil {
		r.say(Malformed, span, keyword+" stands twice in one entry", "keep one of them")
		return
	}
	*dst = &text
	e.last = &text
}

func (e *poEntry) remark(line string) {
	switch {
	case strings.HasPrefix(line, "#,"):
		for _, flag := range strings.Split(line[2:], ",") {
			e.fuzzy = e.fuzzy || strings.TrimSpace(flag) == "fuzzy"
		}
	case strings.HasPrefix(line, "#. "+digestRemark):
		e.digests = strings.Fields(line[len("#. "+digestRemark):])
	}
}

// unquotePO reads a quoted text of one line.
func unquotePO(s string) (text, wrong string) {
	if len(s) < 2 || s[0] != '"' {
		return "", "a text in quotation marks is missing here"
	}
	var b strings.Builder
	for i := 1; i < len(s); i++ {
		switch s[i] {
		case '"':
			if i != len(s)-1 {
				return "", "something stands behind the closing quotation mark; one within a text is written \\\""
			}
			return b.String(), ""
		case '\\':
			i++
			k := -1
			if i < len(s) {
				k = strings.IndexByte(`ntr"\`, s[i])
			}
			if k < 0 {
				return "", `after a backslash only n, t, r, " and \ are known`
			}
			b.WriteByte("\n\t\r\"\\"[k])
		default:
			b.WriteByte(s[i])
		}
	}
	return "", "the closing quotation mark is missing"
}

// finish takes the entry that has been read.
func (r *poReader) finish() {
	e := r.entry
	r.entry = poEntry{}
	if !e.begun || r.failed {
		return
	}
	switch {
	case e.id == nil:
		r.say(Malformed, e.at, "the entry has no msgid", poMend)
	case e.str == nil:
		r.say(Malformed, e.at, "the entry has no msgstr", poMend)
	case !r.header:
		r.head(e)
	case *e.id == "" && e.context == nil:
		r.say(Malformed, e.at, "a second header stands here", "hand files back one by one")
	case e.context == nil:
		r.say(Malformed, e.at, "the entry does not say which block it is (msgctxt)", asHandedOff)
	case r.seen[*e.context]:
		r.say(Malformed, e.at, fmt.Sprintf("there are two of the block %s", short(*e.context)), "take one of the two out")
	case len(r.seen) >= maxPOEntries:
		r.say(Malformed, e.at, fmt.Sprintf("the file has more than %d entries", maxPOEntries), "hand off fewer modules at once")
	default:
		r.seen[*e.context] = true
		r.take(e)
	}
}

func (r *poReader) take(e poEntry) {
	module, id, ok := strings.Cut(*e.context, "/")
	if !ok || !nmtoken.MatchString(module) || !nmtoken.MatchString(id) {
		r.say(Mismatch, e.at, fmt.Sprintf("%q is not the name of a block", short(*e.context)), "send the file as it was handed off; msgctxt must not be changed")
		return
	}
	u := Returned{
		Module: module, ID: id, Span: e.at, TargetSpan: e.strAt,
		Source: parseTagged(*e.id).tidy(), Target: parseTagged(*e.str).tidy(), State: "translated",
	}
	if e.fuzzy || *e.str == "" {
		u.State = "initial"
	}
	if len(e.digests) == 2 {
		u.SourceDigest, u.TargetDigest = e.digests[0], e.digests[1]
	}
	r.out.Units = append(r.out.Units, u)
}

// head reads the header, the first entry.
func (r *poReader) head(e poEntry) {
	r.header = true
	if *e.id != "" || e.context != nil {
		r.say(Malformed, e.at, "the first entry must be the header, with an empty msgid", asHandedOff)
		return
	}
	fields := map[string]string{}
	for line := range strings.Lines(*e.str) {
		name, value, ok := strings.Cut(line, ":")
		if _, twice := fields[name]; !ok || twice {
			r.say(Malformed, e.strAt, fmt.Sprintf("the header has the line %q, which is no field of its own", short(strings.TrimSpace(line))), poMend)
			return
		}
		fields[name] = strings.TrimSpace(value)
	}
	charset := strings.ReplaceAll(strings.ToLower(fields["Content-Type"]), " ", "")
	if !slices.Contains(strings.Split(charset, ";"), "charset=utf-8") {
		r.say(Malformed, e.strAt, "the header does not say charset=UTF-8", "save the file as UTF-8")
		return
	}
	r.out.Source, r.out.Target, r.out.Head = fields[sourceHeader], fields[targetHeader], e.strAt
	if r.out.Target == "" {
		r.out.Target = strings.ReplaceAll(fields["Language"], "_", "-")
	}
	switch {
	case r.out.Source == "" || r.out.Target == "":
		r.say(Malformed, e.strAt, fmt.Sprintf("the header does not say from which language the file translates into which (%s, %s)", sourceHeader, targetHeader), asHandedOff)
	case fields["Language"] != "" && fields["Language"] != poLanguage(r.out.Target):
		r.say(Mismatch, e.strAt, fmt.Sprintf("the header says two languages: Language is %q, and %s is %q", short(fields["Language"]), targetHeader, short(r.out.Target)), "make them the same")
	}
}
