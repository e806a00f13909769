package locale

import (
	"encoding/json"
	"os"
	"testing"

	"github.com/nicksnyder/go-i18n/v2/i18n"
	"golang.org/x/text/language"
)

// TestPlural puts every sample of CLDR 48 (supplemental/plurals.json, cardinals, without
// compact notation) for the languages of languages.json through the choice of a label's
// plural form. testdata/plurals.json holds the samples by language and category.
func TestPlural(t *testing.T) {
	b, err := os.ReadFile("testdata/plurals.json")
	if err != nil {
		t.Fatal(err)
	}
	var samples map[string]map[string][]string
	if err := json.Unmarshal(b, &samples); err != nil {
		t.Fatal(err)
	}
	n := 0
	for tag, categories := range samples {
		bundle := i18n.NewBundle(language.English)
		bundle.MustAddMessages(language.MustParse(tag), &i18n.Message{
			ID: "form", Zero: "zero", One: "one", Two: "two", Few: "few", Many: "many", Other: "other",
		})
		l := i18n.NewLocalizer(bundle, tag)
		for want, values := range categories {
			for _, v := range values {
				n++
				if got, err := l.Localize(&i18n.LocalizeConfig{MessageID: "form", PluralCount: v}); got != want {
					t.Errorf("%s %s: got %s, want %s (%v)", tag, v, got, want, err)
				}
			}
		}
	}
	if n < 500 {
		t.Errorf("only %d samples", n)
	}
	t.Logf("%d samples in %d languages", n, len(samples))
}
