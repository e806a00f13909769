package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
)

// bytes returns the finished file: streams first, then all other objects packed
// into object streams, then a cross-reference stream (ISO 32000-1, 7.5.7 and 7.5.8).
func (f *file) bytes() []byte {
	var out streamWriter
	out.WriteString("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	var table crossReference
	for n, data := range f.streams {
		if data != nil {
			table.at(n, out.Len())
			out.stream(n, f.objects[n], data)
		}
	}
	var loose []int
	for n, object := range f.objects {
		if n > 0 && f.streams[n] == nil && object != nil {
			loose = append(loose, n)
		}
	}
	const atOnce = 200 // a reader unpacks so many to read one
	for len(loose) > 0 {
		batch := loose[:min(atOnce, len(loose))]
		loose = loose[len(batch):]
		var index, body bytes.Buffer
		container := f.reserve(1)
		for i, n := range batch {
			fmt.Fprintf(&index, "%d %d ", n, body.Len())
			body.Write(f.objects[n])
			body.WriteByte('\n')
			table.in(n, container, i)
		}
		table.at(container, out.Len())
		dict := fmt.Appendf(nil, "<</Type/ObjStm/N %d/First %d>>", len(batch), index.Len())
		out.stream(container, dict, append(index.Bytes(), body.Bytes()...))
	}
	start := out.Len()
	n := f.reserve(1)
	table.at(n, start)
	digest := sha256.Sum256(out.Bytes())
	dict := fmt.Appendf(nil, "<</Type/XRef/Size %d/W[1 4 2]/Root %d 0 R/Info %d 0 R/ID[<%X><%X>]>>",
		n+1, f.root, f.info, digest[:16], digest[:16])
	out.stream(n, dict, table.bytes(n+1))
	fmt.Fprintf(&out, "startxref\n%d\n%%%%EOF\n", start)
	return out.Bytes()
}

// A streamWriter writes stream objects. Nothing that is written to a buffer can fail.
type streamWriter struct {
	bytes.Buffer
	compressor *zlib.Writer // kept, for it is large
	packed     bytes.Buffer
}

// stream writes one object, compressed unless it is metadata, which programs look
// for that cannot read PDF.
func (w *streamWriter) stream(n int, dict, data []byte) {
	filter := ""
	if !bytes.Contains(dict, []byte(metadataType)) {
		data, filter = w.compress(data), "/Filter/FlateDecode"
	}
	fmt.Fprintf(w, "%d 0 obj\n%s%s/Length %d>>\nstream\n", n, bytes.TrimSuffix(dict, []byte(">>")), filter, len(data))
	w.Write(data)
	w.WriteString("\nendstream\nendobj\n")
}

// compress returns data compressed, until it is called again.
func (w *streamWriter) compress(data []byte) []byte {
	w.packed.Reset()
	if w.compressor == nil {
		w.compressor, _ = zlib.NewWriterLevel(&w.packed, zlib.BestCompression) // the level is valid
	} else {
		w.compressor.Reset(&w.packed)
	}
	w.compressor.Write(data)
	w.compressor.Close()
	return w.packed.Bytes()
}

// A crossReference says where each object is, in rows of seven bytes.
type crossReference struct{ rows map[int][]byte }

// at notes an object at an offset of the file.
func (c *crossReference) at(n, offset int) { c.row(n, 1, offset, 0) }

// in notes an object inside an object stream.
func (c *crossReference) in(n, container, index int) { c.row(n, 2, container, index) }

func (c *crossReference) row(n, kind, a, b int) {
	if c.rows == nil {
		c.rows = map[int][]byte{}
	}
	row := binary.BigEndian.AppendUint32([]byte{byte(kind)}, uint32(a))
	c.rows[n] = binary.BigEndian.AppendUint16(row, uint16(b))
}

func (c *crossReference) bytes(size int) []byte {
	table := make([]byte, 0, 7*size)
	for n := range size {
		row := c.rows[n]
		if row == nil {
			row = []byte{0, 0, 0, 0, 0, 0xFF, 0xFF} // free
		}
		table = append(table, row...)
	}
	return table
}
