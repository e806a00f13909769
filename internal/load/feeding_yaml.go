package load

import (
	"fmt"

	"wardleaf/internal/finding"
	"wardleaf/internal/pack"
	"wardleaf/internal/source"
	"wardleaf/internal/ward"
)

// This file reads the ward's own feeding table, which takes the place of the
// published ones.

const whyMilk = "A wrong volume on the wall is given to every baby until somebody notices."

// Most days a row may go on for, and most feeds in a day and ml in a feed; more is a slip.
const (
	maxMilkDays = 60
	maxFeeds    = 24
	maxPerFeed  = 200
)

func (s subject) feedingTable(v *value) {
	if v.kind == nothing {
		return
	}
	t := &pack.FeedingTable{Span: v.span}
	var bands []*value
	s.group(v, "feeding-table", map[string]field{
		"dated": s.date(&t.Dated, "dated"),
		"bands": func(v *value) {
			if s.is(v, list, "bands") {
				bands = v.items
			}
		},
	})
	if t.Dated.Text == "" {
		s.missing(t.Span, "feeding-table", "dated")
	} else if t.Dated.Time.IsZero() {
		s.say("record-value", t.Dated.Span, fmt.Sprintf("dated must be a date; this is %q", t.Dated.Text), "Nobody could tell an old table from a new one.", "write year, month and day, such as 2026-11-25")
	}
	if len(bands) == 0 {
		s.missing(t.Span, "feeding-table", "bands")
	}
	sound := true
	for _, v := range bands {
		b, ok := s.milkBand(v)
		if sound = sound && ok; !ok {
			continue
		}
		for i, o := range t.Bands {
			if b.From <= o.To && o.From <= b.To {
				s.say("milk-table", v.span, fmt.Sprintf("this band of %d to %d g overlaps that of %d to %d g", b.From, b.To, o.From, o.To),
					"For a weight in both, two nurses would give two amounts.", "let one band end a gram before the next begins, such as to: 1499 and from: 1500")
				s.relate(t.Spans[i], "the other band")
				sound = false
				break
			}
		}
		t.Bands, t.Spans = append(t.Bands, b), append(t.Spans, v.span)
	}
	if sound && len(t.Bands) > 0 && !t.Dated.Time.IsZero() {
		s.r.pack.Facility.Feeding = t
	}
}

// milkBand reads one row, and says where it does not agree with itself.
func (s subject) milkBand(v *value) (ward.Band, bool) {
	before := len(s.r.findings)
	var b ward.Band
	var feeds, days *value
	s.group(v, "a band", map[string]field{
		"from":        s.between(&b.From, "from", ward.LeastWeight, ward.MostWeight),
		"to":          s.between(&b.To, "to", ward.LeastWeight, ward.MostWeight),
		"feeds-a-day": s.between(&b.Feeds, "feeds-a-day", 1, maxFeeds),
		"ml-per-feed": func(v *value) { feeds = v },
		"ml-per-day":  func(v *value) { days = v },
	})
	if finding.Count(s.r.findings[before:], finding.Error) > 0 {
		return b, false
	}
	for _, lack := range []struct {
		missing bool
		key     string
	}{{b.From == 0, "from"}, {b.To == 0, "to"}, {b.Feeds == 0, "feeds-a-day"}, {feeds == nil, "ml-per-feed"}} {
		if lack.missing {
			s.missing(v.span, "a band", lack.key)
			return b, false
		}
	}
	if b.From >= b.To {
		s.say("milk-table", v.span, fmt.Sprintf("the band goes from %d g to %d g", b.From, b.To), whyMilk, "put the smaller weight in from, in grams")
	}
	perFeed, at := s.volumes(feeds, "ml-per-feed", maxPerFeed)
	b.PerFeed = perFeed
	for i, ml := range perFeed {
		if i > 0 && ml < perFeed[i-1] {
			s.say("milk-table", at[i], fmt.Sprintf("day %d gives %d ml a feed, and day %d gave %d", i+1, ml, i, perFeed[i-1]), whyMilk, "mend the volume; from day to day it grows or stays")
		}
	}
	if days != nil && len(perFeed) > 0 {
		s.agree(b, days)
	}
	failed := finding.Count(s.r.findings[before:], finding.Error) > 0
	if n := len(perFeed); n > 0 && !failed {
		if most := b.From * ward.MostPerKilogram / 1000; b.PerDay(n) > most {
			s.sayAt(finding.Warning, "milk-table-high", at[n-1],
				fmt.Sprintf("day %d gives %d ml a day, more than %d ml/kg for a baby of %d g", n, b.PerDay(n), ward.MostPerKilogram, b.From),
				"It is more than the most that WHO, Managing newborn problems (2003), page F-30, names.", "check the volume, the feeds and the weights with whoever set the table")
		}
	}
	return b, !failed
}

// agree says where ml a day is not ml a feed times feeds a day.
func (s subject) agree(b ward.Band, v *value) {
	perDay, at := s.volumes(v, "ml-per-day", maxPerFeed*maxFeeds)
	if len(perDay) != len(b.PerFeed) && len(perDay) > 0 {
		s.say("milk-table", v.span, fmt.Sprintf("ml-per-day has %d days, and ml-per-feed has %d", len(perDay), len(b.PerFeed)), whyMilk, "give both lists the same days, or leave ml-per-day out: it is worked out")
		return
	}
	for i, ml := range perDay {
		if ml != b.PerDay(i+1) {
			s.say("milk-table", at[i], fmt.Sprintf("day %d says %d ml a day, and %d feeds of %d ml are %d", i+1, ml, b.Feeds, b.PerFeed[i], b.PerDay(i+1)),
				whyMilk, "mend one of the three; or leave ml-per-day out: it is worked out")
		}
	}
}

// volumes reads a list of whole millilitres, one a day from day 1.
func (s subject) volumes(v *value, what string, most int) (ml []int, at []source.Span) {
	if !s.is(v, list, what) {
		return nil, nil
	}
	if n := len(v.items); n == 0 || n > maxMilkDays {
		s.say("record-value", v.span, fmt.Sprintf("%s has %d days", what, n), whyMilk, fmt.Sprintf("give one volume a day from day 1, for %d days at most", maxMilkDays))
		return nil, nil
	}
	for i, item := range v.items {
		n := -1
		if s.between(&n, fmt.Sprintf("day %d of %s", i+1, what), 0, most)(item); n < 0 {
			if item.kind == nothing {
				s.say("record-value", v.span, fmt.Sprintf("day %d of %s is empty", i+1, what), whyMilk, "write the volume in ml, or 0")
			}
			return nil, nil
		}
		ml, at = append(ml, n), append(at, item.span)
	}
	return ml, at
}
