package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
)

// A file is a PDF as numbered objects, so that what fpdf wrote can be added to.
type file struct {
	objects [][]byte // by object number; of a stream, its dictionary without Filter and Length
	streams [][]byte // by object number; decoded, nil for an object that is no stream
	root    int      // the catalog
	info    int
}

const metadataType = "/Type/Metadata"

var (
	errForm      = errors.New("the output of fpdf does not have the form that is known of it; another version of it needs another reader")
	trailerKeys  = regexp.MustCompile(`/Root (\d+) 0 R\n/Info (\d+) 0 R`)
	streamKeys   = regexp.MustCompile(`/Length \d+|/Filter /FlateDecode`)
	streamMarker = []byte("\nstream\n")
)

// parse reads what fpdf wrote of a number of pages: one cross-reference table,
// objects one after another, no generation but 0, pages first.
func parse(raw []byte, pages int) (*file, error) {
	startxref := bytes.LastIndex(raw, []byte("startxref\n"))
	if startxref < 0 {
		return nil, errForm
	}
	var table, count int
	if _, err := fmt.Sscanf(string(raw[startxref:]), "startxref\n%d", &table); err != nil || table <= 0 || table > startxref {
		return nil, errForm
	}
	if _, err := fmt.Sscanf(string(raw[table:startxref]), "xref\n0 %d", &count); err != nil {
		return nil, errForm
	}
	const entrySize = 20
	rows := bytes.SplitAfterN(raw[table:startxref], []byte("\n"), 3)
	keys := trailerKeys.FindSubmatch(raw[table:startxref])
	if len(rows) < 3 || len(rows[2]) < entrySize*count || keys == nil {
		return nil, errForm
	}
	f := &file{objects: make([][]byte, count), streams: make([][]byte, count)}
	f.root, _ = strconv.Atoi(string(keys[1]))
	f.info, _ = strconv.Atoi(string(keys[2]))
	for n := 1; n < count; n++ {
		offset, err := strconv.Atoi(string(rows[2][entrySize*n : entrySize*n+10]))
		if err != nil || offset >= table {
			return nil, errForm
		}
		if err := f.read(n, raw[offset:table]); err != nil {
			return nil, err
		}
	}
	for i := range pages {
		if n := pageObject(i); n >= count || !bytes.HasPrefix(f.objects[n], []byte("<</Type /Page\n")) {
			return nil, errForm
		}
	}
	return f, nil
}

// pageObject returns the object number fpdf gives a page.
func pageObject(index int) int { return 3 + 2*index }

// read reads one object. A stream is found by its Length, for its bytes may hold anything.
func (f *file) read(n int, raw []byte) error {
	body, ok := bytes.CutPrefix(raw, fmt.Appendf(nil, "%d 0 obj\n", n))
	end := bytes.Index(body, []byte("endobj\n"))
	if !ok || end < 0 {
		return errForm
	}
	at := bytes.Index(body, streamMarker)
	if at < 0 || at > end {
		f.objects[n] = bytes.TrimSpace(body[:end])
		return nil
	}
	dict := body[:at]
	var length int
	for _, key := range streamKeys.FindAll(dict, -1) {
		fmt.Sscanf(string(key), "/Length %d", &length) // leaves length alone at Filter
	}
	data := body[at+len(streamMarker):]
	if length > len(data) {
		return errForm
	}
	data = data[:length]
	if bytes.Contains(dict, []byte("/FlateDecode")) {
		z, err := zlib.NewReader(bytes.NewReader(data))
		if err != nil {
			return err
		}
		if data, err = io.ReadAll(z); err != nil {
			return err
		}
	}
	f.objects[n], f.streams[n] = streamKeys.ReplaceAll(dict, nil), data
	return nil
}

// reserve makes room for n objects and returns the number of the first.
func (f *file) reserve(n int) int {
	first := len(f.objects)
	f.objects = append(f.objects, make([][]byte, n)...)
	f.streams = append(f.streams, make([][]byte, n)...)
	return first
}

// add appends an object and returns its number.
func (f *file) add(object string) int {
	n := f.reserve(1)
	f.objects[n] = []byte(object)
	return n
}

// addStream appends a stream and returns a reference to it.
func (f *file) addStream(dict string, data []byte) string {
	n := f.add(dict)
	f.streams[n] = data
	return fmt.Sprintf("%d 0 R", n)
}

// extend adds keys to a dictionary. It is clipped first: what follows it in memory
// may be another object of fpdf's output.
func (f *file) extend(n int, keys string) {
	dict := slices.Clip(bytes.TrimSuffix(f.objects[n], []byte(">>")))
	f.objects[n] = append(dict, keys+">>"...)
}

// find returns the number of the object that begins so, 0 when there is none.
func (f *file) find(beginning []byte) int {
	for n, o := range f.objects {
		if bytes.HasPrefix(o, beginning) {
			return n
		}
	}
	return 0
}
