package drawing

import (
	"fmt"
	"strings"
)

// refusedElement says what is wrong with an element outside the subset, and the way out.
func refusedElement(name string) (what, mend string) {
	what = fmt.Sprintf("the element <%s> is not one that figures are made of", shorten(name))
	switch name {
	case "script":
		return "<script> would run code on the reader's device", "remove it"
	case "foreignObject":
		return "<foreignObject> can hold any web page", "remove it"
	case "style":
		return "<style> does not reach the printed page", "give each shape its own fill and stroke"
	case "image":
		return "<image> brings in another file", "draw the picture with paths"
	case "a":
		return "<a> is a link, and a printed figure has none", "remove it and keep what it holds"
	case "use", "defs", "symbol":
		return what, "repeat the shapes where they are needed"
	case "title", "desc", "metadata":
		return what, "remove it; the words for the picture stand in the lesson, where they are translated"
	case "tspan", "textPath":
		return what, "write the key letter or digit straight into <text>"
	case "animate", "animateTransform", "animateMotion", "animateColor", "set":
		return what, "remove it; paper does not move"
	case "filter", "clipPath", "mask", "pattern", "marker", "linearGradient", "radialGradient":
		return what, "draw it with plain shapes and flat colours"
	}
	return what, "use g, path, circle, ellipse, rect, line, polyline, polygon or text"
}

// refusedAttribute says what is wrong with an attribute outside the subset, and the way out.
func refusedAttribute(element, name string) (what, mend string) {
	what = fmt.Sprintf("the attribute %s is not one that <%s> may have here", shorten(name), shorten(element))
	switch {
	case strings.HasPrefix(strings.ToLower(name), "on"):
		return fmt.Sprintf("the attribute %s would run code on the reader's device", shorten(name)), "remove it"
	case name == "href" || strings.HasSuffix(name, ":href") || name == "src":
		return fmt.Sprintf("the attribute %s points to something outside the picture", shorten(name)), "remove it and draw what it points to"
	case name == "style" || name == "class":
		return fmt.Sprintf("the attribute %s does not reach the printed page", name), "write fill and stroke as attributes of their own"
	case strings.HasSuffix(name, "opacity"):
		return what, "choose a flat colour, which every printer gives alike"
	case name == "transform":
		return what, "put the shapes into a <g> and transform that"
	case name == "font-family":
		return what, "remove it; keys are set in the font of the language"
	case name == "xmlns" || strings.HasPrefix(name, "xmlns:"):
		return what, `keep one xmlns="` + namespace + `", on <svg>`
	}
	return what, "remove it"
}

// shorten keeps a name from a stranger's file short enough to print.
func shorten(name string) string {
	if r := []rune(name); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return name
}
