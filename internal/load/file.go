package load

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"unicode/utf8"

	"wardleaf/internal/finding"
	"wardleaf/internal/source"
)

var byteOrderMark = []byte("\xef\xbb\xbf")

// open reads a file into s, or says why not. When required is set, a file that is
// missing is a finding and required is its mend.
func (s *subject) open(name string, most int64, required string) bool {
	s.file = source.New(name, nil)
	b, err := readFile(s.r.fsys, name, most)
	var big *tooLarge
	switch {
	case err == nil:
	case errors.Is(err, fs.ErrNotExist):
		if required != "" {
			s.say("file-missing", source.Span{}, fmt.Sprintf("there is no file %s", path.Base(name)),
				"The pack cannot be put together without it.", "create "+name+": "+required)
		}
		return false
	case errors.As(err, &big):
		s.say("file-too-large", source.Span{},
			fmt.Sprintf("the file is larger than %d KiB and was not read", most>>10),
			"A file of this size is nearly always a mistake, and it would hold up everyone who prints.",
			"split it into smaller files, or take out what does not belong")
		return false
	default:
		s.say("file-unreadable", source.Span{}, fmt.Sprintf("the file cannot be read: %v", reason(err)),
			"What it holds would be missing from every page.",
			"make it an ordinary file inside the pack that may be read")
		return false
	}
	b = bytes.TrimPrefix(b, byteOrderMark)
	s.file = source.New(name, b)
	return s.isText()
}

// isText says where the bytes stop being text.
func (s *subject) isText() bool {
	b := s.file.Bytes
	const why = "Letters would come out wrong, or not at all, on paper."
	for i := 0; i < len(b); {
		c, n := utf8.DecodeRune(b[i:])
		switch {
		case c == utf8.RuneError && n == 1:
			s.say("file-not-text", source.Span{Start: i, End: i + 1},
				fmt.Sprintf("the byte 0x%02X is not UTF-8", b[i]), why, "save the file as UTF-8")
			return false
		case c == 0:
			s.say("file-not-text", source.Span{Start: i, End: i + 1},
				"a zero byte stands here", why, "take the byte out, and save the file as UTF-8 text")
			return false
		case Hidden(c) || c == '\r' && (i+1 == len(b) || b[i+1] != '\n'):
			s.say("hidden-control", source.Span{Start: i, End: i + n}, fmt.Sprintf("an invisible control character stands here (U+%04X)", c),
				"It can make a line read otherwise than it is stored, so that a reviewer approves words that are not there.",
				"delete it; direction follows from the language, and a word in another script needs no mark")
			last := &s.r.findings[len(s.r.findings)-1]
			last.Edits = []finding.Edit{{Span: last.Place.Span}}
		}
		i += n
	}
	return true
}

// Hidden reports control characters that lessons have no use for: those of C0 but
// for tab and line ends (a carriage return alone is none), delete, and the direction embeddings and overrides of UAX #9.
// Its isolates and marks, and joiners, are used in good text and are let through.
func Hidden(c rune) bool {
	return c < ' ' && c != '\t' && c != '\n' && c != '\r' || c == 0x7F || c >= 0x202A && c <= 0x202E
}

type tooLarge struct{}

func (*tooLarge) Error() string { return "the file is too large" }

var errNotRegular = errors.New("it is not an ordinary file")

// readFile reads an ordinary file of at most so many bytes. It looks before it
// opens, since opening a pipe would wait for ever.
func readFile(fsys fs.FS, name string, most int64) ([]byte, error) {
	info, err := fs.Stat(fsys, name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errNotRegular
	}
	if info.Size() > most {
		return nil, &tooLarge{}
	}
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, err
	}
	if int64(len(b)) > most {
		return nil, &tooLarge{}
	}
	return b, nil
}
