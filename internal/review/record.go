package review

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"
	"unicode"

	"wardleaf/internal/load"
	"wardleaf/internal/pack"
)

var (
	// key is the line of a record that begins its sign-offs, with nothing in the list yet or none of it on this line.
	key = regexp.MustCompile(`(?m)^sign-offs[ \t]*:([ \t]*(?:\[[ \t]*\]|~|null))?([ \t]+#[^\r\n]*)?[ \t]*\r?$`)
	// anyKey is that line, however it goes on.
	anyKey = regexp.MustCompile(`(?m)^["']?sign-offs["']?[ \t]*:`)
	dash   = regexp.MustCompile(`^([ \t]*)-(?:[ \t\r\n]|$)`)
)

// Append returns a module's record with a sign-off added as the last of its list.
// Everything else in it stays byte for byte. The result has been read back: when it
// does not hold what it should, Append changes nothing and says what to do by hand.
func Append(module string, record []byte, s pack.SignOff) ([]byte, error) {
	if err := plain("role", s.Role); err != nil {
		return nil, err
	}
	eol := "\n"
	if i := bytes.IndexByte(record, '\n'); i > 0 && record[i-1] == '\r' {
		eol = "\r\n"
	}
	entry := func(indent string) string {
		text := fmt.Sprintf("%[1]s- role: %[2]s\n%[1]s  lang: %[3]s\n%[1]s  date: %[4]s\n%[1]s  digest: %[5]s\n",
			indent, quoted(s.Role), quoted(s.Lang), s.Date.Time.Format(time.DateOnly), quoted(s.Digest))
		return strings.ReplaceAll(text, "\n", eol)
	}
	before, wrong := load.Record(module, record)
	var out []byte
	if at := key.FindSubmatchIndex(record); at != nil {
		head := bytes.Clone(record[:at[1]])
		if at[2] >= 0 {
			head = append(bytes.Clone(record[:at[2]]), record[at[3]:at[1]]...)
		}
		end, indent := listEnd(record, at[1])
		out = join(append(head, record[at[1]:end]...), entry(indent), eol)
		out = append(out, record[end:]...)
	} else if !anyKey.Match(record) {
		out = join(bytes.Clone(record), "sign-offs:"+eol+entry("  "), eol)
	}
	if len(wrong) > 0 || !added(module, before, out, s) {
		return nil, errors.New("the sign-offs of module.yaml are written in a way that cannot be added to, so nothing was changed; write each as a line that begins with a hyphen, below sign-offs:")
	}
	return out, nil
}

// listEnd returns the offset behind the last item of the list whose key ends at from,
// and how its items are indented. Blank lines and remarks behind it are not part of it.
func listEnd(record []byte, from int) (end int, indent string) {
	end, indent = lineEnd(record, from), "  "
	first := true
	for i := end; i < len(record); {
		next := lineEnd(record, i)
		line := record[i:next]
		text := bytes.TrimSpace(line)
		m := dash.FindSubmatch(line)
		switch {
		case len(text) == 0 || text[0] == '#':
		case m == nil && line[0] != ' ' && line[0] != '\t':
			return end, indent
		default:
			if first && m != nil {
				indent, first = string(m[1]), false
			}
			end = next
		}
		i = next
	}
	return end, indent
}

// lineEnd returns the offset behind the line end that follows i.
func lineEnd(b []byte, i int) int {
	if n := bytes.IndexByte(b[i:], '\n'); n >= 0 {
		return i + n + 1
	}
	return len(b)
}

// join adds text on a line of its own.
func join(b []byte, text, eol string) []byte {
	if len(b) > 0 && b[len(b)-1] != '\n' {
		b = append(b, eol...)
	}
	return append(b, text...)
}

// added reports whether a record holds what it held before, and s as its last sign-off.
func added(module string, before pack.Record, record []byte, s pack.SignOff) bool {
	after, findings := load.Record(module, record)
	n := len(before.SignOffs)
	if len(findings) > 0 || len(after.SignOffs) != n+1 {
		return false
	}
	before.SignOffs = append(slices.Clip(before.SignOffs), s)
	return values(after) == values(before)
}

// values writes out what a record says, without the places where it says it.
func values(r pack.Record) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%q %d %q %q %q\n", r.Audience, r.Minutes, r.Prepared.Text, r.Due.Text, r.By)
	for _, c := range r.CriticalSteps {
		fmt.Fprintf(&b, "step %d.%d\n", c.Part, c.Step)
	}
	for _, src := range r.Sources {
		fmt.Fprintf(&b, "source %q\n", src.Name)
	}
	for _, s := range r.SignOffs {
		fmt.Fprintf(&b, "sign-off %q %q %q %v\n", s.Role, s.Lang, s.Digest, s.Date.Time)
	}
	for _, lang := range pack.Sorted(r.Translations) {
		fmt.Fprintf(&b, "translation %q %q %q\n", lang, r.Translations[lang].State, r.Translations[lang].By)
	}
	return b.String()
}

// maxRole is how many characters a role may have; it must fit on a line of a page.
const maxRole = 100

func plain(what, text string) error {
	switch {
	case strings.TrimSpace(text) == "":
		return fmt.Errorf("the %s is empty, and nobody could tell who read the lesson; give what the reviewer is, such as \"Neonatal nurse in charge\"", what)
	case text != strings.TrimSpace(text), strings.ContainsFunc(text, func(r rune) bool { return r == unicode.ReplacementChar || !unicode.IsPrint(r) && !joiner(r) }):
		return fmt.Errorf("the %s %q has blanks around it or a character that cannot be seen; write it in plain letters on one line", what, text)
	case len([]rune(text)) > maxRole:
		return fmt.Errorf("the %s has more than %d characters and would not fit on a line; write it shorter", what, maxRole)
	}
	return nil
}

// joiner reports the zero-width joiner and non-joiner, which several scripts are written with.
func joiner(r rune) bool { return r == 0x200C || r == 0x200D }

// quoted writes a double-quoted YAML scalar of printable text.
func quoted(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}
