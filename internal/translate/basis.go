package translate

import (
	"fmt"
	"strings"
)

// basisRemark begins every file of bases.
const basisRemark = "# Kept by wardleaf: what each block of the translation was made from, as a digest of the source block and of the translation.\n"

// BasisFile writes the file of bases of a translation that was made from the source
// as the pairs give it: one line a unit, in reading order. A pair without a basis has no line.
func BasisFile(pairs []Pair) []byte {
	var b strings.Builder
	b.WriteString(basisRemark)
	for _, p := range pairs {
		if p.Basis != "" {
			fmt.Fprintf(&b, "%s\n", strings.TrimSpace(p.Source.ID+" "+p.Basis+" "+p.Own))
		}
	}
	return []byte(b.String())
}

// Followed returns the pairs with their translation recorded as made from the source
// as it stands now.
func (p *Pairing) Followed() []Pair {
	out := append([]Pair(nil), p.Pairs...)
	for i := range out {
		if out[i].Target != nil {
			out[i].Basis, out[i].Own = out[i].Digest, UnitDigest(*out[i].Target)
		}
	}
	return out
}
