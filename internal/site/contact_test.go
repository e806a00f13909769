package site

import (
	"strings"
	"testing"

	"wardleaf/internal/pack"
)

func TestDialled(t *testing.T) {
	for value, want := range map[string]string{
		"01234 567":            "01234567",
		"+91 (0)11-234.567":    "+91011234567",
		"(+91) 11/23":          "+911123",
		"":                     "",
		"5":                    "",
		"Ward 3, Long Road 12": "",
		"ward@example.org":     "",
		"12 34 ext 5":          "",
		"12+34":                "",
		"javascript:1234":      "",
	} {
		if got := dialled(value); got != want {
			t.Errorf("%q is dialled %q, want %q", value, got, want)
		}
	}
}

// A telephone is a link to tap in the caution block, too; what is no telephone is not,
// and what is not filled in is a line to write on.
func TestContactsInText(t *testing.T) {
	for value, want := range map[string]string{
		"01234 567": `(<a href="tel:01234567"><bdo dir="ltr">01234 567</bdo></a>)`,
		"Room <3>":  `(<bdi>Room &lt;3&gt;</bdi>)`,
		"":          `(<span class="blank"></span>)`,
	} {
		page := string(buildWith(t, func(p *pack.Pack) { p.Facility.Contacts[0].Value = value })["en/holding.html"])
		caution := page[strings.Index(page, `class="caution"`):strings.Index(page, `class="materials"`)]
		if !strings.Contains(caution, want) {
			t.Errorf("contact %q: no %s in %s", value, want, caution)
		}
	}
}
