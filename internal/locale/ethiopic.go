package locale

import (
	"fmt"
	"time"
)

// EthiopicDate turns a Gregorian date into one of the Ethiopic calendar, by whole days.
// Months are 1 to 13; the last has 5 days, or 6 before a year that is divided by 4.
// The arithmetic counts days from the calendar's first; it is exact for every year.
func EthiopicDate(t time.Time) (year, month, day int) {
	y, m, d := t.Date()
	days := int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix()/86400) + 2440588 // Julian day number
	j := days - 1724221                                                          // days since the first day of year 1
	year = (4*j + 1463) / 1461
	n := j - (365*(year-1) + year/4)
	return year, n/30 + 1, n%30 + 1
}

// Beside returns the locale with dates in a second calendar after the Gregorian ones,
// which stay: a date on a leaflet must mean the same day to everyone. An empty calendar
// changes nothing.
func (l *Locale) Beside(calendar string) (*Locale, error) {
	if calendar == "" {
		return l, nil
	}
	if calendar != "ethiopic" || len(l.facts.Ethiopic) != 13 {
		return nil, fmt.Errorf("the calendar %q cannot be written in language %q; leave it out of calendars in pack.yaml", calendar, l.Tag)
	}
	out := *l
	out.ethiopic = true
	return &out, nil
}

// ethiopicDate writes a date of the Ethiopic calendar in full, without its era.
func (l *Locale) ethiopicDate(t time.Time) string {
	y, m, d := EthiopicDate(t)
	return fmt.Sprintf("%s %s %s", l.Number(d), l.facts.Ethiopic[m-1], l.Number(y))
}
