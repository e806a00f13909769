package check

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// clinicalUnits are the units of amounts that decide on care, as texts in English,
// Hindi and Arabic write them and foldUnit leaves them.
var clinicalUnits = folded(
	"°C", "°F", "%", "٪", "kg", "g", "mg", "ml",
	"degrees", "degree", "percent", "per cent", "grams", "gram", "kilograms", "kilogram", "millilitres", "millilitre",
	"seconds", "second", "minutes", "minute", "hours", "hour", "days", "day", "weeks", "week",
	"breaths", "breath",
	"डिग्री", "प्रतिशत", "फ़ीसदी", "किग्रा", "किलो", "किलोग्राम", "ग्राम", "मिग्रा", "मिली", "मिलीलीटर",
	"सेकंड", "सेकेंड", "मिनट", "मिनटों", "घंटे", "घंटा", "घंटों", "दिन", "दिनों", "हफ़्ते", "हफ़्तों", "सप्ताह",
	"साँसें", "साँसों", "साँस", "सांसें", "सांस",
	"درجة", "درجات", "في المئة", "في المائة", "بالمئة", "بالمائة",
	"كيلوغرام", "كيلوغراماً", "كيلوغرامات", "غرام", "غراماً", "غرامات", "مليغرام", "مل", "مليلتر", "مليلترات",
	"ثانية", "ثوان", "ثوانٍ", "ثواني", "دقيقة", "دقائق", "ساعة", "ساعات", "يوم", "يوماً", "أيام", "أسبوع", "أسبوعاً", "أسابيع",
	"نفس", "نفساً", "أنفاس",
)

// otherUnits are the rest of what a pack counts and measures.
var otherUnits = folded(
	"m", "cm", "mm", "metres", "metre", "centimetres", "centimetre", "times", "time",
	"मीटर", "सेमी", "सेंटीमीटर", "मिमी", "बार",
	"متر", "متراً", "أمتار", "سنتيمتر", "سنتيمتراً", "سنتيمترات", "مرة", "مرات",
)

func folded(units ...string) []string {
	for i := range units {
		units[i] = foldUnit(units[i])
	}
	return units
}

// foldUnit takes away what may or may not be written: capitals, the Arabic marks of
// short vowels, and the dot below of Devanagari.
func foldUnit(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 0x064B && r <= 0x0652, r == 0x093C:
			return -1
		case r == 0x095E: // Devanagari fa as one character
			return 0x092B
		}
		return unicode.ToLower(r)
	}, text)
}

// A unitUse is a unit that follows an amount.
type unitUse struct {
	gap  string // what stands between the two
	unit string // as foldUnit leaves it
	rest string // what follows, as foldUnit leaves it
}

// unitAfter finds one of the units right after an amount.
func unitAfter(text string, units []string) (unitUse, bool) {
	word := strings.TrimLeft(text, "-\u2010\u2011 \u00a0\u2009\u202f")
	gap := text[:len(text)-len(word)]
	word = foldUnit(word)
	for _, u := range units {
		rest, found := strings.CutPrefix(word, u)
		next, _ := utf8.DecodeRuneInString(rest)
		if found && !unicode.In(next, unicode.L, unicode.M, unicode.Nd) {
			return unitUse{gap, u, rest}, true
		}
	}
	return unitUse{}, false
}

var allUnits = slices.Concat(clinicalUnits, otherUnits)

// A numeral is an amount with whatever decimal marks were written in and before it.
type numeral struct {
	start, end int
	text       string
}

var numeralText = regexp.MustCompile(`[0-9.,\x{066B}]*[0-9]`)

// numerals finds the numerals of a text in digits 0 to 9.
func numerals(text string) []numeral {
	var out []numeral
	for _, at := range numeralText.FindAllStringIndex(text, -1) {
		out = append(out, numeral{at[0], at[1], text[at[0]:at[1]]})
	}
	return out
}
