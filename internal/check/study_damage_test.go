package check

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing/fstest"
	"unicode"
	"unicode/utf8"

	"wardleaf/internal/lesson"
	"wardleaf/internal/pack"
	"wardleaf/internal/translate"
)

// A scene is where one mistake is planted.
type scene struct {
	plot
	pack  *pack.Pack
	files fstest.MapFS
	rng   *rand.Rand
}

// A damage is one kind of mistake. plant returns the file, its text with the mistake in
// it, and what was done; an empty name when there is no place for it.
type damage struct {
	name  string
	plant func(*scene) (file, text, what string)
}

var damages = []damage{
	{"number changed", func(s *scene) (string, string, string) {
		return s.inLink("number", func(t string) string { return s.digitChanged(t) })
	}},
	{"digits swapped", func(s *scene) (string, string, string) { return s.inLink("number", digitsSwapped) }},
	{"decimal mark moved", func(s *scene) (string, string, string) { return s.inLink("number", decimalMoved) }},
	{"decimal mark lost", func(s *scene) (string, string, string) { return s.inLink("number", decimalLost) }},
	{"range turned round", func(s *scene) (string, string, string) { return s.inLink("number", rangeTurned) }},
	{"unit changed", func(s *scene) (string, string, string) {
		return s.inLink("number", func(t string) string { return s.unitChanged(t) })
	}},
	{"threshold turned round", func(s *scene) (string, string, string) { return s.inLink("number", s.compareTurned) }},
	{"number word changed", func(s *scene) (string, string, string) {
		return s.inUnits(func(u translate.Unit) bool { return true }, s.numberWordChanged)
	}},
	{"not lost", func(s *scene) (string, string, string) { return s.inUnits(grave, s.negationLost) }},
	{"not added", func(s *scene) (string, string, string) { return s.inUnits(grave, s.negationAdded) }},
	{"caution deleted", func(s *scene) (string, string, string) {
		return s.part(lesson.Caution, func(string, string) string { return "" })
	}},
	{"caution emptied", func(s *scene) (string, string, string) {
		return s.part(lesson.Caution, func(head, _ string) string { return head + "\n\n" })
	}},
	{"caution moved down", func(s *scene) (string, string, string) { return s.partMoved(lesson.Caution) }},
	{"caution lost an item", func(s *scene) (string, string, string) { return s.itemLost(lesson.Caution) }},
	{"whom to call lost", func(s *scene) (string, string, string) {
		return s.inText(facilityLink, "$1", "a contact is plain text")
	}},
	{"step lost", func(s *scene) (string, string, string) { return s.itemLost(lesson.Steps) }},
	{"steps swapped", func(s *scene) (string, string, string) { return s.itemsSwapped(lesson.Steps) }},
	{"checklist item lost", func(s *scene) (string, string, string) { return s.itemLost(lesson.Checklist) }},
	{"warning sign lost", func(s *scene) (string, string, string) { return s.itemLost(lesson.WarningSigns) }},
	{"what to do exchanged", func(s *scene) (string, string, string) { return s.itemsSwapped(lesson.WarningSigns) }},
	{"right answer moved", func(s *scene) (string, string, string) { return s.answerMoved() }},
	{"right answer lost", func(s *scene) (string, string, string) { return s.inText(rightMark, "- [ ]", "no answer is right") }},
	{"two right answers", func(s *scene) (string, string, string) {
		return s.inQuiz(regexp.MustCompile(`- \[ \]`), "- [x]", "one more answer is right")
	}},
	{"reason lost", func(s *scene) (string, string, string) {
		return s.inQuiz(regexp.MustCompile(`(?m)^   > .*\n`), "", "a reason is gone")
	}},
	{"bold lost", func(s *scene) (string, string, string) {
		return s.inUnits(func(u translate.Unit) bool { return s.critical(u) && strong(u.Inlines) }, func(t string) string { return strings.ReplaceAll(t, "**", "") })
	}},
	{"citation lost", func(s *scene) (string, string, string) {
		return s.inText(regexp.MustCompile(`\[([^\]]*)\]\(source:[^)]*\)`), "$1", "a citation is plain text")
	}},
	{"citation exchanged", func(s *scene) (string, string, string) {
		return s.inText(regexp.MustCompile(`\(source:[^)]*\)`), "(source:no-such-work)", "a citation leads nowhere")
	}},
	{"number link lost", func(s *scene) (string, string, string) {
		return s.inText(regexp.MustCompile(`\[([^\]]*)\]\(number:[^)]*\)`), "$1", "a number is plain text")
	}},
	{"number link exchanged", func(s *scene) (string, string, string) { return s.numberExchanged() }},
	{"figure exchanged", func(s *scene) (string, string, string) { return s.figureExchanged() }},
	{"figure lost", func(s *scene) (string, string, string) {
		return s.inText(regexp.MustCompile(`(?m)^ *!\[[^\]]*\]\(figures/[^)]*\)\n\n?`), "", "a figure is gone")
	}},
	{"alternative text lost", func(s *scene) (string, string, string) {
		return s.inText(regexp.MustCompile(`!\[[^\]]+\]`), "![]", "an alternative text is gone")
	}},
	{"figure unsafe", func(s *scene) (string, string, string) { return s.figureUnsafe() }},
	{"control character", func(s *scene) (string, string, string) {
		return s.inUnits(func(translate.Unit) bool { return true }, func(t string) string { return "\u202e" + t })
	}},
	{"look-alike letter", func(s *scene) (string, string, string) { return s.inUnits(grave, lookAlike) }},
	{"markup from elsewhere", func(s *scene) (string, string, string) {
		return s.inUnits(grave, func(t string) string { return "<b>" + t + "</b>" })
	}},
	{"unsafe address", func(s *scene) (string, string, string) {
		return s.inUnits(grave, func(t string) string { return "[.](javascript:alert(1)) " + t })
	}},
	{"stand-in left", func(s *scene) (string, string, string) {
		return s.inUnits(grave, func(t string) string { return t + " TODO" })
	}},
	{"block cut short", func(s *scene) (string, string, string) { return s.inUnits(long, cutShort) }},
	{"block in another language", func(s *scene) (string, string, string) { return s.foreign() }},
	{"source changed alone", func(s *scene) (string, string, string) { return s.sourceChanged() }},
	{"term exchanged", func(s *scene) (string, string, string) { return s.termExchanged() }},
	{"no-break space lost", func(s *scene) (string, string, string) {
		return s.inLink("number", func(t string) string { return strings.Replace(t, "\u00a0", " ", 1) })
	}},
	{"kept number changed", func(s *scene) (string, string, string) { return s.keptNumber() }},
	{"kept unit changed", func(s *scene) (string, string, string) { return s.keptUnit() }},
	{"source taken out", func(s *scene) (string, string, string) { return s.withoutSource() }},
	{"review overdue", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`due: .*`), "due: 2026-10-31", "due is past")
	}},
	{"review pushed back", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`due: .*`), "due: 2031-11-25", "due is years away")
	}},
	{"review date lost", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`  due: .*\n`), "", "due is gone")
	}},
	{"date in the future", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`prepared: .*`), "prepared: 2027-01-05", "prepared lies ahead")
	}},
	{"date ambiguous", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`due: .*`), "due: 03/04/2027", "due is ambiguous")
	}},
	{"sign-off forged", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`sign-offs: \[\]`), "sign-offs:\n  - role: Head of ward\n    lang: "+s.lang+"\n    date: 2026-11-24\n    digest: sha256:"+strings.Repeat("ab", 32), "a sign-off nobody gave")
	}},
	{"state without review", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`(?m)^  `+regexp.QuoteMeta(s.lang)+`: \{state: translated\}`), "  "+s.lang+": {state: final}", "said to be final")
	}},
	{"critical step unmarked", func(s *scene) (string, string, string) {
		return s.inRecord(regexp.MustCompile(`critical-steps: \[[^,\]]*, *`), "critical-steps: [", "a critical step is no longer marked")
	}},
}

func (s *scene) name() string { return s.module().ID + "/" + s.lang + ".md" }
func (s *scene) text() string { return string(s.files[s.name()].Data) }
func grave(u translate.Unit) bool {
	return slices.Contains(graveRoles, u.Role) && u.Kind != translate.Heading && u.Kind != translate.Alt
}
func long(u translate.Unit) bool { return utf8.RuneCountInString(said(u.Inlines)) > 80 }

func (s *scene) critical(u translate.Unit) bool {
	return u.Role == lesson.Caution || slices.ContainsFunc(s.module().Record.CriticalSteps, func(r pack.StepRef) bool {
		return u.Role == lesson.Steps && r.Part == u.Part && r.Step == u.Step
	})
}

// inUnits changes the Markdown of one unit of those that are wanted.
func (s *scene) inUnits(want func(translate.Unit) bool, change func(string) string) (string, string, string) {
	text, units := s.text(), s.units()
	for _, i := range s.rng.Perm(len(units)) {
		u := units[i]
		if !want(u) || u.Kind == translate.Alt {
			continue
		}
		old := text[u.Span.Start:u.Span.End]
		if now := change(old); now != old && now != "" {
			return s.name(), text[:u.Span.Start] + now + text[u.Span.End:], fmt.Sprintf("%s: %q for %q", u.ID, now, old)
		}
	}
	return "", "", ""
}

var anyLink = regexp.MustCompile(`\[([^\]]*)\]\((number|term):([^)]*)\)`)

// inLink changes the shown text of one link of a scheme.
func (s *scene) inLink(scheme string, change func(string) string) (string, string, string) {
	text := s.text()
	at := anyLink.FindAllStringSubmatchIndex(text, -1)
	for _, i := range s.rng.Perm(len(at)) {
		m := at[i]
		if text[m[4]:m[5]] != scheme {
			continue
		}
		old := text[m[2]:m[3]]
		if now := change(old); now != old {
			return s.name(), text[:m[2]] + now + text[m[3]:], fmt.Sprintf("%s: %q for %q", text[m[6]:m[7]], now, old)
		}
	}
	return "", "", ""
}

// inText replaces one place where an expression holds.
func (s *scene) inText(re *regexp.Regexp, with, what string) (string, string, string) {
	return s.replaced(s.name(), s.text(), re, with, what)
}

func (s *scene) inRecord(re *regexp.Regexp, with, what string) (string, string, string) {
	name := s.module().ID + "/module.yaml"
	return s.replaced(name, string(s.files[name].Data), re, with, what)
}

func (s *scene) replaced(name, text string, re *regexp.Regexp, with, what string) (string, string, string) {
	at := re.FindAllStringSubmatchIndex(text, -1)
	if len(at) == 0 {
		return "", "", ""
	}
	m := at[s.rng.IntN(len(at))]
	now := re.ExpandString(nil, with, text, m)
	return name, text[:m[0]] + string(now) + text[m[1]:], fmt.Sprintf("%s: %q", what, text[m[0]:m[1]])
}

var (
	rightMark    = regexp.MustCompile(`- \[x\]`)
	facilityLink = regexp.MustCompile(`\[([^\]]*)\]\(facility:[^)]*\)`)
)

// numberWordChanged writes another number from three to ten in the place of one.
func (s *scene) numberWordChanged(t string) string {
	x := s.lexicon()
	if len(fold(t)) != len(t) || strings.ContainsAny(t, "[") {
		return t
	}
	high := func(n numberForm) bool { return len(n.value) == 1 && n.value >= "3" || n.value == "10" }
	for _, n := range x.numbers {
		at := findWords(fold(t), n.form)
		if len(at) == 0 || !high(n) {
			continue
		}
		for _, o := range x.numbers {
			if o.value != n.value && high(o) {
				return t[:at[0]] + o.form + t[at[0]+len(n.form):]
			}
		}
	}
	return t
}

func (s *scene) digitChanged(t string) string {
	rs := []rune(t)
	for _, i := range s.rng.Perm(len(rs)) {
		if unicode.Is(unicode.Nd, rs[i]) {
			d := digit(rs[i])
			rs[i] += (d+1+rune(s.rng.IntN(8)))%10 - d
			return string(rs)
		}
	}
	return t
}

func digitsSwapped(t string) string {
	rs := []rune(t)
	for i := 0; i+1 < len(rs); i++ {
		if unicode.Is(unicode.Nd, rs[i]) && unicode.Is(unicode.Nd, rs[i+1]) && rs[i] != rs[i+1] {
			rs[i], rs[i+1] = rs[i+1], rs[i]
			return string(rs)
		}
	}
	return t
}

var decimal = regexp.MustCompile(`(\p{Nd})([.,\x{066B}])(\p{Nd})`)

func decimalMoved(t string) string { return decimal.ReplaceAllString(t, "$2$1$3") }
func decimalLost(t string) string  { return decimal.ReplaceAllString(t, "$1$3") }

var twoAmounts = regexp.MustCompile(`(\p{Nd}+(?:[.,\x{066B}]\p{Nd}+)?)([^\p{Nd}]+)(\p{Nd}+(?:[.,\x{066B}]\p{Nd}+)?)`)

func rangeTurned(t string) string { return twoAmounts.ReplaceAllString(t, "$3$2$1") }

// unitChanged writes another unit in the place of one that follows an amount.
func (s *scene) unitChanged(t string) string {
	x := s.lexicon()
	folded := fold(foldDigits(t))
	if len(folded) != len(fold(t)) && utf8.RuneCountInString(folded) != utf8.RuneCountInString(t) {
		return t
	}
	for _, u := range x.units {
		at := findWords(fold(t), u.form)
		if len(at) == 0 || len(fold(t)) != len(t) {
			continue
		}
		others := map[string]string{"second": "minute", "minute": "hour", "hour": "minute", "day": "week", "week": "day", "kg": "g", "g": "kg", "ml": "g", "cm": "m", "m": "cm", "°C": "%", "%": "°C", "breath": "hour"}
		for _, o := range x.units {
			if o.unit == others[u.unit] {
				return t[:at[0]] + o.form + t[at[0]+len(u.form):]
			}
		}
	}
	return t
}

func (s *scene) lexicon() *lexicon {
	c, err := catalog()
	if err != nil {
		panic(err)
	}
	return newLexicon(c.Words(s.lang))
}

// compareTurned writes less for more, or more for less.
func (s *scene) compareTurned(t string) string {
	x := s.lexicon()
	if len(fold(t)) != len(t) {
		return t
	}
	turned := map[string]string{"at-least": "under", "over": "under", "under": "over", "up-to": "at-least"}
	for _, c := range x.compare {
		if at := findWords(fold(t), c.form); len(at) > 0 {
			for _, o := range x.compare {
				if o.way == turned[c.way] {
					return t[:at[0]] + o.form + t[at[0]+len(c.form):]
				}
			}
		}
	}
	return t
}

// negationLost takes out the only words that turn a text round.
func (s *scene) negationLost(t string) string {
	x := s.lexicon()
	if turn, _ := x.negations(t); turn != 1 {
		return t
	}
	for _, w := range strings.FieldsFunc(t, func(r rune) bool { return !letter(r) && r != '\'' && r != '’' }) {
		if !among(x.turn, fold(w)) {
			continue
		}
		if at := findWords(t, w); len(at) > 0 {
			return strings.ReplaceAll(t[:at[0]]+t[at[0]+len(w):], "  ", " ")
		}
	}
	return t
}

// negationAdded puts a word that turns a text round before its last word.
func (s *scene) negationAdded(t string) string {
	x := s.lexicon()
	if turn, without := x.negations(t); turn+without > 0 || strings.Contains(t, "](") {
		return t
	}
	for _, w := range x.turn {
		if i := strings.LastIndexByte(strings.TrimSpace(t), ' '); i > 0 && !strings.ContainsAny(w, "- ") {
			return t[:i] + " " + w + t[i:]
		}
	}
	return t
}

// bounds of one part with a role: its heading, and what follows up to the next part.
func (s *scene) bounds(role lesson.Role) (start, body, end int) {
	l := s.module().Lessons[s.lang]
	part := l.Part(role)
	if part == nil {
		return 0, 0, 0
	}
	text := s.text()
	start, end = lineStart([]byte(text), part.Span.Start), len(text)
	for i := range l.Parts {
		if at := l.Parts[i].Span.Start; at > part.Span.Start && at < end {
			end = lineStart([]byte(text), at)
		}
	}
	return start, start + strings.IndexByte(text[start:], '\n'), end
}

func (s *scene) part(role lesson.Role, change func(head, body string) string) (string, string, string) {
	start, body, end := s.bounds(role)
	if end == 0 {
		return "", "", ""
	}
	text := s.text()
	return s.name(), text[:start] + change(text[start:body], text[body:end]) + text[end:], string(role)
}

func (s *scene) partMoved(role lesson.Role) (string, string, string) {
	start, _, end := s.bounds(role)
	if end == 0 {
		return "", "", ""
	}
	text := s.text()
	return s.name(), text[:start] + text[end:] + "\n" + text[start:end], string(role)
}

func (s *scene) items(role lesson.Role) []lesson.Item {
	l := s.module().Lessons[s.lang]
	if part := l.Part(role); part != nil {
		return append(part.Items(true), part.Items(false)...)
	}
	return nil
}

func (s *scene) itemLost(role lesson.Role) (string, string, string) {
	items := s.items(role)
	if len(items) < 2 {
		return "", "", ""
	}
	it := items[s.rng.IntN(len(items))]
	text := s.text()
	start, end := lineStart([]byte(text), it.Span.Start), it.Span.End
	return s.name(), text[:start] + strings.TrimLeft(text[end:], "\n"), fmt.Sprintf("%q", text[it.Span.Start:end])
}

// itemsSwapped exchanges what two neighbouring items say, without their marks.
func (s *scene) itemsSwapped(role lesson.Role) (string, string, string) {
	items := s.items(role)
	if len(items) < 2 {
		return "", "", ""
	}
	i := s.rng.IntN(len(items) - 1)
	a, b := items[i].Blocks, items[i+1].Blocks
	if len(a) == 0 || len(b) == 0 || len(a[0].Inlines) == 0 || len(b[0].Inlines) == 0 {
		return "", "", ""
	}
	as, ae := a[0].Inlines[0].Span.Start, a[0].Inlines[len(a[0].Inlines)-1].Span.End
	bs, be := b[0].Inlines[0].Span.Start, b[0].Inlines[len(b[0].Inlines)-1].Span.End
	text := s.text()
	return s.name(), text[:as] + text[bs:be] + text[ae:bs] + text[as:ae] + text[be:], fmt.Sprintf("%q and %q", text[as:ae], text[bs:be])
}

func (s *scene) inQuiz(re *regexp.Regexp, with, what string) (string, string, string) {
	start, _, end := s.bounds(lesson.Quiz)
	if end == 0 {
		return "", "", ""
	}
	text := s.text()
	_, quiz, done := s.replaced(s.name(), text[start:end], re, with, what)
	if quiz == "" {
		return "", "", ""
	}
	return s.name(), text[:start] + quiz + text[end:], done
}

func (s *scene) answerMoved() (string, string, string) {
	part := s.module().Lessons[s.lang].Part(lesson.Quiz)
	if part == nil {
		return "", "", ""
	}
	qs := part.Questions()
	q := qs[s.rng.IntN(len(qs))]
	text := s.text()
	right := slices.IndexFunc(q.Options, func(o lesson.Option) bool { return o.Right })
	other := (right + 1) % len(q.Options)
	mark := func(t string, at int, m string) string {
		i := strings.Index(t[at:], "[")
		return t[:at+i+1] + m + t[at+i+2:]
	}
	line := func(o lesson.Option) int { return lineStart([]byte(text), o.Span.Start) }
	return s.name(), mark(mark(text, line(q.Options[right]), " "), line(q.Options[other]), "x"), fmt.Sprintf("answer %d for %d", other+1, right+1)
}

func (s *scene) numberExchanged() (string, string, string) {
	text := s.text()
	at := anyLink.FindAllStringSubmatchIndex(text, -1)
	for _, i := range s.rng.Perm(len(at)) {
		m := at[i]
		if text[m[4]:m[5]] != "number" {
			continue
		}
		ids := pack.Sorted(s.pack.Numbers)
		id := ids[s.rng.IntN(len(ids))]
		return s.name(), text[:m[6]] + id + text[m[7]:], fmt.Sprintf("%s for %s", id, text[m[6]:m[7]])
	}
	return "", "", ""
}

var figureLink = regexp.MustCompile(`\]\((figures/[^)]*)\)`)

func (s *scene) figureExchanged() (string, string, string) {
	text := s.text()
	at := figureLink.FindAllStringSubmatchIndex(text, -1)
	if len(at) < 2 {
		return "", "", ""
	}
	i := s.rng.IntN(len(at) - 1)
	a, b := at[i], at[i+1]
	return s.name(), text[:a[2]] + text[b[2]:b[3]] + text[a[3]:], fmt.Sprintf("%s for %s", text[b[2]:b[3]], text[a[2]:a[3]])
}

func (s *scene) figureUnsafe() (string, string, string) {
	var names []string
	for n := range s.files {
		if strings.HasSuffix(n, ".svg") {
			names = append(names, n)
		}
	}
	slices.Sort(names)
	if len(names) == 0 {
		return "", "", ""
	}
	evil := []string{"<script>alert(1)</script>", "<image href=\"https://example.org/a.png\"/>", "<foreignObject/>", "<path d=\"M1 1\" onload=\"alert(1)\"/>", "<style>@import url(x.css);</style>"}
	name := names[s.rng.IntN(len(names))]
	e := evil[s.rng.IntN(len(evil))]
	return name, strings.Replace(string(s.files[name].Data), "</svg>", e+"</svg>", 1), name + ": " + e
}

var lookAlikes = map[rune]rune{'a': 'а', 'e': 'е', 'o': 'о', 'p': 'р', 'c': 'с', 'ا': 'l', 'ه': 'o', 'न': 'ন', 'র': 'ব', 'ন': 'न', 'ர': 'J', 'ሀ': 'U'}

// lookAlike writes a letter of another script within a word.
func lookAlike(t string) string {
	if strings.ContainsAny(t, "[]") {
		return t
	}
	rs := []rune(t)
	for i := 1; i+1 < len(rs); i++ {
		if !unicode.IsLetter(rs[i-1]) || !unicode.IsLetter(rs[i+1]) || !unicode.IsLetter(rs[i]) {
			continue
		}
		if o := lookAlikes[rs[i]]; o != 0 {
			rs[i] = o
			return string(rs)
		}
		if rs[i] > 0x2FF { // any other script has some letter like this one
			rs[i] = 'о'
			return string(rs)
		}
	}
	return t
}

func cutShort(t string) string {
	if strings.ContainsAny(t, "[*`") {
		return t
	}
	rs := []rune(t)
	return strings.TrimSpace(string(rs[:len(rs)/3]))
}

// foreign puts the block of another language in the place of one.
func (s *scene) foreign() (string, string, string) {
	for lang, l := range s.module().Lessons {
		if lang == s.lang {
			continue
		}
		other := map[string]translate.Unit{}
		for _, u := range translate.Units(l) {
			other[u.ID] = u
		}
		text, units := s.text(), s.units()
		for _, i := range s.rng.Perm(len(units)) {
			u := units[i]
			o, ok := other[u.ID]
			if !ok || u.Kind == translate.Alt || !grave(u) {
				continue
			}
			now := string(l.File.Bytes[o.Span.Start:o.Span.End])
			return s.name(), text[:u.Span.Start] + now + text[u.Span.End:], u.ID + " in " + lang
		}
	}
	return "", "", ""
}

// sourceChanged changes a word of the source, whose translation stays as it was.
func (s *scene) sourceChanged() (string, string, string) {
	if s.lang == s.pack.Source {
		return "", "", ""
	}
	src := *s
	src.lang = s.pack.Source
	return src.inUnits(grave, func(t string) string {
		if strings.ContainsAny(t, "[*`") {
			return t
		}
		words := strings.Fields(t)
		words[s.rng.IntN(len(words))] = "slowly"
		return strings.Join(words, " ")
	})
}

func (s *scene) termExchanged() (string, string, string) {
	ids := pack.Sorted(s.pack.Terms)
	return s.inLink("term", func(t string) string {
		other := s.pack.Terms[ids[s.rng.IntN(len(ids))]].In[s.lang]
		if other == "" || inflected(t, other) || inflected(other, t) {
			return t
		}
		return other
	})
}

// keptNumber changes the amount of a number that the module links to.
func (s *scene) keptNumber() (string, string, string) {
	return s.kept(regexp.MustCompile(`(?m)^  (?:amount|low|high): (.*)$`), func(v string) string { return s.digitChanged(v) })
}

func (s *scene) keptUnit() (string, string, string) {
	return s.kept(regexp.MustCompile(`(?m)^  unit: (.*)$`), func(v string) string {
		return map[string]string{"seconds": "minutes", "minutes": "hours", "hours": "days", "days": "weeks", "g": "kg", "kg": "g", "cm": "m", "m": "cm", "°C": "%", "%": "g", "g a day": "kg", "breaths a minute": "seconds"}[v]
	})
}

func (s *scene) kept(re *regexp.Regexp, change func(string) string) (string, string, string) {
	numbers, _ := translate.Covers(s.pack, s.module().Lessons[s.lang])
	text := string(s.files["numbers.yaml"].Data)
	for _, i := range s.rng.Perm(len(numbers)) {
		start := s.pack.Numbers[numbers[i]].Span.Start
		end := len(text)
		if n := regexp.MustCompile(`\n[a-z]`).FindStringIndex(text[start+1:]); n != nil {
			end = start + 1 + n[0]
		}
		m := re.FindStringSubmatchIndex(text[start:end])
		if m == nil {
			continue
		}
		old := text[start+m[2] : start+m[3]]
		if now := change(old); now != "" && now != old {
			return "numbers.yaml", text[:start+m[2]] + now + text[start+m[3]:], fmt.Sprintf("%s: %s for %s", numbers[i], now, old)
		}
	}
	return "", "", ""
}

func (s *scene) withoutSource() (string, string, string) {
	text := string(s.files["sources.yaml"].Data)
	at := regexp.MustCompile(`(?m)^[a-z][a-z0-9-]*:\n(?:  .*\n)+`).FindAllStringIndex(text, -1)
	if len(at) == 0 {
		return "", "", ""
	}
	m := at[s.rng.IntN(len(at))]
	return "sources.yaml", text[:m[0]] + text[m[1]:], strings.SplitN(text[m[0]:m[1]], ":", 2)[0]
}
