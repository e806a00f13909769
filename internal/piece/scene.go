package piece

import (
	"wardleaf/internal/lesson"
	"wardleaf/internal/typeset"
)

// A scene is one picture side of a flip chart and the steps that the trainer talks
// through while the group sees it.
type scene struct {
	shown  []typeset.Step // in words, on the picture side
	talked []typeset.Step // on the side of the trainer
	figure *lesson.Block  // nil when the picture side is words alone
}

// mostInWords is how many steps without a picture one picture side holds.
const mostInWords = 4

// scenes divides the steps of a part. Each step with a picture is a scene. One or two
// steps without a picture are talked through with the next picture, or at the end of
// the part with the last; where there are more of them, or one that must never be
// missed, the group sees their words.
func scenes(p *lesson.Part, critical func(step int) bool) []scene {
	var out []scene
	var waiting []typeset.Step
	inWords := func() bool {
		must := len(waiting) > 2
		for _, s := range waiting {
			must = must || s.Critical
		}
		return must
	}
	for i := range p.Blocks {
		b := &p.Blocks[i]
		if b.Kind != lesson.List || !b.Ordered {
			continue
		}
		for k := range b.Items {
			step := typeset.Step{Item: &b.Items[k], Number: b.Start + k, Critical: critical(b.Start + k)}
			figure := step.Item.Figure()
			if figure == nil {
				waiting = append(waiting, step)
				continue
			}
			if inWords() {
				out = append(out, wordScenes(waiting)...)
				waiting = nil
			}
			out = append(out, scene{shown: []typeset.Step{step}, talked: append(waiting, step), figure: figure})
			waiting = nil
		}
	}
	switch {
	case len(waiting) == 0:
	case len(out) > 0 && !inWords():
		last := &out[len(out)-1]
		last.talked = append(last.talked, waiting...)
	default:
		out = append(out, wordScenes(waiting)...)
	}
	return out
}

// wordScenes spreads steps evenly over as few picture sides as hold them.
func wordScenes(steps []typeset.Step) []scene {
	var out []scene
	for sides := (len(steps) + mostInWords - 1) / mostInWords; sides > 0; sides-- {
		n := (len(steps) + sides - 1) / sides
		out = append(out, scene{shown: steps[:n], talked: steps[:n]})
		steps = steps[n:]
	}
	return out
}
