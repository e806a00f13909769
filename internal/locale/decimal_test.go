package locale

import "testing"

func TestDecimal(t *testing.T) {
	c := catalog(t)
	for _, k := range []struct{ tag, digits, want string }{{"en", "latn", "1.5"}, {"hi", "deva", "१.५"}, {"ar", "arab", "١٫٥"}} {
		l, err := c.Locale(k.tag, k.digits)
		if err != nil {
			t.Fatal(err)
		}
		if got := l.Decimal("1.5"); got != k.want {
			t.Errorf("%s: %q, want %q", k.tag, got, k.want)
		}
	}
}
