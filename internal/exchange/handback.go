package exchange

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"wardleaf/internal/finding"
	"wardleaf/internal/load"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
	"wardleaf/internal/translate"
)

// A Result is what a file that came back would change.
type Result struct {
	Lang    string
	Modules []ModuleResult
	Changes []Change // lessons first, so that a bad moment leaves a block behind, not ahead

	updates []edit // of the file that came back
}

// A ModuleResult counts what became of the blocks of one module.
type ModuleResult struct {
	ID         string
	Made       bool // the lesson is new
	Taken      int  // blocks whose words were written
	Confirmed  int  // blocks whose words were right already
	Unfinished int  // blocks in state initial
	Left       int  // blocks that a warning tells of
	Dropped    int  // blocks taken out of the translation, since the source has them no more
}

// A Change is a new text of a file of the pack.
type Change struct {
	Path string // slash-separated, in the pack
	Data []byte
	Old  []byte // what the change was made from; nil when there was no file
}

// Handback holds a file that came back against a pack, and says what it would change.
// Blocks that force names, as "module/block", replace a newer translation, too. With
// an error among the findings there is nothing to change.
func Handback(p *pack.Pack, r *Return, force []string) (*Result, []finding.Finding) {
	h := &handback{reader: newReader(r.File), pack: p, in: r, force: force, res: &Result{Lang: r.Target}}
	if r.Source != p.Source || r.Target == p.Source || !slices.Contains(p.Languages, r.Target) {
		h.say(Mismatch, r.Head, fmt.Sprintf("the file translates from %q into %q; the pack is written in %s and has %s", short(r.Source), short(r.Target), p.Source, strings.Join(p.Languages, ", ")),
			"give the pack that it was handed off from, or add the language to languages in pack.yaml")
		return nil, h.findings
	}
	byModule := map[string][]*Returned{}
	for i := range r.Units {
		u := &r.Units[i]
		if !slices.ContainsFunc(p.Modules, func(m *pack.Module) bool { return m.ID == u.Module }) {
			var ids []string
			for _, m := range p.Modules {
				ids = append(ids, m.ID)
			}
			h.say(Mismatch, u.Span, fmt.Sprintf("the pack has no module %q", short(u.Module)), finding.Meant(u.Module, ids)+"give the pack that the file was handed off from")
			continue
		}
		byModule[u.Module] = append(byModule[u.Module], u)
	}
	var later []Change
	for _, m := range p.Modules {
		if us := byModule[m.ID]; us != nil {
			later = append(later, h.module(m, us)...)
		}
	}
	for _, name := range force {
		if !slices.ContainsFunc(r.Units, func(u Returned) bool { return u.Module+"/"+u.ID == name }) {
			h.say(Mismatch, source.Span{}, fmt.Sprintf("the file has no block %q to force", short(name)), "name it as MODULE/BLOCK, such as wrapping/steps.3.1")
		}
	}
	if h.failed {
		return nil, h.findings
	}
	h.res.Changes = append(h.res.Changes, later...)
	return h.res, h.findings
}

// Updated is the file that came back with its notes of what stands in the pack brought
// up to date, so that it can be worked on and handed back again. All else in it stays
// byte for byte, what the tool does not know included. Only XLIFF carries such notes.
func (res *Result) Updated(r *Return) []byte { return splice(r.File.Bytes, res.updates) }

type handback struct {
	*reader
	pack  *pack.Pack
	in    *Return
	force []string
	res   *Result
}

// block is one block of a module with what came back for it.
type block struct {
	pair translate.Pair
	text coded
	came *Returned // nil when nothing is taken
	same bool      // the words are those of the translation already
	own  string    // digest of the translation as it will stand in the pack
}

// module takes back the blocks of one module. It returns the change of its basis.
func (h *handback) module(m *pack.Module, us []*Returned) []Change {
	res := ModuleResult{ID: m.ID}
	pairing := translate.Paired(h.pack, m, h.in.Target)
	if pairing == nil {
		h.say(Mismatch, us[0].Span, fmt.Sprintf("the module %s has no lesson in %s", m.ID, h.pack.Source), "mend the pack first: wardleaf check")
		return nil
	}
	index := map[string]int{}
	blocks := make([]block, len(pairing.Pairs))
	for i, pair := range pairing.Pairs {
		index[pair.Source.ID] = i
		blocks[i] = block{pair: pair, text: newCoded(pair, m.Lessons[h.pack.Source], m.Lessons[h.in.Target])}
	}
	for _, u := range us {
		i, known := index[u.ID]
		if !known {
			h.unknown(m, u, us, pairing)
			res.Left++
			continue
		}
		h.take(&blocks[i], u, &res)
	}
	changes := h.write(m, blocks, pairing, &res)
	h.res.Modules = append(h.res.Modules, res)
	return changes
}

// unknown tells of a block that the source has not. Either the source has it no more,
// or its ID was changed in the file: then its words stand in a block that did not come back.
func (h *handback) unknown(m *pack.Module, u *Returned, us []*Returned, p *translate.Pairing) {
	changed := u.SourceDigest == ""
	for _, pair := range p.Pairs {
		if pair.Digest == u.SourceDigest && !slices.ContainsFunc(us, func(o *Returned) bool { return o.ID == pair.Source.ID }) {
			changed = true
		}
	}
	if changed {
		h.say(Mismatch, u.Span, fmt.Sprintf("the lesson %s has no block %q", m.ID, short(u.ID)), "send the file as it was handed off; IDs must not be changed")
		return
	}
	h.warn(Stale, u.Span, fmt.Sprintf("the lesson %s has no block %q any more; it was left out", m.ID, short(u.ID)), "hand the module off again when something is missing")
}

// take decides what becomes of one block that came back.
func (h *handback) take(b *block, u *Returned, res *ModuleResult) {
	name := u.Module + "/" + u.ID
	sameSource := u.Source.Same(b.text.source)
	switch {
	case u.SourceDigest == b.pair.Digest && !sameSource:
		h.say(Mismatch, u.Span, fmt.Sprintf("the source text of %s was changed in the file", short(name)), "put it back as it was; change the source in the pack, and hand off again")
		return
	case u.SourceDigest != b.pair.Digest && (u.SourceDigest != "" || !sameSource):
		if u.State != "initial" {
			h.warn(Stale, u.Span, fmt.Sprintf("the source of %s has changed since it was handed off; this translation was left out", short(name)), "hand the module off again, and translate what it says now")
			res.Left++
		}
		return
	case u.State == "initial":
		res.Unfinished++
		return
	case u.Target.Plain() == "" && !h.lone(b, u):
		h.say(BadState, u.Span, fmt.Sprintf("%s is in state %s, and its target is empty", short(name), u.State), "translate it, or set its state to initial")
		return
	}
	target := b.pair.Target
	b.same = target != nil && said(trimBreaks(u.Target, b.text.codes), b.text.codes) == said(trimBreaks(b.text.target, b.text.codes), b.text.codes)
	if b.same && b.pair.Standing() == translate.Current {
		b.came = u // nothing would change, whatever is wrong with it
		return
	}
	if !h.tags(b, u) || !h.text(u) {
		return
	}
	now := targetDigest(b.pair)
	if !b.same && u.TargetDigest != now && !(u.TargetDigest == "" && b.pair.Untranslated()) && !slices.Contains(h.force, name) {
		what := "was changed in the pack since it was handed off"
		if u.TargetDigest == "" {
			what = "is in the pack, and the file has lost what it was when it was handed off"
		}
		h.warn(Newer, u.Span, fmt.Sprintf("the translation of %s %s; it was left as it is", short(name), what),
			"compare the two; to put the one of the file in its place, add --force "+name)
		res.Left++
		return
	}
	b.came = u
}

// lone reports whether the source has no words either, only tags.
func (h *handback) lone(b *block, u *Returned) bool {
	return b.text.source.Plain() == "" && len(u.Target) > 0
}

// tags holds the tags of a target against those of the block.
func (h *handback) tags(b *block, u *Returned) bool {
	count := map[string]int{}
	ok := true
	var open []string
	bad := func(at source.Span, what, mend string) {
		if at == (source.Span{}) {
			at = u.TargetSpan
		}
		h.say(TagLost, at, fmt.Sprintf("%s/%s: %s", short(u.Module), short(u.ID), what), mend)
		ok = false
	}
	for _, r := range u.Target {
		if r.Kind == Words {
			continue
		}
		code := b.text.code(r.Text)
		switch {
		case code == nil:
			bad(r.Span, fmt.Sprintf("the source has no tag %s", short(r.Text)), "use the tags of the source text alone")
			continue
		case code.Lone != (r.Kind == Lone):
			bad(r.Span, fmt.Sprintf("the tag %s (%s) must be written as in the source", r.Text, describe(code)), "copy it from the source text")
			continue
		}
		switch r.Kind {
		case Open:
			open = append(open, r.Text)
		case Close:
			if n := len(open); n == 0 || open[n-1] != r.Text {
				bad(r.Span, fmt.Sprintf("the tag %s (%s) is closed where it is not the last one opened", r.Text, describe(code)), "let tags lie inside each other, not across")
				return false
			}
			open = open[:len(open)-1]
			continue
		}
		if count[r.Text]++; count[r.Text] == 2 {
			bad(r.Span, fmt.Sprintf("the tag %s (%s) stands twice in the target", r.Text, describe(code)), "keep it once")
		}
	}
	if len(open) > 0 {
		bad(source.Span{}, fmt.Sprintf("the tag %s is opened and not closed", open[0]), "close it behind the words it belongs to")
	}
	for i := range b.text.codes {
		if c := &b.text.codes[i]; c.Needed && count[c.ID] == 0 {
			bad(source.Span{}, fmt.Sprintf("the tag %s (%s) is missing from the target", c.ID, describe(c)), "put it round the words it belongs to, as in the source text")
		}
	}
	return ok
}

func describe(c *Code) string { return strings.TrimSpace(c.Type + " " + c.About) }

// text refuses characters that a lesson may not hold.
func (h *handback) text(u *Returned) bool {
	for _, r := range u.Target {
		if r.Kind != Words {
			continue
		}
		for _, c := range r.Text {
			if load.Hidden(c) || c == unicode.ReplacementChar || !xmlChar(c) {
				at := r.Span
				if at == (source.Span{}) {
					at = u.TargetSpan
				}
				h.say(BadText, at, fmt.Sprintf("a character that cannot be printed (U+%04X) stands in %s/%s", c, short(u.Module), short(u.ID)), "delete it; direction follows from the language, and needs no mark")
				return false
			}
		}
	}
	return true
}

// write makes the changes of one module: of its lesson, at once, and of its basis.
func (h *handback) write(m *pack.Module, blocks []block, p *translate.Pairing, res *ModuleResult) []Change {
	l := m.Lessons[h.in.Target]
	rebuild := l == nil || !p.Alike()
	needed := false
	lacking := 0
	for _, b := range blocks {
		switch {
		case b.came != nil && !b.same:
			res.Taken++
			needed = true
		case b.came != nil && b.pair.Standing() != translate.Current:
			res.Confirmed++
		case b.pair.Target == nil:
			lacking++
		}
	}
	if res.Taken+res.Confirmed == 0 {
		return nil
	}
	if needed && rebuild && lacking > 0 {
		what := fmt.Sprintf("the lesson %s/%s.md would lack %d of %d blocks; nothing was taken of it", m.ID, h.in.Target, lacking, len(blocks))
		h.warn(Partial, h.first(blocks), what, "translate the rest, set its state to translated, and hand back again")
		res.Left += res.Taken + res.Confirmed
		res.Taken, res.Confirmed = 0, 0
		return nil
	}
	path := m.ID + "/" + h.in.Target
	if needed {
		data, ok := h.lesson(m, blocks, rebuild)
		if !ok {
			return nil
		}
		change := Change{Path: path + ".md", Data: data}
		if l != nil {
			change.Old = l.File.Bytes
		}
		h.res.Changes = append(h.res.Changes, change)
		res.Made = l == nil
		if rebuild && l != nil {
			kept := 0
			for _, b := range blocks {
				if b.pair.Target != nil {
					kept++
				}
			}
			res.Dropped = len(translate.Units(l)) - kept
		}
	}
	if rebuild && !needed {
		return nil // the basis names blocks by the source, and the lesson is not built like it
	}
	pairs := make([]translate.Pair, len(blocks))
	for i, b := range blocks {
		pairs[i] = b.pair
		if b.came != nil {
			pairs[i].Basis, pairs[i].Own = b.pair.Digest, b.own
			if b.same {
				pairs[i].Own = translate.UnitDigest(*b.pair.Target)
			}
		}
	}
	change := Change{Path: path + ".basis", Data: translate.BasisFile(pairs)}
	if old := m.Basis[h.in.Target]; old != nil {
		change.Old = old.File.Bytes
		if bytes.Equal(change.Old, change.Data) || sameBasis(old, pairs) {
			return nil
		}
	}
	return []Change{change}
}

// sameBasis reports whether a file of bases says what the pairs say already.
func sameBasis(old *pack.Basis, pairs []translate.Pair) bool {
	n := 0
	for _, p := range pairs {
		if p.Basis != "" {
			n++
		}
		if u := old.Units[p.Source.ID]; u.Digest != p.Basis || u.Own != p.Own {
			return false
		}
	}
	return n == len(old.Units)
}

// first is the place of the first block that is taken.
func (h *handback) first(blocks []block) source.Span {
	for _, b := range blocks {
		if b.came != nil {
			return b.came.Span
		}
	}
	return source.Span{}
}

// lesson writes the blocks taken into the translation in place; or, when there is none
// or it is not built like the source, every block into a copy of the source. It reads
// the result back, and refuses what does not say what it should.
func (h *handback) lesson(m *pack.Module, blocks []block, rebuild bool) ([]byte, bool) {
	base := m.Lessons[h.in.Target]
	if rebuild {
		base = m.Lessons[h.pack.Source]
	}
	var edits []edit
	want := make([]string, len(blocks))
	for i, b := range blocks {
		text, unit := b.text.target, b.pair.Target
		write := b.came != nil && !b.same
		if write {
			text = b.came.Target
		}
		want[i] = said(trimBreaks(text, b.text.codes), b.text.codes)
		if rebuild {
			unit, write = &b.pair.Source, true
		}
		if write {
			edits = append(edits, edit{unit.Span, markdown(text, b.text.codes, placeIn(base.File.Bytes, *unit))})
		}
	}
	data := splice(base.File.Bytes, edits)
	got, wrong := load.Lesson(m.ID, h.in.Target, data)
	ok := true
	var units []translate.Unit
	if got != nil {
		units = translate.Units(got)
	}
	for i, b := range blocks {
		at := h.first(blocks)
		if b.came != nil {
			at = b.came.TargetSpan
		}
		if i >= len(units) || units[i].ID != b.pair.Source.ID {
			h.unwritable(m, b, at)
			return nil, false
		}
		now := newCoded(translate.Pair{Source: b.pair.Source, Target: &units[i]}, m.Lessons[h.pack.Source], got)
		if said(trimBreaks(now.target, now.codes), now.codes) != want[i] {
			h.unwritable(m, b, at)
			ok = false
			continue
		}
		blocks[i].own = translate.UnitDigest(units[i])
		if b.came != nil && b.came.digestSpan != (source.Span{}) {
			h.res.updates = append(h.res.updates, edit{b.came.digestSpan, translate.UnitDigest(units[i])})
		}
	}
	if len(units) != len(blocks) || len(wrong) > 0 {
		what := ""
		if len(wrong) > 0 {
			what = ": " + wrong[0].What
		}
		h.say(BadText, h.first(blocks), fmt.Sprintf("the translation of %s cannot be written as a lesson%s", m.ID, what), "look for signs in it that mean something in Markdown")
		return nil, false
	}
	return data, ok
}

func (h *handback) unwritable(m *pack.Module, b block, at source.Span) {
	h.say(BadText, at, fmt.Sprintf("the target of %s/%s cannot be written as it stands", m.ID, b.pair.Source.ID),
		"put a blank, or no sign, where bold words begin and end; do not put a link inside a link")
}
