// Package archtest keeps data flowing one way: it compares what each package
// imports with a table of what it may.
package archtest

import (
	"encoding/json"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "wardleaf/internal/"

// allowed lists, for each package, the packages of ours that it may import.
var allowed = map[string][]string{
	"archtest":  {},
	"source":    {},
	"measure":   {},
	"bidi":      {},
	"linebreak": {},
	"locale":    {},
	"font":      {},
	"finding":   {"source"},
	"drawing":   {"source"},
	"lesson":    {"drawing", "source"},
	"pack":      {"drawing", "lesson", "source", "ward"},
	"load":      {"drawing", "finding", "lesson", "pack", "source", "ward"},
	"translate": {"lesson", "locale", "pack", "source"},
	"check":     {"finding", "impose", "lesson", "locale", "measure", "pack", "page", "piece", "sheet", "source", "translate"},
	"sewing":    {},
	"table":     {"finding", "source"},
	"ward":      {"finding", "source", "table"},
	"growth":    {"finding", "source", "table"},
	"sheet":     {"drawing", "finding", "growth", "lesson", "locale", "measure", "pack", "sewing", "source", "ward"},
	"review":    {"finding", "load", "pack", "translate"},
	"exchange":  {"finding", "lesson", "load", "pack", "source", "translate"},
	"history":   {},
	"redline":   {"lesson", "locale", "pack"},
	"page":      {"font", "measure"},
	"shape":     {"bidi", "font", "linebreak", "page"},
	"typeset":   {"bidi", "drawing", "font", "lesson", "locale", "measure", "page", "shape", "source"},
	"quiz":      {},
	"piece":     {"drawing", "finding", "font", "lesson", "locale", "measure", "pack", "page", "quiz", "redline", "sheet", "source", "translate", "typeset"},
	"impose":    {"measure", "page"},
	"pdf":       {"font", "measure", "page"},
	"site":      {"drawing", "growth", "lesson", "locale", "pack", "piece", "redline", "review", "sewing", "sheet", "translate"},
	"publish":   {},
	"assemble":  {"check", "finding", "font", "impose", "load", "locale", "measure", "pack", "page", "pdf", "piece", "publish", "redline", "review", "sheet", "site", "source", "translate", "typeset"},
}

func TestImportsFlowOneWay(t *testing.T) {
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "../...").Output()
	if err != nil {
		t.Fatal(err)
	}
	dec := json.NewDecoder(strings.NewReader(string(out)))
	for {
		var p struct {
			ImportPath string
			Imports    []string
		}
		if err := dec.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		name := strings.TrimPrefix(p.ImportPath, module)
		may, known := allowed[name]
		if !known {
			t.Errorf("package %s is not in the table of allowed imports", name)
			continue
		}
		for _, imp := range p.Imports {
			if dep, ours := strings.CutPrefix(imp, module); ours && !slices.Contains(may, dep) {
				t.Errorf("package %s may not import %s", name, dep)
			}
		}
	}
}
