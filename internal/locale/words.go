package locale

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"strings"
)

// Words are what must be known of a language to compare texts in it: the words that
// turn a sentence round, count, compare, measure, or tell someone to stop. An empty
// list means that nothing is known, and nothing can be said about it.
//
// Forms are written as a text has them, in small letters where a script has two kinds.
// A word that often means something else is left out.
type Words struct {
	Negations struct {
		Turn    []string // not, never, no
		Without []string // without, unless
		Not     []string // phrases that hold one of these and negate nothing
	}
	Numbers map[string][]string // "0" to "12", "0.5" for a half, "2x" for twice
	Compare map[string][]string // at-least, up-to, over, under, as a number's own comparison
	Units   map[string][]string // forms that stand beside a numeral, by the unit's name in UnitNames
	// UnitsBefore: the language says a unit before its numeral, as Swahili does; signs follow it.
	UnitsBefore bool     `json:"units-before"`
	Stop        []string // say when to stop, hold back or get help; stems
	Call        []string // say whom to call; stems
	Blame       []string // wordings that blame a parent
	Steps       []string // join two actions in one step
	Unseen      []string // verbs for what an observer cannot see
	Jargon      []string // words of the ward that a family does not know
	// AllOrNone is how answers begin that refer to the other answers.
	AllOrNone []string `json:"all-or-none"`
}

// UnitNames are the units of Words.Units that decide on care, and then the others.
var UnitNames = []string{
	"°C", "°F", "%", "kg", "g", "mg", "ml", "second", "minute", "hour", "day", "week", "breath",
	"month", "year", "feed", "m", "cm", "mm", "time",
}

// DecidingUnits is how many of UnitNames decide on care.
const DecidingUnits = 13

// Words returns what is known of a language, or of the one that its tag begins with.
// It is nil when nothing is.
func (c *Catalog) Words(tag string) *Words {
	if w := c.words[tag]; w != nil {
		return w
	}
	base, _, _ := strings.Cut(tag, "-")
	return c.words[base]
}

// Script returns the ISO 15924 code of the script of a language whose facts are known,
// with or without labels, and whether it runs from right to left. Aran is Arabic in the
// Nastaliq style.
func (c *Catalog) Script(tag string) (script string, rtl, known bool) {
	f, known := c.facts[tag]
	if !known {
		base, _, _ := strings.Cut(tag, "-")
		f, known = c.facts[base]
	}
	return f.Script, rightToLeft[f.Script], known
}

// readWords reads words/<tag>.json of a folder; nil when there is none.
func readWords(fsys fs.FS, tag string) (*Words, error) {
	name := "words/" + tag + ".json"
	f, err := fsys.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	w := &Words{}
	dec := json.NewDecoder(f)
	dec.DisallowUnknownFields()
	if err := dec.Decode(w); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return w, nil
}
