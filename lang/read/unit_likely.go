package read

import (
	"regexp"
	"slices"
	"strings"

	"maltwright/lang/quantity"
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
		return timesLikely(r.in, number, of)
	case british == "":
		return []string{metric}
	}
	for i := range 1 + r.home.count() {
		m, b := false, false
		if i == 0 && !r.home.has(r.file) {
			m, b = unitWritten[d].metric.Match(r.file.Bytes()), unitWritten[d].british.Match(r.file.Bytes())
		} else {
			m, b = r.home.systems(r.file, i-1, d)
		}
		switch {
		case m && !b:
			return []string{metric}
		case b && !m && d == quantity.Power: // an electric heater is of watts there too
			return []string{metric, british}
		case b && !m:
			return []string{british}
		}
	}
	return []string{metric, british}
}

// timesLikely are the units in which people say a time, the likelier first.
func timesLikely(in vocabulary.Block, number, of string) []string {
	_, last, _ := strings.Cut(number, " "+vocabulary.To+" ")
	n, err := quantity.Parse(orElse(last, number))
	long := func(most float64) bool { return err != nil || n.SI > most }
	switch {
	case of == vocabulary.VerbStore && !long(12):
		return []string{"weeks"}
	case (of == vocabulary.VerbStore || of == vocabulary.MeasureTotalTime) && !long(60):
		return []string{"days"}
	case in == vocabulary.Germinate && (of == clauseFor || of == clauseAllow) && !long(14):
		return []string{"days", "h"}
	case of == vocabulary.VerbAerate || long(96) || (of == vocabulary.VerbStew || of == vocabulary.VerbRoast) && long(12):
		return []string{"min"}
	}
	return []string{"h"}
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

// unitsThatFit are the units that are likely meant of a number without one: of those in which
// the house writes such a value the ones with which it is usual, or else can be. 55 to 64 of the
// air of a site is no heat in °C, and 46 of a thousand kernels is no weight in kg.
func (r *statementReader) unitsThatFit(d quantity.Dimension, a syntax.Amount, slot *vocabulary.Slot) []string {
	high := a.Low
	if a.High != nil {
		high = *a.High
	}
	likely := r.unitsLikely(d, r.at(a.Span).Text(), orElse(r.clause, r.verb))
	if len(a.Low.Parts) != 1 || len(high.Parts) != 1 {
		return likely
	}
	low, top := a.Low.Parts[0].Number.Text, high.Parts[0].Number.Text
	return fitting(likely, slot.Sense.OfAny(d), func(unit string) (quantity.Range, bool) { return between(low, top, unit) })
}

// fitting picks of the units, and of those that are taken for them, the ones with which a value
// is usual; where none is, those with which it can be; and where that is not known, the units
// alone. Units of the other system come last, and of a large number the smaller unit first.
func fitting(likely []string, sense *vocabulary.Sense, with func(unit string) (quantity.Range, bool)) []string {
	all := slices.Clone(likely)
	for _, unit := range likely {
		all = append(all, likelyUnits[unit]...)
	}
	switch u, ok := quantity.Lookup(likely[0]); {
	case sense == nil || !ok:
		return likely
	case u.Dimension == quantity.Mass:
		all = append(all, "g")
	}
	own := slices.DeleteFunc(slices.Clone(all), func(unit string) bool {
		return !slices.ContainsFunc(likely, func(l string) bool { return quantity.OfPounds(l) == quantity.OfPounds(unit) })
	})
	for _, units := range [][]string{own, all} {
		for _, band := range []quantity.Range{usualOr(sense), sense.Can} {
			if fit := inBand(units, band, with); len(fit) > 0 {
				return likeliest(fit, likely, with)
			}
		}
	}
	return likely
}

func inBand(units []string, band quantity.Range, with func(unit string) (quantity.Range, bool)) (fit []string) {
	for _, unit := range units {
		if r, ok := with(unit); ok && within(band, r) && !slices.Contains(fit, unit) {
			fit = append(fit, unit)
		}
	}
	return fit
}

// likeliest are one or two of the units that fit.
func likeliest(fit, likely []string, with func(unit string) (quantity.Range, bool)) []string {
	large := twoScales(fit[0], with)
	switch {
	case large && slices.Contains(fit, "W"):
		return append([]string{"W"}, slices.DeleteFunc(fit, func(u string) bool { return u == "W" || u == "kW" })...)
	case large && len(fit) > 1:
		return []string{fit[1], fit[0]}
	case len(likely) == 1:
		return fit[:1]
	}
	if slices.Contains(likely, fit[0]) {
		fit = slices.DeleteFunc(fit, func(u string) bool { return !slices.Contains(likely, u) })
	}
	return fit[:min(len(fit), 2)]
}

// twoScales tells whether a number is so large for a unit that the next smaller may be meant.
func twoScales(unit string, with func(unit string) (quantity.Range, bool)) bool {
	r, ok := with(unit)
	if !ok || r.High.Dimension == quantity.Temperature || r.High.Dimension == quantity.Time || r.High.Dimension == quantity.Share {
		return false
	}
	one, err := quantity.Make(quantity.Part{Number: "1", Unit: unit})
	return err == nil && one.SI > 0 && r.High.SI/one.SI >= 100
}
