package ward

import "time"

// A Session is one time of skin-to-skin contact, in whole minutes of local time,
// which is kept as UTC: a day has 24 hours.
type Session struct{ Start, End time.Time }

// A Day is the skin-to-skin contact of one calendar day.
type Day struct {
	Date     time.Time // midnight UTC
	Sessions int       // that touch the day
	Minutes  int
}

// Days adds up sessions that do not overlap, in order of their start, for each
// calendar day from the first to the last. What goes past midnight is split there:
// each day gets its own minutes.
func Days(ss []Session) []Day {
	var out []Day
	day := func(d time.Time) *Day {
		for len(out) > 0 && out[len(out)-1].Date.Before(d) {
			out = append(out, Day{Date: out[len(out)-1].Date.AddDate(0, 0, 1)})
		}
		if len(out) == 0 {
			out = append(out, Day{Date: d})
		}
		return &out[len(out)-1]
	}
	for _, s := range ss {
		for at := s.Start; at.Before(s.End); {
			d := midnight(at)
			end := d.AddDate(0, 0, 1)
			if s.End.Before(end) {
				end = s.End
			}
			into := day(d)
			into.Sessions++
			into.Minutes += int(end.Sub(at).Minutes())
			at = end
		}
	}
	return out
}

func midnight(t time.Time) time.Time { return t.Truncate(24 * time.Hour) }
