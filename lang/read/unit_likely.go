package read

import (
	"regexp"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// unitLikely is the unit of a dimension that is likely meant in a file: one written in °F
// and lb has its missing ones in those.
func unitLikely(d quantity.Dimension, f *source.File) string {
	if unit := britishUnit[d]; unit != "" && !unitWritten[d].metric.Match(f.Bytes()) && unitWritten[d].british.Match(f.Bytes()) {
		return unit
	}
	return strings.TrimPrefix(sample(d, ""), " ")
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

// degreeOf is the unit of the temperatures of a file, "" where it has two or none.
func degreeOf(f *source.File) string {
	heat := unitWritten[quantity.Temperature]
	switch metric, british := heat.metric.Match(f.Bytes()), heat.british.Match(f.Bytes()); {
	case metric && !british:
		return "°C"
	case british && !metric:
		return "°F"
	}
	return ""
}

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
