package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/sim/forecast"
)

var vesselTooSmall = Rule{
	Rule: finding.Rule{Name: "vessel-too-small", Severity: finding.Fault,
		Title: "the grain and its water do not fit the vessel",
		Why:   "grain swells by two fifths as it steeps; what stands out of the water stays dry, and what is pressed has no air",
		Do:    "steep less at a time, or in a larger vessel"},
	Judge: func(r finding.Rule, c *Case) {
		st := c.Process.Stage(process.Steep)
		if st == nil {
			return
		}
		if st.Vessel == nil || st.Vessel.Holds == nil {
			c.NotJudged(r, "no vessel is named, or it does not say what it holds")
			return
		}
		for _, t := range c.troubles(forecast.VesselFull) {
			f := r.At(t.Place, fmt.Sprintf("the swollen grain with its water needs %s, and %q holds %s",
				st.Vessel.Holds.Like(t.Value), st.Vessel.Name, st.Vessel.Holds))
			f.Related = []finding.Related{{Place: st.Vessel.Place, Message: "the vessel"}}
			c.Note(f)
		}
	},
}

var oxygenGone = Rule{
	Rule: finding.Rule{Name: "oxygen-gone", Severity: finding.Caution,
		Title: "the grain stands long in water that has lost its oxygen",
		Why:   "grain breathes from the first hour; in still water it uses the oxygen up, then sours and in the end drowns (Kent and Evers, Technology of Cereals)",
		Do:    "shorten the soak, change the water, or stir air into it: with air"},
	Judge: func(r finding.Rule, c *Case) {
		most := limit(c, "airless-time", airlessUsual(c.Process.Grain))
		for _, t := range c.troubles(forecast.OxygenGone) {
			if t.Value > most {
				f := r.At(t.Place, fmt.Sprintf("in %s the grain stands %s in water without oxygen, and %s is the most", t.Detail, Hours(t.Value), Hours(most)))
				c.Note(f)
			}
		}
	},
}

// airlessUsual is the longest that a grain may stand without oxygen where the
// house says nothing: 6 h, and a day for the grains of warm countries, which are
// soaked for 18 to 24 h at a stretch (common practice).
func airlessUsual(g *process.Grain) float64 {
	if g != nil && warmGrains[g.Species.Text] {
		return 24 * 3600
	}
	return 6 * 3600
}

var pieceOverheats = Rule{
	Rule: finding.Rule{Name: "piece-overheats", Severity: finding.Caution,
		Title: "the piece gets too warm between turns",
		Why:   "the growing grain heats itself; warm grain grows unevenly, loses more of its substance and goes mouldy",
		Do:    "turn more often, spread it thinner, or keep the room cooler"},
	Judge: func(r finding.Rule, c *Case) {
		usual := 20.0
		if g := c.Process.Grain; g != nil && warmGrains[g.Species.Text] {
			usual = 35
		}
		most := limit(c, "bed-temperature", usual+273.15) - 273.15
		for _, t := range c.troubles(forecast.BedWarm) {
			if t.Value > most+0.05 {
				f := r.At(t.Place, fmt.Sprintf("between turns the piece gets %.1f °C warm %s, and %.1f °C is the most", t.Value, t.Detail, most))
				c.Note(f)
			}
		}
	},
}

// warmGrains grow at 25 to 32 °C (common practice in the places they are from).
var warmGrains = map[string]bool{"sorghum": true, "millet": true, "maize": true}

// limit gives a threshold, as the house moved it or as usual, in SI.
func limit(c *Case, word string, usual float64) float64 {
	if l, ok := process.FindLimit(c.Process.Limits, word); ok {
		return l.Bound.Range.High.SI
	}
	return usual
}

var equipmentCannot = Rule{
	Rule: finding.Rule{Name: "equipment-cannot", Severity: finding.Fault,
		Title: "the kiln cannot give the temperature that is asked of it",
		Why:   "what it cannot reach, or cannot go as low as, the malt does not get either",
		Do:    "ask for what the kiln reaches, dry with less air at a time, or in smaller charges"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range c.troubles(forecast.KilnShort) {
			f := r.At(t.Place, t.Detail)
			if st := c.Process.Stage(process.KilnStage); st != nil && st.Kiln != nil {
				f.Related = []finding.Related{{Place: st.Kiln.Place, Message: "the kiln"}}
			}
			c.Note(f)
		}
	},
}

var hotWhileWet = Rule{
	Rule: finding.Rule{Name: "hot-while-wet", Severity: finding.Fault, // a caution where strong air keeps the malt cool
		Title: "the malt itself gets hot while it is still wet",
		Why:   "wet enzymes die at temperatures that dry ones bear: about 50 °C above 25 % moisture, 65 °C above 12 %, 80 °C above 10 % (common practice)",
		Do:    "dry it further before it is heated: put a gate in front, or lengthen the step before"},
	Judge: func(r finding.Rule, c *Case) {
		if enzymesNotWanted[c.Process.Make.Text] {
			return
		}
		for _, t := range c.troubles(forecast.HotWet) {
			f := r.At(t.Place, t.Detail)
			if t.ByAir {
				f.Severity = finding.Caution
			}
			c.Note(f)
		}
	},
}

// enzymesNotWanted are the malts that are made by giving up enzymes.
var enzymesNotWanted = map[string]bool{"caramel": true, "amber": true, "brown": true}
