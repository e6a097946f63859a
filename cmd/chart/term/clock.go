package term

import (
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/chart"
)

const (
	minute = 60.0
	day    = 24 * 60 * minute
)

// marksOf gives the marks of an axis: as many as have room beside one another.
func marksOf(c chart.Chart, column func(float64) int) []chart.Tick {
	for least := minute; least < c.To-c.From; least *= 1.5 {
		if least < (c.To-c.From)/mostMarks {
			continue
		}
		list := c.Clock().Ticks(c.From, c.To, least)
		if len(list) == 0 {
			break
		}
		if list = named(c, list); roomy(list, column) {
			return list
		}
	}
	if !c.Clock().ByDay() {
		return nil
	}
	for each := 1; ; each++ {
		if list := everyDay(c, each); len(list) < 2 || roomy(list, column) {
			return list
		}
	}
}

// mostMarks is how many are tried at the most.
const mostMarks = 60

// roomy tells whether two blanks stand between any two marks. What would stick out to the right is left off.
func roomy(list []chart.Tick, column func(float64) int) bool {
	end := -2
	for _, m := range list {
		at := column(m.At)
		if at < end+2 {
			return false
		}
		end = at + uniseg.StringWidth(m.Text)
	}
	return true
}

// named says of a midnight which day it begins.
func named(c chart.Chart, list []chart.Tick) []chart.Tick {
	if !c.Clock().ByDay() {
		return list
	}
	first := true
	for _, d := range c.Clock().Days(c.From, c.To) {
		for i := range list {
			if list[i].At == d.From {
				list[i].Text, first = dayOf(d, first), false
			}
		}
	}
	return list
}

// everyDay marks midnights, every so many days.
func everyDay(c chart.Chart, each int) (list []chart.Tick) {
	for i, d := range c.Clock().Days(c.From, c.To) {
		if d.From >= c.From && i%each == (each-1)%each {
			list = append(list, chart.Tick{At: d.From, Text: dayOf(d, len(list) == 0)})
		}
	}
	return list
}

// dayOf is the name of a day: Sun 8, and of the first of several its month, 7 Mar.
func dayOf(d chart.Span, first bool) string {
	weekday, date, _ := strings.Cut(d.Name, " ")
	number, month, _ := strings.Cut(date, " ")
	if first || number == "1" {
		return number + " " + month
	}
	return weekday + " " + number
}
