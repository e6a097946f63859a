// Package usual tells what is usual for a value of a process, of a grain made into a malt: the
// figures by which rules judge, from package profile, as a range with what it is usual for.
package usual

import (
	"fmt"

	"maltwright/check/profile"
	"maltwright/lang/offer"
	"maltwright/lang/quantity"
	v "maltwright/lang/vocabulary"
)

// Of gives what is usual for the values of a process, in the units of its house.
func Of(p profile.Profile, s quantity.System) func(offer.Asked) []offer.Usual {
	return func(a offer.Asked) []offer.Usual {
		f, ok := figureOf(p, a)
		if !ok || !f.band.Known() {
			return nil
		}
		r, ok := f.in(s)
		if !ok {
			return nil
		}
		return []offer.Usual{{Range: r, Why: f.why(r.String(), p, s)}}
	}
}

// figure is a band that is usual.
type figure struct {
	band  profile.Band
	dim   quantity.Dimension // the band is in °C, h or shares of 1
	what  string             // what it is of: steep water
	malt  bool               // it goes by the malt type too
	above float64            // °C above which a rule tells of it; 0 where none does
	told  string             // what it tells
}

// figureOf finds what is usual in the place of a value.
func figureOf(p profile.Profile, a offer.Asked) (figure, bool) {
	if a.Measure != "" {
		return ofMeasure(p, a)
	}
	if a.Beside != "" {
		return figure{}, false
	}
	for _, of := range []func(profile.Profile, offer.Asked) (figure, bool){warmth, lasting, moist} {
		if f, ok := of(p, a); ok {
			return f, true
		}
	}
	return figure{}, false
}

// warmth is that of a step.
func warmth(p profile.Profile, a offer.Asked) (f figure, ok bool) {
	f.dim = quantity.Temperature
	switch {
	case a.Clause != v.ClauseAt:
		return f, false
	case a.Verb == v.VerbSoak:
		f.band, f.what, f.above, f.told = p.Water, "the steep water", p.WarmWater, "it is warm for the grain"
	case a.Verb == v.VerbRest:
		f.band, f.what = p.Rest, "the air of the rests"
	case a.Verb == v.VerbHold && a.Place != v.PlaceRoom && a.Place != v.PlaceAir:
		f.band, f.what, f.above, f.told = p.Grows, "the growing bed", p.GrowWarm(), "growth goes wrong"
	case a.Verb == v.VerbCure && a.Place != v.PlaceAirOff:
		f.band, f.what, f.malt = profile.Band{Low: min(p.Malt.Cure.Low, p.HottestCure()), High: p.HottestCure()}, "the cure", true
	default:
		return f, false
	}
	return f, true
}

// lastings are the names of times in the profile, by the verb and the clause, and what they are of.
var lastings = map[[2]string][2]string{
	{v.VerbSoak, ""}: {v.VerbSoak, "a soak"}, {v.VerbSoak, v.ClauseFor}: {v.VerbSoak, "a soak"},
	{v.VerbRest, ""}: {v.VerbRest, "a rest"}, {v.VerbRest, v.ClauseFor}: {v.VerbRest, "a rest"},
	{v.VerbAerate, v.ClauseEvery}: {v.VerbAerate, "the time from air to air"}, {v.VerbAerate, v.ClauseFor}: {"aerate's air", "the air of each time"},
	{v.VerbTurn, v.ClauseEvery}:     {v.VerbTurn, "the time from turn to turn"},
	{v.VerbSprinkle, v.ClauseEvery}: {v.VerbSprinkle, "the time from one sprinkling to the next"},
	{v.VerbStir, v.ClauseEvery}:     {v.VerbStir, "the time from one stirring to the next"},
	{v.VerbGerminate, v.ClauseFor}:  {v.VerbGerminate, "the growing"},
	{v.VerbGerminate, clauseAllow}:  {v.VerbGerminate, "the growing"},
	{v.VerbWither, v.ClauseFor}:     {v.VerbWither, "withering"},
	{v.VerbWither, clauseAllow}:     {v.VerbWither, "withering"},
	{v.VerbDry, ""}:                 {v.VerbDry, "a step of drying"},
	{v.VerbDry, v.ClauseFor}:        {v.VerbDry, "a step of drying"},
	{v.VerbDry, clauseAllow}:        {v.VerbDry, "a step of drying"},
	{v.VerbDry, v.ClauseOver}:       {"rise", "a rise"},
	{v.VerbStew, ""}:                {v.VerbStew, "stewing"},
	{v.VerbStew, v.ClauseFor}:       {v.VerbStew, "stewing"},
	{v.VerbCure, ""}:                {v.VerbCure, "the cure"},
	{v.VerbCure, v.ClauseFor}:       {v.VerbCure, "the cure"},
	{v.VerbRoast, ""}:               {v.VerbRoast, "the roast"},
	{v.VerbRoast, v.ClauseFor}:      {v.VerbRoast, "the roast"},
	{v.VerbDeculm, v.ClauseWithin}:  {v.VerbDeculm, "the wait after the kiln"},
	{v.VerbStore, ""}:               {v.VerbStore, "the rest in store"},
	{v.VerbStore, v.ClauseFor}:      {v.VerbStore, "the rest in store"},
}

const clauseAllow = "allow"

// stageOf is the stage whose time a statement of its block gives.
var stageOf = map[v.Block]string{v.Germinate: v.VerbGerminate, v.Wither: v.VerbWither}

// lasting is how long a step lasts, or from one work to the next.
func lasting(p profile.Profile, a offer.Asked) (f figure, ok bool) {
	verb, clause := a.Verb, a.Clause
	if stage := stageOf[a.In]; stage != "" && (verb == v.ClauseFor || verb == clauseAllow) {
		verb, clause = stage, v.ClauseFor
	}
	of, ok := lastings[[2]string{verb, clause}]
	if !ok {
		return f, false
	}
	word := of[0]
	if word == v.VerbTurn && a.In == v.Wither {
		word = "wither's turn"
	}
	return figure{band: p.TimesOf(word).Usual, dim: quantity.Time, what: of[1], malt: word == v.VerbGerminate || word == v.VerbCure || word == v.VerbStew}, true
}

// moist is the moisture that a statement asks for.
func moist(p profile.Profile, a offer.Asked) (figure, bool) {
	if a.Verb == v.VerbSteep && a.Clause == v.To {
		return figure{band: p.CastBand(), dim: quantity.Share, what: "the moisture at steep-out", malt: true}, true
	}
	return figure{}, false
}

// ofMeasure is what is asked of a measure.
func ofMeasure(p profile.Profile, a offer.Asked) (figure, bool) {
	steeping := a.In == v.Steep || a.In == v.Repeat || a.Verb == v.VerbSteep
	switch {
	case a.Measure == v.MeasureMoisture && steeping || a.Measure == v.MeasureSteepOutMoisture:
		return figure{band: p.CastBand(), dim: quantity.Share, what: "the moisture at steep-out", malt: true}, true
	case a.Measure == v.MeasureAcrospire:
		return figure{band: p.Goal(), dim: quantity.Number, what: "the length of the acrospire at the end, as a part of the kernel", malt: true}, true
	case a.Measure == v.MeasureFinalMoisture:
		return figure{band: profile.Band{Low: p.Malt.EndLeast, High: p.FinishedMost()}, dim: quantity.Share, what: "the moisture of the finished malt", malt: true}, true
	}
	return figure{}, false
}

// in is the band in the units of a house.
func (f figure) in(s quantity.System) (r quantity.Range, ok bool) {
	unit, factor, zero := "", 1.0, 0.0
	switch f.dim {
	case quantity.Temperature:
		unit, zero = s.Degree(), quantity.ZeroCelsius
	case quantity.Share:
		unit = "%"
	case quantity.Time:
		unit, factor = unitOfTime(f.band), 3600
	}
	low, err := quantity.In(f.band.Low*factor+zero, unit)
	high, other := quantity.In(f.band.High*factor+zero, unit)
	return quantity.Range{Low: low, High: high}, err == nil && other == nil
}

// unitOfTime is that in which people say such times.
func unitOfTime(hours profile.Band) string {
	switch {
	case hours.High <= 1:
		return "min"
	case hours.Low >= 24 && hours.High > 48:
		return "days"
	}
	return "h"
}

// why says what a band is usual for.
func (f figure) why(band string, p profile.Profile, s quantity.System) string {
	of := p.Grain.Name
	if f.malt {
		of = p.Malt.Name + " malt of " + of
	}
	text := fmt.Sprintf("%s is usual for %s of %s", band, f.what, of)
	if f.above > 0 {
		text += fmt.Sprintf("; above %s %s", s.Degrees(f.above, 1), f.told)
	}
	return text
}
