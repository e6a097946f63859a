package read

import (
	"regexp"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// unitsLikely are the units of a dimension that are likely meant by a number without one: those
// in which the file writes, or the rest of its house; where neither says, of both systems. Of a
// time it is the unit in which people say that of a step or a clause.
func (r *statementReader) unitsLikely(d quantity.Dimension, number, of string) []string {
	metric, british := strings.TrimPrefix(sample(d, ""), " "), britishUnit[d]
	switch {
	case d == quantity.Time:
		return []string{timeLikely(r.in, number, of)}
	case british == "":
		return []string{metric}
	}
	files := []*source.File{r.file}
	if r.home != nil {
		files = append(files, r.home.files...)
	}
	for _, f := range files {
		switch m, b := unitWritten[d].metric.Match(f.Bytes()), unitWritten[d].british.Match(f.Bytes()); {
		case m && !b:
			return []string{metric}
		case b && !m:
			return []string{british}
		}
	}
	return []string{metric, british}
}

// timeLikely is the unit in which people say a time.
func timeLikely(in vocabulary.Block, number, of string) string {
	_, last, _ := strings.Cut(number, " "+vocabulary.To+" ")
	n, err := quantity.Parse(orElse(last, number))
	long := func(most float64) bool { return err != nil || n.SI > most }
	switch {
	case of == vocabulary.VerbStore && !long(12):
		return "weeks"
	case (of == vocabulary.VerbStore || of == vocabulary.MeasureTotalTime) && !long(60):
		return "days"
	case in == vocabulary.Germinate && (of == clauseFor || of == clauseAllow) && !long(14):
		return "days"
	case of == vocabulary.VerbAerate || long(96):
		return "min"
	}
	return "h"
}

var britishUnit = map[quantity.Dimension]string{quantity.Temperature: "°F", quantity.TemperatureDifference: "°F",
	quantity.Mass: "lb", quantity.Volume: "gal-us", quantity.Area: "ft2", quantity.Flow: "cfm",
	quantity.Length: "ft", quantity.Power: "Btu/h"}

// unitWritten tells by the figures of a file in which units it writes a dimension:
// temperatures by its own, the others by any of size or weight.
var unitWritten = func() map[quantity.Dimension]struct{ metric, british *regexp.Regexp } {
	type of = struct{ metric, british *regexp.Regexp }
	heat := of{regexp.MustCompile(`\d ?°?C\b`), regexp.MustCompile(`\d ?°?F\b`)}
	const metric, british = `kg|t|l|m2|m3|m3/h`, `lb|oz|in2|ft2|ft3|gal-us|gal-imp|cfm`
	behind := func(units string) *regexp.Regexp { return regexp.MustCompile(`\d ?(` + units + `)\b`) }
	size := of{behind(metric), behind(british)}
	return map[quantity.Dimension]of{quantity.Temperature: heat, quantity.TemperatureDifference: heat,
		quantity.Mass: size, quantity.Volume: size, quantity.Area: size, quantity.Flow: size,
		quantity.Length: of{behind(metric + `|m|cm|mm`), behind(british + `|ft|in`)}, quantity.Power: of{behind(metric + `|kW|W`), behind(british + `|Btu/h`)}}
}()

// unitThatFits is the unit that is likely meant of numbers without one, or another with which
// they can be what is asked for where with that one they cannot: 55 to 64 of the air of a site is
// no heat in °C.
func unitThatFits(likely string, a syntax.Amount, slot *vocabulary.Slot) string {
	high := a.Low
	if a.High != nil {
		high = *a.High
	}
	if slot.Sense == nil || len(a.Low.Parts) != 1 || len(high.Parts) != 1 {
		return likely
	}
	for _, unit := range append([]string{likely}, likelyUnits[likely]...) {
		if r, ok := between(a.Low.Parts[0].Number.Text, high.Parts[0].Number.Text, unit); ok && within(slot.Sense.Can, r) {
			return unit
		}
	}
	return likely
}
