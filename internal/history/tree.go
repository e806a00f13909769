package history

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
)

// A blob is one file of a revision.
type blob struct {
	name string // from the folder
	id   string
	size int
}

// Files returns the files of the repository's folder at a revision that have one of the
// given extensions. It is fs.ErrNotExist when the folder was not there.
func (r *Repository) Files(c Commit, extensions ...string) (fs.FS, error) {
	args := []string{"ls-tree", "-r", "-z", "-l", "--full-tree", c.ID, "--"}
	if r.prefix != "" {
		args = append(args, r.prefix)
	}
	list, err := r.git(nil, 8<<20, args...)
	if err != nil {
		return nil, err
	}
	blobs, err := r.blobs(string(list), extensions)
	if err != nil {
		return nil, err
	}
	if len(blobs) == 0 {
		return nil, fs.ErrNotExist
	}
	var ids bytes.Buffer
	room := 0
	for _, b := range blobs {
		ids.WriteString(b.id + "\n")
		room += b.size + 128 // of the line before and the line end after
	}
	out, err := r.git(ids.Bytes(), room, "cat-file", "--batch")
	if err != nil {
		return nil, err
	}
	return archive(blobs, out)
}

// blobs reads what ls-tree printed: "mode type id size\tname\0" for each file. Symbolic
// links and submodules are left out.
func (r *Repository) blobs(list string, extensions []string) ([]blob, error) {
	var out []blob
	total := 0
	for line := range strings.SplitSeq(list, "\x00") {
		about, name, _ := strings.Cut(line, "\t")
		f := strings.Fields(about)
		name, within := strings.CutPrefix(name, r.prefix)
		if len(f) != 4 || f[1] != "blob" || f[0] == "120000" || !within || !fs.ValidPath(name) || !slices.Contains(extensions, path.Ext(name)) {
			continue
		}
		size, err := strconv.Atoi(f[3])
		if err != nil || !hash.MatchString(f[2]) {
			return nil, fmt.Errorf("git ls-tree gave a line that is not understood: %q", line)
		}
		out = append(out, blob{name, f[2], size})
		if total += size; len(out) > maxFiles || total > maxBytes {
			return nil, fmt.Errorf("the revision holds more than %d files or %d MiB of text and drawings, which no pack needs; give the folder of the pack with --pack", maxFiles, maxBytes>>20)
		}
	}
	return out, nil
}

var errTorn = errors.New("git cat-file gave less than it said; the repository may be damaged: try git fsck")

// archive takes blobs apart that cat-file printed one after the other. An archive in
// memory is a file system already, folders included.
func archive(blobs []blob, out []byte) (fs.FS, error) {
	var buf bytes.Buffer
	w := zip.NewWriter(&buf)
	for _, b := range blobs {
		head, rest, found := bytes.Cut(out, []byte("\n"))
		if !found || string(head) != fmt.Sprintf("%s blob %d", b.id, b.size) || len(rest) < b.size+1 {
			return nil, errTorn
		}
		f, err := w.CreateHeader(&zip.FileHeader{Name: b.name, Method: zip.Store})
		if err != nil {
			return nil, err
		}
		if _, err := f.Write(rest[:b.size]); err != nil {
			return nil, err
		}
		out = rest[b.size+1:]
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return zip.NewReader(bytes.NewReader(buf.Bytes()), int64(buf.Len()))
}
