package pdf

import (
	"strings"
	"testing"
	"unicode"

	"wardleaf/internal/measure"
	"wardleaf/internal/page"
)

// setLines returns an untagged document of one page.
func setLines(lines ...[]stretch) *page.Document {
	d := &page.Document{Title: "Lines", Pages: []page.Page{{Size: measure.A5}}}
	c := &composer{page: &d.Pages[0], size: measure.Pt(12), x: measure.Pt(40), y: measure.Pt(60)}
	for _, l := range lines {
		c.line(l...)
	}
	return d
}

// TestExtraction gives each text to poppler and takes it back.
func TestExtraction(t *testing.T) {
	latin, bold, deva, naskh := loadFace(t, "NotoSans-Regular"), loadFace(t, "NotoSans-Bold"), loadFace(t, "NotoSansDevanagari-Regular"), loadFace(t, "NotoNaskhArabic-Regular")
	tests := []struct {
		name  string
		lines [][]stretch
		want  string
		rtl   bool // spaces beside numbers move in poppler, so they are set aside
	}{
		{"Latin", [][]stretch{
			{{latin, "AVATAR, office: première ", false}, {bold, "œuvre", false}, {latin, " ắ ở d\u0301 ", false}},
			{{latin, "each night. 25–30 g ≥ 8 ", false}},
		}, "AVATAR, office: première œuvre ắ ở d\u0301\neach night. 25–30 g ≥ 8", false},
		{"Devanagari", [][]stretch{
			{{deva, "क्षत्रिय कंगारू स्तनपान ", false}},
			{{deva, "माँ का दूध, कुछ अध्याय, र्‍क ज्ञान ट्रॉली ", false}, {latin, "WHO ", false}, {deva, "२५० हृदय शृंखला ", false}},
		}, "क्षत्रिय कंगारू स्तनपान\nमाँ का दूध, कुछ अध्याय, र्‍क ज्ञान ट्रॉली WHO २५० हृदय शृंखला", false},
		{"Arabic", [][]stretch{
			{{naskh, " مرات في اليوم", true}, {naskh, "8", false}, {naskh, "الرضاعة ", true}},
			{{naskh, "الأمّ ", true}, {naskh, "٢٥٠", false}, {naskh, "لا إلهٌ (ثلاث) ملامسة الجلد ", true}},
		}, "الرضاعة 8 مرات في اليوم\nلا إلهٌ (ثلاث) ملامسة الجلد ٢٥٠ الأمّ", true},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := run(t, write(t, setLines(test.lines...)), "pdftotext", "FILE", "-")
			got = strings.Map(func(r rune) rune {
				if r >= '\u202A' && r <= '\u202E' || r == '\f' || test.rtl && unicode.IsSpace(r) {
					return -1
				}
				return r
			}, got)
			for strings.Contains(got, "\n\n") {
				got = strings.ReplaceAll(got, "\n\n", "\n")
			}
			want := test.want
			if test.rtl {
				want = strings.Join(strings.Fields(want), "")
			}
			if strings.TrimSpace(got) != want {
				t.Errorf("got  %q\nwant %q", strings.TrimSpace(got), want)
			}
		})
	}
}

// TestReaders has every reader at hand open the sample.
func TestReaders(t *testing.T) {
	data := write(t, sample(t))
	if out := run(t, data, "qpdf", "--check", "FILE"); !strings.Contains(out, "No syntax or stream encoding errors") {
		t.Error(out)
	}
	if out := run(t, data, "mutool", "draw", "-F", "txt", "FILE"); !strings.Contains(out, "Hold your baby skin to skin all") {
		t.Error(out)
	}
	fonts := strings.Split(strings.TrimSpace(run(t, data, "pdffonts", "FILE")), "\n")[2:]
	if len(fonts) != 4 {
		t.Errorf("%d fonts, want 4", len(fonts))
	}
	for _, f := range fonts {
		if !strings.Contains(f, "+Noto") || !strings.Contains(f, "yes yes yes") {
			t.Errorf("not an embedded subset with Unicode: %s", f)
		}
	}
	o := readObjects(t, data)
	for key, object := range o {
		v, _ := object["value"].(map[string]any)
		for _, name := range []string{"/BaseFont", "/FontName"} {
			if v[name] != nil && !strings.Contains(v[name].(string), "+Noto") {
				t.Errorf("%s has %s %v", key, name, v[name])
			}
		}
	}
	info := run(t, data, "pdfinfo", "FILE")
	for _, want := range []string{"Tagged:          yes", "PDF version:     1.7", "Pages:           3", "Skin to skin & <warm> – कंगारू 😀", "Ward (3) \\ nursery", "Suspects:        no"} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo does not say %q:\n%s", want, info)
		}
	}
}
