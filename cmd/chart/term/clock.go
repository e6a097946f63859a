package term

import (
	"fmt"
	"strings"
	"time"

	"github.com/rivo/uniseg"

	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// mark is a label of the axis of time.
type mark struct {
	at   float64
	text string
}

const (
	hour = 3600.0
	day  = 24 * hour
)

// hourly are the steps of an axis that are shorter than a day, s.
var hourly = []float64{hour / 4, hour / 2, hour, 2 * hour, 3 * hour, 6 * hour, 12 * hour}

// daily are those of a day and more, in days.
var daily = []int{1, 2, 4, 7, 14, 28, 56, 112, 224}

// marksOf gives the marks of an axis: as many as have room beside one another.
func marksOf(c chart.Chart, column func(float64) int, columns int) []mark {
	var list []mark
	for _, step := range hourly {
		if list = hoursOf(c, step); roomy(list, column, columns) {
			return list
		}
	}
	for _, days := range daily {
		if list = daysOf(c, days); roomy(list, column, columns) {
			return list
		}
	}
	return list[:min(1, len(list))]
}

// mostMarks is how many are tried at the most.
const mostMarks = 60

// roomy tells whether two blanks stand between any two marks. What would stick out to the right is left off.
func roomy(list []mark, column func(float64) int, columns int) bool {
	if len(list) > mostMarks {
		return false
	}
	end := -2
	for _, m := range list {
		at := column(m.at)
		if at < end+2 {
			return false
		}
		end = at + uniseg.StringWidth(m.text)
	}
	return len(list) > 0 || columns < leastWidth
}

// hoursOf are marks every so many s: of a clock, where it is known, from midnight on.
func hoursOf(c chart.Chart, step float64) (list []mark) {
	if (c.To-c.From)/step > mostMarks {
		return make([]mark, mostMarks+1)
	}
	if c.Start.IsZero() {
		for n := int(ceil(c.From / step)); float64(n)*step <= c.To; n++ {
			list = append(list, mark{float64(n) * step, words.After(float64(n) * step)})
		}
		return list
	}
	for midnight := midnightOf(clock(c, c.From)); !midnight.After(clock(c, c.To)); midnight = midnight.AddDate(0, 0, 1) {
		for s := 0.0; s < day; s += step {
			t := time.Date(midnight.Year(), midnight.Month(), midnight.Day(), 0, 0, int(s), 0, midnight.Location())
			at := t.Sub(c.Start).Seconds()
			if at < c.From || at > c.To || len(list) > 0 && at <= list[len(list)-1].at {
				continue
			}
			layout := "15:04"
			if s == 0 {
				layout = "Mon 2"
			}
			list = append(list, mark{at, t.Format(layout)})
		}
	}
	return dated(c, list)
}

// daysOf are marks every so many days.
func daysOf(c chart.Chart, days int) (list []mark) {
	step := float64(days) * day
	if (c.To-c.From)/step > mostMarks {
		return make([]mark, mostMarks+1)
	}
	if c.Start.IsZero() {
		for n := int(ceil(c.From / step)); float64(n)*step <= c.To; n++ {
			list = append(list, mark{float64(n) * step, fmt.Sprintf("%d d", n*days)})
		}
		return list
	}
	layout := "Mon 2"
	if days >= 7 {
		layout = "2 Jan"
	}
	first := midnightOf(clock(c, c.From))
	if first.Before(clock(c, c.From)) {
		first = first.AddDate(0, 0, 1)
	}
	for t := first; !t.After(clock(c, c.To)); t = t.AddDate(0, 0, days) {
		if at := t.Sub(c.Start).Seconds(); at <= c.To {
			list = append(list, mark{at, t.Format(layout)})
		}
	}
	return dated(c, list)
}

// dated says of the first day of several which month it is in.
func dated(c chart.Chart, list []mark) []mark {
	for i, m := range list {
		if strings.Contains(m.text, " ") {
			list[i].text = clock(c, m.at).Format("2 Jan")
			break
		}
	}
	return list
}

func clock(c chart.Chart, at float64) time.Time {
	return c.Start.Add(time.Duration(at * float64(time.Second)))
}

func midnightOf(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location())
}

func ceil(x float64) float64 {
	n := float64(int(x))
	if n < x-1e-9 {
		n++
	}
	return n
}
