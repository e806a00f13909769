package exchange

import (
	"fmt"
	"strings"
	"unicode"
)

// PO writes a job as one PO file of GNU gettext. The context of an entry is
// "module/block"; tags stand in the text as numbers in angle brackets (see
// Tagged.String). An entry that needs a translator's eye is marked as fuzzy.
func (j *Job) PO() []byte {
	var b strings.Builder
	day := j.Day.UTC().Format("2006-01-02") + " 00:00+0000"
	fmt.Fprintf(&b, "# Lessons from %s into %s.\n", j.Source, j.Target)
	b.WriteString("# Keep every tag, such as <1> and </1> or <2/>, once; the words between tags are yours to order.\n")
	b.WriteString("# An entry marked fuzzy is not taken back: take the mark off when it is done.\n")
	b.WriteString("msgid \"\"\nmsgstr \"\"\n")
	for _, h := range [][2]string{
		{"Project-Id-Version", j.Project}, {"Report-Msgid-Bugs-To", ""},
		{"POT-Creation-Date", day}, {"PO-Revision-Date", day},
		{"Last-Translator", ""}, {"Language-Team", ""}, {"Language", poLanguage(j.Target)},
		{"MIME-Version", "1.0"}, {"Content-Type", "text/plain; charset=UTF-8"}, {"Content-Transfer-Encoding", "8bit"},
		{sourceHeader, j.Source}, {targetHeader, j.Target},
	} {
		b.WriteString(quotePO(h[0]+": "+oneLine(h[1])+"\n") + "\n")
	}
	for _, m := range j.Modules {
		for _, it := range m.Items {
			b.WriteByte('\n')
			for _, n := range it.Notes {
				fmt.Fprintf(&b, "#. %s: %s\n", n.Category, oneLine(n.Text))
			}
			for _, c := range it.Codes {
				fmt.Fprintf(&b, "#. tag %s: %s\n", c.ID, oneLine(describe(&c)))
			}
			fmt.Fprintf(&b, "#. %s %s %s\n", digestRemark, it.SourceDigest, it.TargetDigest)
			fmt.Fprintf(&b, "#: %s:%d\n", m.Path, it.Line)
			if len(it.Target) > 0 && it.State == "initial" {
				b.WriteString("#, fuzzy\n")
			}
			if len(it.Previous) > 0 {
				fmt.Fprintf(&b, "#| msgid %s\n", quotePO(it.Previous.String()))
			}
			fmt.Fprintf(&b, "msgctxt %s\nmsgid %s\nmsgstr %s\n", quotePO(m.ID+"/"+it.ID), quotePO(it.Source.String()), quotePO(it.Target.String()))
		}
	}
	return []byte(b.String())
}

const (
	sourceHeader = "X-Source-Language"
	targetHeader = "X-Target-Language"
	digestRemark = "wardleaf:"
)

// poLanguage writes a BCP 47 tag as gettext does: pt-BR is pt_BR.
func poLanguage(tag string) string { return strings.ReplaceAll(tag, "-", "_") }

func quotePO(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\t", `\t`, "\r", `\r`).Replace(s) + `"`
}

// oneLine makes a remark of any text.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return unicode.ReplacementChar
		}
		return r
	}, strings.ToValidUTF8(strings.Join(strings.Fields(s), " "), "\uFFFD"))
}
