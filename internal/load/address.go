package load

import (
	"fmt"
	"net/url"
	"path"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"

	"wardleaf/internal/finding"
	"wardleaf/internal/lesson"
	"wardleaf/internal/source"
)

// schemes that a link may have; every other is refused.
var schemes = []string{"https", "mailto", "tel", "number", "source", "module", "term", "facility", "sheet"}

var schemeOf = regexp.MustCompile(`^([A-Za-z][A-Za-z0-9+.-]*):`)

// split reads an address as written in Markdown. ok is false when it is not safe.
//
// The decision is made on what a browser could make of the address: escapes,
// character references and percent codes resolved, and characters that browsers
// skip taken away. A scheme must be allowed and written without such disguise.
func split(written []byte) (scheme, rest string, ok bool) {
	address := strings.TrimSpace(unescape(written))
	rest = address
	if m := schemeOf.FindStringSubmatch(address); m != nil {
		scheme, rest = strings.ToLower(m[1]), address[len(m[0]):]
	}
	bare := address
	for range 4 { // percent codes of percent codes
		bare = strings.Map(func(r rune) rune {
			if r <= ' ' || unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.IsSpace(r) {
				return -1
			}
			return r
		}, bare)
		decoded, err := url.PathUnescape(bare)
		if err != nil || decoded == bare {
			break
		}
		bare = decoded
	}
	seen := ""
	if m := schemeOf.FindStringSubmatch(bare); m != nil {
		seen = strings.ToLower(m[1])
	}
	switch {
	case seen != scheme:
		return "", "", false
	case scheme == "":
		// Two slashes of either kind name another host.
		return "", rest, !strings.HasPrefix(bare, "//") && !strings.Contains(bare, `\`)
	}
	return scheme, rest, slices.Contains(schemes, scheme)
}

// link fills in the address of a link and reports whether it is safe to follow.
func (c converter) link(in *lesson.Inline, written []byte) bool {
	scheme, rest, ok := split(written)
	if !ok {
		c.unsafe(in.Span, written)
		return false
	}
	in.Scheme, in.Target = scheme, rest
	if scheme == "" && !strings.HasPrefix(rest, "#") {
		in.Target, ok = c.inPack(rest, in.Span)
		if ok && path.Ext(in.Target) == ".svg" {
			c.want(in.Target, in.Span)
		}
	}
	return ok
}

// picture returns where a picture lies, from the root of the pack, or "sheet:" and a
// name; empty after saying why it cannot be used.
func (c converter) picture(img *ast.Image, at source.Span) string {
	scheme, rest, ok := split(img.Destination)
	switch {
	case ok && scheme == "sheet":
		return "sheet:" + rest
	case !ok || scheme != "":
		c.say("unsafe-link", at, fmt.Sprintf("a picture cannot come from %q", short(string(img.Destination))),
			"It would be missing on paper and without a network, and it tells a stranger who reads the page.",
			"draw it as SVG, put it into the module's folder figures, and give its path from the module")
		return ""
	}
	name, ok := c.inPack(rest, at)
	if !ok {
		return ""
	}
	if path.Ext(name) != ".svg" {
		c.say("figure-unsafe", at, "the picture is not an SVG drawing",
			"Only line drawings in SVG can be checked, and print sharp at every size.", "draw it as SVG")
		return ""
	}
	c.want(name, at)
	return name
}

func (c converter) unsafe(at source.Span, written []byte) {
	scheme, _, _ := strings.Cut(unescape(written), ":")
	mend := finding.Meant(scheme, schemes) +
		"use an address that begins with https:, mailto: or tel:, a name such as module:feeding, or a path inside the pack"
	if strings.EqualFold(scheme, "http") {
		mend = "write https:"
	}
	c.say("unsafe-link", at, fmt.Sprintf("the address %q is not allowed", short(string(written))),
		"An address of this kind can run a program, or does not work without a network.", mend)
}

// inPack resolves a path relative to the module's folder.
func (c converter) inPack(rest string, at source.Span) (string, bool) {
	name, err := url.PathUnescape(rest)
	if err != nil {
		name = rest
	}
	clean := path.Join(c.module, name)
	if path.IsAbs(name) || clean == ".." || strings.HasPrefix(clean, "../") || strings.ContainsRune(name, 0) {
		c.say("path-leaves-pack", at, fmt.Sprintf("%q leads out of the pack", short(rest)),
			"What lies outside is not there on another computer, and may be private.",
			"copy the file into the module's folder and give its path from there")
		return "", false
	}
	return clean, true
}

// short keeps a quotation within a line.
func short(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
