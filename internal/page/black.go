package page

// Black turns a document into one for a printer with black ink alone: text, rules and
// lines are black or white, and filled areas of drawings keep their lightness as grey.
// Nothing is told by colour alone, so nothing is lost. It changes d's items.
func Black(d *Document) {
	for i := range d.Pages {
		blackItems(d.Pages[i].Items)
	}
}

func blackItems(items []Item) {
	for _, it := range items {
		switch it := it.(type) {
		case *GlyphRun:
			it.Colour = it.Colour.blackOrWhite()
		case *Box:
			it.Colour = it.Colour.blackOrWhite()
		case *Path:
			if it.Fill != nil {
				g := it.Fill.grey()
				it.Fill = &g
			}
			if it.Stroke != nil {
				b := it.Stroke.blackOrWhite()
				it.Stroke = &b
			}
		case *Group:
			blackItems(it.Items)
		}
	}
}

// lightness is the luma of ITU-R BT.601, from 0 to 255.
func (c Colour) lightness() uint8 {
	return uint8((299*int(c.R) + 587*int(c.G) + 114*int(c.B) + 500) / 1000)
}

func (c Colour) grey() Colour {
	l := c.lightness()
	if l < 48 {
		l = 0
	}
	return Colour{l, l, l}
}

func (c Colour) blackOrWhite() Colour {
	if c.lightness() < 160 {
		return Colour{}
	}
	return Colour{255, 255, 255}
}
