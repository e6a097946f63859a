package command

import (
	"math"

	"maltwright/lang/quantity"
	"maltwright/sim/seasons"
)

// seasonKind is what a measure of batches is measured in.
type seasonKind int

const (
	inHours seasonKind = iota
	inDays
	inShare
	inParts // of the corn
	inDegrees
	inMass
	inNumber
)

// seasonMeasure is a measure by which batches are set side by side.
type seasonMeasure struct {
	group, label string // as a reader sees it, the unit behind the label
	key          string // for programs: with its unit
	kind         seasonKind
	of           func(*recordRow) seasons.Figure
}

// seasonMeasures are all of them, in the order of the batch.
var seasonMeasures = []seasonMeasure{
	{"steep", "raw grain", "raw_moisture_wb_pct", inShare, func(r *recordRow) seasons.Figure { return r.RawMoisture }},
	{"steep", "steep water", "water_c", inDegrees, func(r *recordRow) seasons.Figure { return r.Water }},
	{"steep", "to cast", "cast_h", inHours, func(r *recordRow) seasons.Figure { return r.Cast }},
	{"steep", "moisture at cast", "cast_moisture_wb_pct", inShare, func(r *recordRow) seasons.Figure { return r.CastMoisture }},
	{"floor", "chitted", "chit_pct", inShare, func(r *recordRow) seasons.Figure { return r.Chit }},
	{"floor", "counted after", "chit_counted_h", inHours, func(r *recordRow) seasons.Figure { return r.ChitAt }},
	{"floor", "warmest bed", "bed_warmest_c", inDegrees, func(r *recordRow) seasons.Figure { return r.Bed }},
	{"floor", "to acrospire 3/4", "three_quarters_d", inDays, func(r *recordRow) seasons.Figure { return r.ThreeQuarters }},
	{"floor", "acrospire at last", "acrospire_middle", inParts, func(r *recordRow) seasons.Figure { return r.Acrospire }},
	{"floor", "on the floor", "floor_d", inDays, func(r *recordRow) seasons.Figure { return r.Floor }},
	{"floor", "green malt", "green_malt_kg", inMass, func(r *recordRow) seasons.Figure { return r.Green }},
	{"kiln", "to the break", "break_h", inHours, func(r *recordRow) seasons.Figure { return r.Break }},
	{"kiln", "on the kiln", "kiln_h", inHours, func(r *recordRow) seasons.Figure { return r.Kiln }},
	{"malt", "clean malt", "malt_kg", inMass, func(r *recordRow) seasons.Figure { return r.Malt }},
	{"malt", "yield as is", "yield_as_is_pct", inShare, func(r *recordRow) seasons.Figure { return r.Yield }},
	{"malt", "yield on dry grain", "yield_on_dry_grain_pct", inShare, func(r *recordRow) seasons.Figure { return r.DryYield }},
	{"malt", "moisture", "end_moisture_wb_pct", inShare, func(r *recordRow) seasons.Figure { return r.EndMoisture }},
	{"malt", "whole batch", "total_d", inDays, func(r *recordRow) seasons.Figure { return r.Total }},
	{"record and process", "steps changed", "changes", inNumber, func(r *recordRow) seasons.Figure { return counted(len(r.Batch.Changes)) }},
	{"record and process", "findings, record", "record_findings", inNumber, func(r *recordRow) seasons.Figure { return counted(r.found) }},
	{"record and process", "faults, process", "process_faults", inNumber, func(r *recordRow) seasons.Figure { return counted(r.process.faults) }},
	{"record and process", "cautions, process", "process_cautions", inNumber, func(r *recordRow) seasons.Figure { return counted(r.process.cautions) }},
}

func counted(n int) seasons.Figure {
	return seasons.Figure{Value: float64(n), Standing: seasons.Measured}
}

// forPrograms gives a value in the unit of its key, rounded to what it can mean.
func (k seasonKind) forPrograms(si float64) float64 {
	switch k {
	case inHours:
		return hours(si)
	case inDays:
		return rounded(si/86400, 3)
	case inShare:
		return percent(si)
	case inDegrees:
		return rounded(si, 2)
	}
	return rounded(si, 3)
}

// seasonUnits are the units in which batches are shown: those of the process of the
// first.
type seasonUnits struct{ pounds, fahrenheit, small bool }

func unitsOf(r *recordRow) seasonUnits {
	p := r.Batch.Process
	var u seasonUnits
	u.pounds, u.fahrenheit = shownIn(p)
	if p.Charge != nil {
		u.small = p.Charge.SI < 1 || u.pounds && p.Charge.SI < quantity.Pound
	}
	return u
}

// name is the unit of a kind, or "".
func (u seasonUnits) name(k seasonKind) string {
	switch {
	case k == inDegrees && u.fahrenheit:
		return "°F"
	case k == inMass && u.pounds && u.small:
		return "oz"
	case k == inMass && u.pounds:
		return "lb"
	case k == inMass && u.small:
		return "g"
	}
	return map[seasonKind]string{inHours: "h", inDays: "d", inShare: "%", inDegrees: "°C", inMass: "kg"}[k]
}

// shown gives a value in the unit of its kind.
func (u seasonUnits) shown(k seasonKind, si float64) float64 {
	switch u.name(k) {
	case "h":
		return si / 3600
	case "d":
		return si / 86400
	case "%":
		return 100 * si
	case "°F":
		return quantity.Fahrenheit(si)
	case "lb":
		return si / quantity.Pound
	case "oz":
		return 16 * si / quantity.Pound
	case "g":
		return 1000 * si
	}
	return si
}

// digits is how many digits behind the point a shown value has, so that weights have
// three figures and no value more than the scale, the clock or the count behind it.
func (u seasonUnits) digits(k seasonKind, shown float64) int {
	switch v := math.Abs(shown); {
	case k == inNumber || k == inMass && v >= 100:
		return 0
	case k == inParts || k == inMass && v < 10:
		return 2
	}
	return 1
}
