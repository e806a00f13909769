package main

import (
	"bytes"
	"regexp"
	"slices"

	"wardleaf/internal/load"
	"wardleaf/internal/pack"
)

var (
	translationsKey = regexp.MustCompile(`(?m)^translations:[ \t]*(?:#[^\r\n]*)?\r?\n`)
	anyTranslations = regexp.MustCompile(`(?m)^["']?translations["']?[ \t]*:`)
	firstState      = regexp.MustCompile(`^([ \t]+)[^ \t\r\n#]`)
	languagesLine   = regexp.MustCompile(`(?m)^languages:[ \t]*\[[^\]\r\n#]*[^\]\r\n#, \t][ \t]*\]`)
	languagesList   = regexp.MustCompile(`(?m)^languages:[ \t]*\r?\n((?:[ \t]*-[ \t]+[^\r\n]*\r?\n)+)`)
	lastItem        = regexp.MustCompile(`([ \t]*-[ \t]+)[^\r\n]*(\r?\n)$`)
)

// withState returns a module's record with a translation in state initial added, and
// whether that could be done: it has been read back.
func withState(m *pack.Module, record []byte, tag string) ([]byte, bool) {
	eol := "\n"
	if bytes.Contains(record, []byte("\r\n")) {
		eol = "\r\n"
	}
	var out []byte
	switch at := translationsKey.FindIndex(record); {
	case at != nil:
		indent := "  "
		if first := firstState.FindSubmatch(record[at[1]:]); first != nil {
			indent = string(first[1])
		}
		out = slices.Concat(record[:at[1]], []byte(indent+tag+": {state: initial}"+eol), record[at[1]:])
	case anyTranslations.Match(record):
		return nil, false
	default:
		out = bytes.Clone(record)
		if len(out) > 0 && out[len(out)-1] != '\n' {
			out = append(out, eol...)
		}
		out = append(out, "translations:"+eol+"  "+tag+": {state: initial}"+eol...)
	}
	before, wrongBefore := load.Record(m.ID, record)
	after, wrong := load.Record(m.ID, out)
	if len(wrong) > len(wrongBefore) || len(after.Translations) != len(before.Translations)+1 || after.Translations[tag].State != "initial" {
		return nil, false
	}
	return out, true
}

// withLanguage returns pack.yaml with a language added as the last of its list, when
// the list is written on one line or as one item a line.
func withLanguage(p *pack.Pack, tag string) ([]byte, bool) {
	b := p.File.Bytes
	if at := languagesLine.FindIndex(b); at != nil {
		end := at[1] - 1
		for b[end-1] == ' ' || b[end-1] == '\t' {
			end--
		}
		return slices.Concat(b[:end], []byte(", "+tag), b[end:]), true
	}
	if at := languagesList.FindSubmatchIndex(b); at != nil {
		if last := lastItem.FindSubmatch(b[at[2]:at[3]]); last != nil {
			return slices.Concat(b[:at[3]], last[1], []byte(tag), last[2], b[at[3]:]), true
		}
	}
	return nil, false
}
