package font

// script says how a script is set: its family, the family's scale and the leading
// it needs, as a multiple of Latin's.
type script struct {
	family         string
	scale, leading float64
	base           string // base letters; see scripts
	wholeWords     bool
	space          int // see Family.Space
}

// scripts lists the scripts that the embedded fonts can set, by ISO 15924 code.
//
// Scale brings the mean height of the base letters to that of Latin's x and H, half
// way between the letters that make up most of a text and the tallest. Where a script
// has low letters and tall ones, one of each is named, the tall one last; where all
// are of one height, one of them. It may miss by a twentieth: round and open letters
// (Tamil, Burmese, Thai) are left a little lower, dense ones (Devanagari, Ethiopic) made
// a little taller. TestScales measures the outlines.
//
// Leading keeps what hangs below one line clear of what stands on the next, and leaves
// some white where letters fill the line; TestLeading in package shape measures words.
var scripts = map[string]script{
	"Latn": {family: "NotoSans", base: "xH", scale: 1, leading: 1},
	"Deva": {family: "NotoSansDevanagari", base: "क", scale: 1.04, leading: 1.16},
	"Beng": {family: "NotoSansBengali", base: "ক", scale: 1.04, leading: 1.16},
	"Taml": {family: "NotoSansTamil", base: "க", scale: 1.08, leading: 1.08},
	"Telu": {family: "NotoSansTelugu", base: "లక", scale: 1.02, leading: 1.2},
	"Arab": {family: "NotoNaskhArabic", base: "دا", scale: 1.2, leading: 1.24},
	"Aran": {family: "NotoNastaliqUrdu", base: "دا", scale: 0.96, leading: 2, wholeWords: true, space: 250},
	"Ethi": {family: "NotoSansEthiopic", base: "ሀ", scale: 0.91, leading: 1.06},
	"Mymr": {family: "NotoSansMyanmar", base: "က", scale: 1.1, leading: 1.45},
	"Khmr": {family: "NotoSansKhmer", base: "ក", scale: 1.05, leading: 1.45},
	"Thai": {family: "NotoSansThai", base: "ก", scale: 1.08, leading: 1.24},
}

const latin = "Latn"

// fallback is the order in which families are tried for what the script's own family lacks.
var fallback = []string{latin, "Arab", "Deva", "Beng", "Taml", "Telu", "Ethi", "Mymr", "Khmr", "Thai", "Aran"}
