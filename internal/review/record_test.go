package review

import (
	"strings"
	"testing"

	"wardleaf/internal/load"
	"wardleaf/internal/pack"
)

// TestAppend adds a sign-off to records as people write them. NEW stands for the
// entry, after an indent; everything else must come out as it is.
func TestAppend(t *testing.T) {
	const old = "- role: Doctor\n    lang: hi\n    date: 2026-01-01\n    digest: sha256:00\n"
	flush := strings.ReplaceAll(old, "\n    ", "\n  ")
	for name, k := range map[string][2]string{
		"empty list":         {"minutes: 1\nsign-offs: []\ntranslations: {}\n", "minutes: 1\nsign-offs:\n  NEW\ntranslations: {}\n"},
		"empty list, spaced": {"sign-offs :  [ ]   # none yet\nminutes: 1\n", "sign-offs :   # none yet\n  NEW\nminutes: 1\n"},
		"nothing":            {"sign-offs:\nminutes: 1\n", "sign-offs:\n  NEW\nminutes: 1\n"},
		"null":               {"sign-offs: null\nminutes: 1\n", "sign-offs:\n  NEW\nminutes: 1\n"},
		"last, no line end":  {"minutes: 1\nsign-offs: []", "minutes: 1\nsign-offs:\n  NEW\n"},
		"absent":             {"# top\nminutes: 1 # one", "# top\nminutes: 1 # one\nsign-offs:\n  NEW\n"},
		"empty file":         {"", "sign-offs:\n  NEW\n"},
		"one there":          {"sign-offs:\n  " + old + "\n# below\nminutes: 1\n", "sign-offs:\n  " + old + "  NEW\n\n# below\nminutes: 1\n"},
		"flush with the key": {"sign-offs: # here\n" + flush + "minutes: 1\n", "sign-offs: # here\n" + flush + "NEW\nminutes: 1\n"},
		"remark within":      {"sign-offs:\n  # first\n  " + old + "minutes: 1\n", "sign-offs:\n  # first\n  " + old + "  NEW\nminutes: 1\n"},
		"no line end":        {"sign-offs:\n  " + strings.TrimSuffix(old, "\n"), "sign-offs:\n  " + old + "  NEW\n"},
		"byte order mark":    {"\ufeffminutes: 1\nsign-offs: []\n", "\ufeffminutes: 1\nsign-offs:\n  NEW\n"},
	} {
		for _, eol := range []string{"\n", "\r\n"} {
			s := pack.SignOff{Role: `Nurse "in charge" \ नर्स`, Lang: "en", Digest: "sha256:12", Date: pack.Date{Time: day("2026-11-25")}}
			in, want := strings.ReplaceAll(k[0], "\n", eol), k[1]
			i := strings.Index(want, "NEW\n")
			indent := want[strings.LastIndex(want[:i], "\n")+1 : i]
			entry := strings.ReplaceAll("- role: \"Nurse \\\"in charge\\\" \\\\ नर्स\"\n  lang: \"en\"\n  date: 2026-11-25\n  digest: \"sha256:12\"\n", "\n  ", "\n"+indent+"  ")
			want = strings.ReplaceAll(strings.Replace(want, "NEW\n", entry, 1), "\n", eol)
			if eol == "\r\n" && !strings.Contains(in, eol) {
				continue
			}
			got, err := Append("m", []byte(in), s)
			if err != nil || string(got) != want {
				t.Errorf("%s (%q): %v, got\n%q, want\n%q", name, eol, err, got, want)
				continue
			}
			// A second one goes behind the first.
			s.Role = "Second"
			again, err := Append("m", got, s)
			if rec, _ := load.Record("m", again); err != nil || rec.SignOffs[len(rec.SignOffs)-1].Role != "Second" {
				t.Errorf("%s: a second one: %v\n%s", name, err, again)
			}
		}
	}
}

// TestAppendRefuses: what cannot be added to safely is left alone.
func TestAppendRefuses(t *testing.T) {
	good := pack.SignOff{Role: "Nurse", Lang: "en", Digest: "sha256:12", Date: pack.Date{Time: day("2026-11-25")}}
	for _, record := range []string{
		"sign-offs: [{role: Doctor, lang: hi}]\n",
		"sign-offs: [\n]\n",
		"\"sign-offs\": []\n",
		"{minutes: 1, sign-offs: []}\n",
		"minutes: 1\n...\n",
		"  minutes: 1\n  sign-offs: []\n",
		"minutes: [\n",
		"sign-offs: none\n",
		"sign-offs:\n  role: Doctor\n",
		"caf\xe9",
		"sign-offs:\n-\nminutes: 1\n", // the parser takes minutes for part of the item
	} {
		if got, err := Append("m", []byte(record), good); err == nil || !strings.Contains(err.Error(), "hyphen") {
			t.Errorf("%q: got %q, %v", record, got, err)
		}
	}
	for _, role := range []string{"", "  ", " Nurse", "Nurse\nlang: hi", "Nurse\u202e", "\xff", strings.Repeat("n", 101)} {
		s := good
		s.Role = role
		if _, err := Append("m", []byte("sign-offs: []\n"), s); err == nil || !strings.Contains(err.Error(), "role") {
			t.Errorf("%q: %v", role, err)
		}
	}
}

// FuzzAppend: whatever the record, what comes out holds one sign-off more, and
// without it is what went in.
func FuzzAppend(f *testing.F) {
	f.Add([]byte("minutes: 1\nsign-offs: []\n"))
	f.Add([]byte("sign-offs:\n- role: a\n\n# b\nminutes: 1"))
	s := pack.SignOff{Role: "Nurse", Lang: "en", Digest: "sha256:12", Date: pack.Date{Time: day("2026-11-25")}}
	f.Fuzz(func(t *testing.T, record []byte) {
		before, _ := load.Record("m", record)
		got, err := Append("m", record, s)
		if err != nil {
			return
		}
		after, findings := load.Record("m", got)
		if len(findings) > 0 || len(after.SignOffs) != len(before.SignOffs)+1 {
			t.Errorf("%q became %q", record, got)
		}
		if len(got) < len(record) {
			t.Errorf("%q lost text: %q", record, got)
		}
		if after.Minutes != before.Minutes || after.Prepared.Text != before.Prepared.Text || after.Due.Text != before.Due.Text {
			t.Errorf("%q changed otherwise: %q", record, got)
		}
	})
}
