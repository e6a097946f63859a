package calendar

import (
	"cmp"
	"slices"
	"strings"
	"time"
)

// day is a day as a text may mean it; the year is 0 where none was written.
type day struct{ year, month, day int }

// in gives midnight of the day, in UTC. It is false for one that no calendar has.
func (d day) in(year int) (time.Time, bool) {
	t := time.Date(year, time.Month(d.month), d.day, 0, 0, 0, 0, time.UTC)
	return t, t.Month() == time.Month(d.month) && t.Day() == d.day && year > 0
}

// Date is a date as it was written, with every day that it may mean.
type Date struct {
	days    []day
	weekday string // "" where none was written
}

// ReadDate reads a text that is a date and nothing else. It is false for any other. A date
// that reads may still be of no calendar, or of several days: see Days.
func ReadDate(text string) (Date, bool) {
	n, d, _ := leadingDate(text)
	return d, n > 0 && n == len(text)
}

// LeadingDate gives the length of the date that begins a text, 0 where none does. What is a
// date wherever it stands has its year, in four digits; where a date is expected, it is
// taken without one, or with two digits of it, too.
func LeadingDate(text string, expected bool) int {
	n, _, sure := leadingDate(text)
	if !sure && !expected {
		return 0
	}
	return n
}

// Yearless tells whether the date has no year.
func (d Date) Yearless() bool { return len(d.days) > 0 && d.days[0].year == 0 }

// Days are the days that the date may mean, as midnights in UTC: none where no calendar
// has it, several where it may be mistaken.
func (d Date) Days() []time.Time { return d.each(func(x day) int { return x.year }) }

// In are the days that a date without a year may mean in one.
func (d Date) In(year int) []time.Time { return d.each(func(day) int { return year }) }

func (d Date) each(year func(day) int) (list []time.Time) {
	for _, x := range d.days {
		t, ok := x.in(year(x))
		if ok && !slices.Contains(list, t) && (d.weekday == "" || isWeekday(d.weekday, t.Weekday())) {
			list = append(list, t)
		}
	}
	return list
}

// InOrder is the day that the date means where its day and month stand in an order; the year is that
// of another date where it has none. It is false for none.
func (d Date) InOrder(order Order, other Date) (time.Time, bool) {
	days := d.Days()
	if d.Yearless() && len(other.days) > 0 {
		days = d.In(other.days[0].year)
	}
	if i := int(order - DayFirst); len(days) > 1 && i < len(d.days) {
		x := d.days[i]
		if x.year == 0 {
			x.year = other.days[0].year
		}
		return x.in(x.year)
	}
	if len(days) != 1 {
		return time.Time{}, false
	}
	return days[0], true
}

// Canonical writes a date as the layout has it, 2026-03-06, where it can be of one day only.
func Canonical(text string) (iso string, ok bool) {
	d, ok := ReadDate(text)
	days := d.Days()
	if !ok || len(days) != 1 {
		return text, false
	}
	return days[0].Format(time.DateOnly), true
}

// leadingDate reads the date that begins a text. It is sure where it could be nothing else.
func leadingDate(text string) (n int, d Date, sure bool) {
	c := cursor{text: text}
	if !isDigit(c.peek()) {
		if word := c.letters(); weekdayOf(word) >= 0 {
			c.any(".")
			c.any(",")
			c.blanks()
			d.weekday = word
		} else {
			c.at = 0
		}
	}
	days, sure := c.date()
	if days == nil {
		return 0, Date{}, false
	}
	d.days = days
	return c.at, d, sure
}

// date takes a date that begins with its day, its month or its year.
func (c *cursor) date() (days []day, sure bool) {
	start := c.at
	if !isDigit(c.peek()) {
		if days, sure = c.monthFirst(); days == nil || !c.dateEnds() {
			c.at = start
			return nil, false
		}
		return days, sure
	}
	if days, sure = c.inFigures(); days != nil && c.dateEnds() {
		return days, sure
	}
	c.at = start
	if days, sure = c.compact(); days != nil && c.dateEnds() {
		return days, sure
	}
	c.at = start
	if days, sure = c.dayFirst(); days != nil && c.dateEnds() {
		return days, sure
	}
	c.at = start
	return nil, false
}

// inFigures takes 2026-03-06, 27.01.2026, 1/27/26, 27.01. and 27/1.
func (c *cursor) inFigures() ([]day, bool) {
	a, wide := c.digits(4)
	sep := c.peek()
	if wide == 0 || wide == 3 || !strings.ContainsRune("-/.", rune(sep)) || sep == 0 {
		return nil, false
	}
	c.at++
	b, second := c.digits(2)
	if second == 0 {
		return nil, false
	}
	if c.peek() != sep || !isDigit(c.ahead(1)) {
		if wide > 2 || sep == '-' || sep == '.' && !c.any(".") {
			return nil, false
		}
		return either(a, b, 0), false
	}
	c.at++
	last, third := c.digits(4)
	switch {
	case wide == 4 && third <= 2:
		return []day{{a, b, last}}, true
	case wide <= 2 && third == 4:
		return either(a, b, last), true
	case wide <= 2 && third == 2:
		const century = 2000
		days := either(a, b, century+last)
		if wide == 2 {
			days = append(days, day{century + a, b, last})
		}
		return days, false
	}
	return nil, false
}

// either are the day of the month and the month, in both orders.
func either(a, b, year int) []day { return []day{{year, b, a}, {year, a, b}} }

// compact takes 20260306.
func (c *cursor) compact() ([]day, bool) {
	n, wide := c.digits(8)
	if wide != 8 {
		return nil, false
	}
	d := day{n / 10000, n / 100 % 100, n % 100}
	if _, ok := d.in(d.year); !ok || d.year < FirstYear || d.year > LastYear {
		return nil, false
	}
	return []day{d}, false
}

// dayFirst takes 27 Jan 2026, 27th of January, 27-Jan-2026, 27. January 2026.
func (c *cursor) dayFirst() ([]day, bool) {
	n, wide := c.digits(2)
	if wide == 0 {
		return nil, false
	}
	c.ordinal()
	c.any(".")
	c.gap()
	save := c.at
	if c.letters() != "of" {
		c.at = save
	}
	c.blanks()
	month := monthOf(c.letters())
	if month == 0 {
		return nil, false
	}
	c.any(".")
	return c.year(month, n)
}

// monthFirst takes Jan 27 2026, January 27th, 2026.
func (c *cursor) monthFirst() ([]day, bool) {
	month := monthOf(c.letters())
	if month == 0 {
		return nil, false
	}
	c.any(".")
	c.gap()
	n, wide := c.digits(2)
	if wide == 0 {
		return nil, false
	}
	c.ordinal()
	return c.year(month, n)
}

// year takes the year behind a month that has its name, if one stands there.
func (c *cursor) year(month, n int) ([]day, bool) {
	end := c.at
	c.any(",")
	c.gap()
	if year, wide := c.digits(4); wide == 4 && c.dateEnds() && !(strings.ContainsRune("-/.", rune(c.peek())) && isDigit(c.ahead(1))) {
		return []day{{year, month, n}}, true
	}
	c.at = end
	return []day{{0, month, n}}, false
}

// ordinal takes the th of 27th.
func (c *cursor) ordinal() {
	save := c.at
	switch strings.ToLower(c.letters()) {
	case "st", "nd", "rd", "th":
	default:
		c.at = save
	}
}

var months = []string{"january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"}

// Named tells whether the first three letters of a word are those of a month or a weekday.
func Named(word string) bool {
	return len(word) == 3 && named[[3]byte{word[0] | lower, word[1] | lower, word[2] | lower}]
}

// lower is what makes a capital letter a small one.
const lower = 0x20

// named are the first three letters of months and weekdays. It is asked for every word of a file.
var named = func() map[[3]byte]bool {
	set := map[[3]byte]bool{}
	add := func(word string) { set[[3]byte([]byte(strings.ToLower(word[:3])))] = true }
	for _, m := range months {
		add(m)
	}
	for m := range otherMonths {
		if len(m) == 3 {
			add(m)
		}
	}
	for d := time.Sunday; d <= time.Saturday; d++ {
		add(d.String())
	}
	return set
}()

// otherMonths are other names of months: German ones, and an English one of four letters.
var otherMonths = map[string]string{"sept": "sep", "januar": "jan", "februar": "feb", "märz": "mar", "mrz": "mar", "mai": "may", "juni": "jun", "juli": "jul", "oktober": "oct", "okt": "oct", "dezember": "dec", "dez": "dec"}

// monthOf gives the number of a month by its name or the first three letters of it, 0 for any other word.
func monthOf(word string) int {
	if len(word) < 3 {
		return 0
	}
	word = strings.ToLower(word)
	word = cmp.Or(otherMonths[word], word)
	return 1 + slices.IndexFunc(months, func(m string) bool { return word == m || word == m[:3] })
}

// weekdayOf gives the weekday of a name or the first letters of it, -1 for any other word.
func weekdayOf(word string) int {
	if len(word) < 3 {
		return -1
	}
	word = strings.ToLower(word)
	for d := time.Sunday; d <= time.Saturday; d++ {
		if name := strings.ToLower(d.String()); word == name || len(word) >= 3 && len(word) <= 5 && strings.HasPrefix(name, word) {
			return int(d)
		}
	}
	return -1
}

func isWeekday(word string, d time.Weekday) bool { return weekdayOf(word) == int(d) }
