package calendar

import (
	"slices"
	"strings"
	"time"
)

// said is a time of a command line by its parts.
type said struct {
	day       func(r Reader, second int) []time.Time // the days it may be, as midnights in UTC; nil where none was said
	filled    bool                                   // the day is reckoned from now, or by the order of the locale
	clock     Clock
	clocked   bool
	clockText string
	next      string // next, last or this, in front of a weekday
}

// said parts a text: a day and a time of day, in either order.
func (r Reader) said(text string) (s said, err error) {
	c := cursor{text: text}
	for {
		c.fill()
		if c.at == len(text) {
			return s, nil
		}
		start := c.at
		if s.day == nil && (c.takeDay(&s, r) || c.dayWord(&s)) || c.step(&s) {
			continue
		}
		c.at = start
		clock, _, ok := c.clock()
		if !ok || s.clocked {
			return s, noTime
		}
		s.clock, s.clocked, s.clockText = clock, true, text[start:c.at]
		if figures := s.clockText; s.day == nil && len(figures) == 4 && figures[0] != '0' && onlyDigits(figures) { // 2026 is a year as well
			return s, noTime
		}
	}
}

func onlyDigits(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r < '0' || r > '9' })
}

// fill takes what only joins the parts.
func (c *cursor) fill() {
	for {
		start := c.at
		c.blanks()
		if c.any(",") || c.any("@") {
			continue
		}
		save := c.at
		if word := c.letters(); !slices.Contains([]string{"at", "on", "t"}, strings.ToLower(word)) {
			c.at = save
		}
		if c.at == start {
			return
		}
	}
}

// takeDay takes a date.
func (c *cursor) takeDay(s *said, r Reader) bool {
	n, d, _ := leadingDate(c.text[c.at:])
	if n == 0 {
		return false
	}
	c.at += n
	days := d.Days()
	if at := int(r.Order - DayFirst); len(days) > 1 && r.Order != Unknown {
		if one := (Date{days: d.days[at : at+1], weekday: d.weekday}).Days(); len(one) > 0 {
			days, s.filled = one, true
		}
	}
	s.day = func(Reader, int) []time.Time { return days }
	if d.Yearless() {
		s.filled = true
		s.day = func(r Reader, second int) []time.Time { return r.nearYear(d, second) }
	}
	return true
}

// nearYear gives the days that a date without its year may be: the next such, or the last.
func (r Reader) nearYear(d Date, second int) (list []time.Time) {
	one := func(x day) {
		var found []time.Time
		for year := r.Now.Year() - 8; year <= r.Now.Year()+8; year++ { // the 29th of February is up to eight years off
			if t, ok := x.in(year); ok && (d.weekday == "" || isWeekday(d.weekday, t.Weekday())) {
				found = append(found, t)
			}
		}
		if t, ok := r.nearest(found, second); ok && !slices.Contains(list, t) {
			list = append(list, t)
		}
	}
	for _, x := range d.days {
		one(x)
	}
	if len(list) > 1 && r.Order != Unknown {
		if r.Order == DayFirst {
			return list[:1]
		}
		return list[1:2]
	}
	return list
}

// nearest gives of days in their order the first ahead, or the last back.
func (r Reader) nearest(days []time.Time, second int) (time.Time, bool) {
	if r.Back {
		for _, d := range slices.Backward(days) {
			if !onClock(d, second, r.Now.Location()).After(r.Now.Add(Slack)) {
				return d, true
			}
		}
		return time.Time{}, false
	}
	for _, d := range days {
		if !onClock(d, second, r.Now.Location()).Before(r.Now.Add(-Slack)) {
			return d, true
		}
	}
	return time.Time{}, false
}

// today is the day of now.
func (r Reader) today() time.Time {
	return time.Date(r.Now.Year(), r.Now.Month(), r.Now.Day(), 0, 0, 0, 0, time.UTC)
}

// openDay is the day of a time of day alone: one of those around, so many days apart.
func openDay(apart int) func(Reader, int) []time.Time {
	return func(r Reader, second int) []time.Time {
		var days []time.Time
		for n := -apart; n <= apart; n += apart {
			days = append(days, r.today().AddDate(0, 0, n))
		}
		d, ok := r.nearest(days, second)
		if !ok {
			return nil
		}
		return []time.Time{d}
	}
}

// dayWords are days by how far they lie from today.
var dayWords = []struct {
	words string
	off   int
}{
	{"the day before yesterday", -2}, {"day before yesterday", -2}, {"the day after tomorrow", 2}, {"day after tomorrow", 2},
	{"today", 0}, {"tonight", 0}, {"this morning", 0}, {"this afternoon", 0}, {"this evening", 0},
	{"tomorrow", 1}, {"yesterday", -1},
}

// dayWord takes today, tomorrow, friday.
func (c *cursor) dayWord(s *said) bool {
	rest := strings.ToLower(c.text[c.at:])
	for _, w := range dayWords {
		if !strings.HasPrefix(rest, w.words) {
			continue
		}
		save := c.at
		if c.at += len(w.words); !c.ends() {
			c.at = save
			continue
		}
		s.filled = true
		s.day = func(r Reader, _ int) []time.Time { return []time.Time{r.today().AddDate(0, 0, w.off)} }
		return true
	}
	save := c.at
	day := weekdayOf(c.letters())
	if day < 0 {
		c.at = save
		return false
	}
	c.any(".")
	s.filled = true
	next := s.next
	s.day = func(r Reader, second int) []time.Time { return r.weekday(time.Weekday(day), next, second) }
	return true
}

// step takes next, last and this, in front of a weekday.
func (c *cursor) step(s *said) bool {
	if s.day != nil || s.next != "" {
		return false
	}
	save := c.at
	switch word := strings.ToLower(c.letters()); word {
	case "next", "last", "this", "coming":
		here := c.at
		c.blanks()
		if weekdayOf(c.letters()) >= 0 {
			c.at, s.next = here, word
			return true
		}
	}
	c.at = save
	return false
}

// weekday gives the days that a weekday may be. The next friday is to some the first that
// comes, and to others the one behind it.
func (r Reader) weekday(d time.Weekday, next string, second int) []time.Time {
	const week = 7
	today := r.today()
	ahead := (int(d) - int(today.Weekday()) + week) % week
	coming := today.AddDate(0, 0, ahead)
	switch next {
	case "next":
		if ahead == 0 {
			return []time.Time{today.AddDate(0, 0, week)}
		}
		return []time.Time{coming, coming.AddDate(0, 0, week)}
	case "last":
		return []time.Time{coming.AddDate(0, 0, -week)}
	}
	r.Back = r.Back && next != "coming"
	found, ok := r.nearest([]time.Time{coming.AddDate(0, 0, -week), coming, coming.AddDate(0, 0, week)}, second)
	if !ok {
		return nil
	}
	if r.Back && next == "" && ahead == 0 && found.Before(coming) {
		return []time.Time{coming, found} // later today, or a week ago: nobody calls that by the name of today
	}
	return []time.Time{found}
}
