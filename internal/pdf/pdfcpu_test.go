package pdf

import (
	"bytes"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// TestPdfcpu lets another reader of PDF validate a tagged document in three scripts:
// pdfcpu, against ISO 32000, relaxed and strict.
func TestPdfcpu(t *testing.T) {
	model.ConfigPath = "disable" // no configuration folder is written
	var b bytes.Buffer
	if err := Write(&b, sample(t)); err != nil {
		t.Fatal(err)
	}
	for name, mode := range map[string]int{"relaxed": model.ValidationRelaxed, "strict": model.ValidationStrict} {
		conf := model.NewDefaultConfiguration()
		conf.ValidationMode = mode
		if err := api.Validate(bytes.NewReader(b.Bytes()), conf); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}
