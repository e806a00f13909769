// Package source holds the text that people wrote and the places in it.
//
// A Span is a pair of byte offsets; line and column are worked out only when a
// place is printed. The package reads nothing and imports nothing of ours.
package source

import (
	"sort"
	"unicode/utf8"
)

// A File is one text file of a pack.
type File struct {
	Path  string // slash-separated, relative to the pack
	Bytes []byte
	lines []int // offset of the first byte of each line
}

// New returns a File for text. It keeps b, which must not change afterwards.
func New(path string, b []byte) *File {
	f := &File{Path: path, Bytes: b, lines: []int{0}}
	for i, c := range b {
		if c == '\n' {
			f.lines = append(f.lines, i+1)
		}
	}
	return f
}

// A Span is the part of a file from byte Start up to, not including, byte End.
type Span struct{ Start, End int }

// Position returns the line and column, both from 1, of a byte offset.
// Columns count code points. An offset outside the file is moved to its nearest end.
func (f *File) Position(offset int) (line, column int) {
	offset = min(max(offset, 0), len(f.Bytes))
	i := sort.SearchInts(f.lines, offset+1) - 1
	return i + 1, utf8.RuneCount(f.Bytes[f.lines[i]:offset]) + 1
}

// Offset returns the byte offset of a line and column as Position gives them.
func (f *File) Offset(line, column int) int {
	if line < 1 || line > len(f.lines) {
		return len(f.Bytes)
	}
	o := f.lines[line-1]
	for ; column > 1 && o < len(f.Bytes) && f.Bytes[o] != '\n'; column-- {
		_, n := utf8.DecodeRune(f.Bytes[o:])
		o += n
	}
	return o
}

// Line returns the text of a line, from 1, without its line end.
func (f *File) Line(line int) string {
	if line < 1 || line > len(f.lines) {
		return ""
	}
	s, e := f.lines[line-1], len(f.Bytes)
	if line < len(f.lines) {
		e = f.lines[line] - 1
	}
	if e > s && f.Bytes[e-1] == '\r' {
		e--
	}
	return string(f.Bytes[s:e])
}
