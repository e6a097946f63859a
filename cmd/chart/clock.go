package chart

import (
	"math"
	"time"

	"maltwright/lang/quantity"
)

const (
	minute = 60.0
	hour   = 60 * minute
	day    = 24 * hour
)

// Tick is a time that the axis is marked with, s from the start. Text is "" where there is no room for it.
type Tick struct {
	At   float64
	Text string
}

// Clock tells times of a chart: by the clock of its start, or as days and hours.
type Clock struct{ start time.Time }

// Clock is that of the chart.
func (c Chart) Clock() Clock { return Clock{c.Start} }

// ByDay tells whether the clock knows the date.
func (k Clock) ByDay() bool { return !k.start.IsZero() }

// when is a time as the house's clock shows it.
func (k Clock) when(at float64) time.Time {
	return k.start.Add(time.Duration(at * float64(time.Second))).In(k.start.Location())
}

func (k Clock) at(t time.Time) float64 { return t.Sub(k.start).Seconds() }

// Say writes a time, rounded to the minute: Thu 26 Nov 14:20, or 2 d 14 h.
func (k Clock) Say(at float64) string {
	switch {
	case !known(at):
		return "unknown"
	case k.ByDay():
		return k.when(minute * math.Round(at/minute)).Format("Mon 2 Jan 15:04")
	case at == 0:
		return "0 h"
	}
	return quantity.Lasting(at)
}

// Days are the days of the calendar that an interval has a share in, each from its midnight to the next. Of a night when the
// clock is changed one has 23 or 25 hours.
func (k Clock) Days(from, to float64) (days []Span) {
	t := k.when(from)
	for t = time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location()); ; {
		next := time.Date(t.Year(), t.Month(), t.Day()+1, 0, 0, 0, 0, t.Location())
		if !(k.at(t) < to) || !next.After(t) {
			return days
		}
		days = append(days, Span{From: k.at(t), To: k.at(next), Name: t.Format("Mon 2 Jan")})
		t = next
	}
}

// steps are lengths of time between two ticks that divide a day or are days.
var steps = []float64{minute, 2 * minute, 5 * minute, 10 * minute, 15 * minute, 30 * minute, hour, 2 * hour, 3 * hour, 6 * hour, 12 * hour,
	day, 2 * day, 5 * day, 10 * day, 20 * day, 50 * day, 100 * day, 200 * day, 500 * day}

// Ticks marks an interval at the shortest step that is no shorter than least, s. By a clock these are hours
// of the day, and nothing where least is more than half a day: then Days serve.
func (k Clock) Ticks(from, to, least float64) (ticks []Tick) {
	for _, step := range steps {
		if step < least {
			continue
		}
		if !k.ByDay() {
			return fromStart(from, to, step)
		}
		if step < day {
			return k.hours(from, to, step)
		}
		return nil
	}
	return nil
}

func fromStart(from, to, step float64) (ticks []Tick) {
	for n := ceil(from / step); n*step <= to; n++ {
		at := n * step
		text := quantity.InFull(at)
		switch {
		case at == 0:
			text = "0"
		case at < 0:
			text = "-" + quantity.InFull(-at)
		}
		ticks = append(ticks, Tick{at, text})
	}
	return ticks
}

// hours marks times of the day. A time that the clock leaps over has no tick, and of one that comes
// twice the first has it.
func (k Clock) hours(from, to, step float64) (ticks []Tick) {
	for _, d := range k.Days(from, to) {
		midnight := k.when(d.From)
		for n := 0; float64(n)*step < day; n++ {
			m := int(float64(n) * step / minute)
			t := time.Date(midnight.Year(), midnight.Month(), midnight.Day(), 0, m, 0, 0, midnight.Location())
			if at := k.at(t); at >= from && at <= to && t.Hour()*60+t.Minute() == m {
				ticks = append(ticks, Tick{at, t.Format("15:04")})
			}
		}
	}
	if t := k.when(to); t.Hour() == 0 && t.Minute() == 0 && t.Second() == 0 { // the axis ends with a day
		ticks = append(ticks, Tick{to, "00:00"})
	}
	return ticks
}
