package redline

// beside says of each change whether the same block changed in the other languages of
// the module, which pair with the source language block by block.
func beside(pairs []*pairing, source string) {
	var src *pairing
	for _, p := range pairs {
		if p.lang == source {
			src = p
		}
	}
	if src == nil || src.now == nil {
		return
	}
	for _, p := range pairs {
		if p == src || p.now == nil {
			continue
		}
		for i := range src.changes {
			if !p.follows(&src.changes[i]) {
				src.changes[i].Unfollowed = append(src.changes[i].Unfollowed, p.lang)
			}
		}
		for i := range p.changes {
			p.changes[i].Alone = !src.follows(&p.changes[i])
		}
	}
}

// follows reports whether a lesson has a change that answers one of another language:
// of the block in the same place of the old lesson, or of the new one for a block that
// is new.
func (p *pairing) follows(c *found) bool {
	for i := range p.changes {
		d := &p.changes[i]
		switch {
		case c.was != nil && d.was != nil && c.was.path == d.was.path:
			return (c.Kind == Gone) == (d.Kind == Gone)
		case c.was == nil && d.was == nil && c.is.path == d.is.path:
			return true
		}
	}
	return false
}
