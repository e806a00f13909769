package load

import (
	"slices"
	"strings"
	"testing"

	"wardleaf/internal/locale"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
)

// TestRecord reads a record with everything in it and looks at the bytes that each
// value was read from.
func TestRecord(t *testing.T) {
	const text = "# रिकॉर्ड\r\naudience: [families, 'health-workers']\r\nminutes: 25\r\n" +
		"review: {prepared: 2026-11-25, due: \"2027-11-25\"}\r\n" +
		"critical-steps: [3, 1.3, \"2.10\"]\r\n" +
		"sources:\r\n  - mnp-2003\r\n  - kmc-2025\r\n" +
		"sign-offs:\r\n  - role: नर्स\r\n    lang: hi\r\n    digest: sha256:00ff\r\n    date: 2026-11-26\r\n" +
		"translations:\r\n  hi: {state: final}\r\n"
	r := newReader("wrapping/module.yaml", []byte(text))
	m := r.record("wrapping")
	if len(r.findings) > 0 || m.Unread {
		t.Fatal(r.findings)
	}
	rec := m.Record
	at := func(s source.Span) string { return text[s.Start:s.End] }
	for want, got := range map[string]string{
		"2026-11-25":       at(rec.Prepared.Span),
		`"2027-11-25"`:     at(rec.Due.Span),
		"3":                at(rec.CriticalSteps[0].Span),
		"1.3":              at(rec.CriticalSteps[1].Span),
		`"2.10"`:           at(rec.CriticalSteps[2].Span),
		"kmc-2025":         at(rec.Sources[1].Span),
		"role":             at(rec.SignOffs[0].Span),
		"2026-11-26":       at(rec.SignOffs[0].Date.Span),
		"{":                at(rec.Translations["hi"].Span),
		"final":            rec.Translations["hi"].State,
		"नर्स":             rec.SignOffs[0].Role,
		"sha256:00ff":      rec.SignOffs[0].Digest,
		"health-workers":   rec.Audience[1],
		"2027-11-25 again": rec.Due.Text + " again",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	if s := rec.CriticalSteps[2]; s.Part != 2 || s.Step != 10 || rec.Minutes != 25 || rec.Due.Time.IsZero() {
		t.Errorf("got %+v, %d minutes, due %v", s, rec.Minutes, rec.Due.Time)
	}
}

// TestNumbers keeps amounts as they were written.
func TestNumbers(t *testing.T) {
	r := newReader("numbers.yaml", []byte("gain: {low: 15.0, high: 20, unit: g/kg, status: published, source: x}\n"+
		"half:\n  amount: 0.50\n  compare: at-least\n  status: common-practice\n"))
	r.numbers()
	if len(r.findings) > 0 {
		t.Fatal(r.findings)
	}
	gain, half := r.pack.Numbers["gain"], r.pack.Numbers["half"]
	if gain.Low != "15.0" || gain.High != "20" || gain.Unit != "g/kg" || half.Amount != "0.50" || half.Compare != "at-least" {
		t.Errorf("got %+v %+v", gain, half)
	}
}

// TestContactsKeepTheirOrder and their values as they were written.
func TestContactsKeepTheirOrder(t *testing.T) {
	r := newReader("facility.yaml", []byte("name: {en: Ward}\ncontacts:\n  z: {label: {en: Z}, value: 0155}\n  a: {label: {en: A}, value: }\n"))
	r.facility()
	c := r.pack.Facility.Contacts
	if len(r.findings) > 0 || len(c) != 2 || c[0].ID != "z" || c[0].Value != "0155" || c[1].Value != "" {
		t.Errorf("got %+v, %v", c, r.findings)
	}
}

func TestDigitSystems(t *testing.T) {
	if want := locale.NumberingSystems(); !slices.Equal(digitSystems, want) {
		t.Errorf("pack.yaml takes %v, and %v can be printed", digitSystems, want)
	}
}

func TestPackKeepsOrder(t *testing.T) {
	fsys := good()
	fsys["pack.yaml"].Data = []byte("title: {en: T}\nsource-language: en\nlanguages: [en]\nmodules: [wrapping, feeding, airing]\n")
	for _, m := range []string{"feeding", "airing"} {
		fsys[m+"/module.yaml"], fsys[m+"/en.md"] = fsys["wrapping/module.yaml"], fsys["wrapping/en.md"]
		fsys[m+"/figures/tuck.svg"] = fsys["wrapping/figures/tuck.svg"]
	}
	p, found, err := Pack(fsys, "pack")
	if err != nil || len(found) > 0 {
		t.Fatal(err, found)
	}
	var got []string
	for _, m := range p.Modules {
		got = append(got, m.ID)
	}
	if !slices.Equal(got, []string{"wrapping", "feeding", "airing"}) || len(p.Figures) != 3 {
		t.Errorf("got %v, %v", got, pack.Sorted(p.Figures))
	}
}

// TestSession reads how a day is laid out, and falls back on what is usual.
func TestSession(t *testing.T) {
	const start = "title: {en: Test}\nversion: \"1\"\nsource-language: en\nlanguages: [en]\nmodules: [wrapping]\n"
	r := newReader("pack.yaml", []byte(start+"pass-mark: 90\nsession: {start: \"08:30\", group: 12, break: 20}\n"))
	r.packFile()
	if want := (pack.Session{Start: 8*60 + 30, Group: 12, Break: 20}); len(r.findings) > 0 || r.pack.Session != want || r.pack.PassMark != 90 {
		t.Errorf("got %+v, pass mark %d, %v", r.pack.Session, r.pack.PassMark, r.findings)
	}
	r = newReader("pack.yaml", []byte(start+"pass-mark: 101\nsession: {start: 24:00, group: 0, break: soon}\n"))
	r.packFile()
	if len(r.findings) != 4 || r.pack.Session != pack.UsualSession || r.pack.PassMark != pack.UsualPassMark {
		t.Errorf("got %+v, pass mark %d, %v", r.pack.Session, r.pack.PassMark, r.findings)
	}
}

// TestWall reads which modules share a wall checklist, and says what is no module.
func TestWall(t *testing.T) {
	const start = "title: {en: Test}\nsource-language: en\nlanguages: [en]\nmodules: [wrapping, feeding]\n"
	for _, k := range []struct{ wall, want, at, mend string }{
		{"", "", "", ""},
		{"wall:\n", "", "", ""},
		{"wall: []\n", "", "", ""},
		{"wall: [feeding, wrapping]\n", "feeding wrapping", "", ""},
		{"wall: [wraping, feeding]\n", "feeding", "wraping", "write wrapping "},
		{"wall: [x, feeding]\n", "feeding", "x", "use one of: wrapping, feeding"},
		{"wall: [../feeding]\n", "", "../feeding", "use one of: wrapping, feeding"},
		{"wall: [feeding, feeding]\n", "feeding", "feeding", "take one of the two out"},
		{"wall: feeding\n", "", "feeding", "[a, b]"},
	} {
		r := newReader("pack.yaml", []byte(start+k.wall))
		r.packFile()
		var got []string
		for _, w := range r.pack.Wall {
			got = append(got, w.Name)
		}
		if strings.Join(got, " ") != k.want {
			t.Errorf("%q: got %v", k.wall, got)
		}
		if k.at == "" {
			if len(r.findings) > 0 {
				t.Errorf("%q: not expected: %v", k.wall, r.findings)
			}
			continue
		}
		if len(r.findings) != 1 {
			t.Errorf("%q: got %v", k.wall, r.findings)
			continue
		}
		f := r.findings[0]
		if at := string(f.Place.File.Bytes[f.Place.Span.Start:f.Place.Span.End]); f.Rule != "record-value" || at != k.at || !strings.Contains(f.Mend, k.mend) {
			t.Errorf("%q: got %s at %q, %s", k.wall, f.Rule, at, f.Mend)
		}
	}
}
