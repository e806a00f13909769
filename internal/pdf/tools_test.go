package pdf

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// tool makes sure that a program is there: a test may be skipped without it, but not in CI.
func tool(t *testing.T, name string) {
	t.Helper()
	if _, err := exec.LookPath(name); err == nil {
		return
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is not installed", name)
	}
	t.Skipf("%s is not installed", name)
}

// run runs a program and returns what it printed. In an argument, FILE stands for
// the path of a file with the given data.
func run(t *testing.T, data []byte, name string, args ...string) string {
	t.Helper()
	tool(t, name)
	path := filepath.Join(t.TempDir(), "document.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	for i := range args {
		args[i] = strings.ReplaceAll(args[i], "FILE", path)
	}
	cmd := exec.Command(name, args...)
	var problems bytes.Buffer
	cmd.Stderr = &problems
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s%s", name, strings.Join(args, " "), err, out, &problems)
	}
	return string(out)
}

// objects is a PDF as qpdf understands it.
type objects map[string]map[string]any

// readObjects has qpdf take a file apart, so that no reader of ours is trusted.
func readObjects(t *testing.T, data []byte) objects {
	t.Helper()
	out := run(t, data, "qpdf", "--json=2", "--json-stream-data=inline", "--decode-level=generalized", "FILE")
	var top struct{ Qpdf []json.RawMessage }
	if err := json.Unmarshal([]byte(out), &top); err != nil {
		t.Fatal(err)
	}
	o := objects{}
	if err := json.Unmarshal(top.Qpdf[1], &o); err != nil {
		t.Fatal(err)
	}
	return o
}

// get follows a path of keys from a value, and references on the way. It returns
// nil when there is nothing.
func (o objects) get(v any, path ...string) any {
	for {
		if ref, ok := v.(string); ok && strings.HasSuffix(ref, " R") {
			object := o["obj:"+ref]
			if stream, ok := object["stream"].(map[string]any); ok {
				v = stream["dict"]
			} else {
				v = object["value"]
			}
		}
		if len(path) == 0 {
			return v
		}
		dict, _ := v.(map[string]any)
		v, path = dict[path[0]], path[1:]
	}
}

func (o objects) catalog() any { return o.get(o["trailer"]["value"], "/Root") }

func (o objects) pages() []any { return o.get(o.catalog(), "/Pages", "/Kids").([]any) }

// stream returns the decoded data of a stream.
func (o objects) stream(t *testing.T, ref any) string {
	t.Helper()
	stream, _ := o["obj:"+ref.(string)]["stream"].(map[string]any)
	data, err := base64.StdEncoding.DecodeString(stream["data"].(string))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
