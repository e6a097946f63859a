package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
)

// unitsMissing answers figures of a reckoning that stand there without their units, with the line
// to type: a moisture between 1 and 100 is per cent,
// one below 1 a share, and a weight may be of kilograms or of pounds.
// Moisture tells which of the quantities are such. It is nil where no unit is missing, or what
// is meant cannot be told.
func unitsMissing(command string, list []quantity.Quantity, moisture func(i int) bool, flags ...string) error {
	var bare []string
	lines := [][]string{nil}
	for i, q := range list {
		texts := []string{strings.ReplaceAll(q.String(), " ", "")}
		if q.Unit() == "" {
			bare = append(bare, texts[0])
			switch {
			case !moisture(i):
				texts = []string{texts[0] + "kg", texts[0] + "lb"}
			case q.SI >= 1 && q.SI <= 100:
				texts[0] += "%"
			case q.SI > 0 && q.SI < 1: // 0.124 is 12.4 %
				texts[0] = strconv.FormatFloat(math.Round(q.SI*1e8)/1e6, 'g', -1, 64) + "%"
			default:
				return nil
			}
		}
		var longer [][]string
		for _, t := range texts {
			for _, l := range lines {
				longer = append(longer, append(l[:len(l):len(l)], t))
			}
		}
		lines = longer
	}
	if len(bare) == 0 {
		return nil
	}
	for i, l := range lines {
		if len(flags) > 0 {
			l = append(l[:1:1], append(flags, l[1:]...)...)
		}
		lines[i] = []string{commandLine(append([]string{"reckon", command}, l...)...)}
	}
	has := "has"
	if len(bare) > 1 {
		has = "have"
	}
	all := make([]string, len(lines))
	for i, l := range lines {
		all[i] = l[0]
	}
	return usage("%s", fmt.Sprintf("%s %s no unit; type: %s", strings.Join(bare, " and "), has, strings.Join(all, ", or ")))
}

// gramsMissing answers weights of samples that all stand without a unit, as it may be any: the
// moisture is the same.
func gramsMissing(list []quantity.Quantity) error {
	line := []string{"reckon", "moisture"}
	for _, q := range list {
		if q.Unit() != "" {
			return nil
		}
		line = append(line, q.String()+"g")
	}
	return usage("the weights have no unit; type: %s", commandLine(line...))
}
