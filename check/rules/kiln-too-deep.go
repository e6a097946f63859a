package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var kilnTooDeep = Rule{
	Rule: finding.Rule{Name: "kiln-too-deep", Severity: finding.Caution,
		Title: "the malt lies too deep for the air of the kiln",
		Why: "warm air dries a bed from below, layer by layer; deep beds of a fan's kiln are 0.7 to 1 m (Kribs 1995), under a natural draught a few hand's breadths, " +
			"and in an oven without a fan malt lies on trays (common practice). A small fan cannot press air through a foot of malt: the resistance of a bed is that of barley (ASABE D272.3), " +
			"a fifth less (from memory). Deeper, the top stays wet, sours and grows on",
		Do: "dry it in smaller charges, or on more area",
		Bad: `from 60 kg of "base lot"
vessel "base tub" { holds 200 l }
floor "base tray" { area 4 m2 }
floor "base floor" { area 8 m2 }
kiln "base kiln" { area 0.11 m2; airflow 400 m3/h; draught fan; fired electric }`,
		Good: `from 4 kg of "base lot"
kiln "base kiln" { area 0.5 m2; airflow 90 m3/h; draught fan; fired electric }`,
		Limits: "it knows the fan only by its airflow, not by its pressure; without a forecast it assumes green malt that was not withered"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, k *model.Kiln) {
		if k != nil && k.Tumbles { // what it holds is drum-too-full's
			return
		}
		if k == nil || k.Area == nil {
			c.NotJudged(r, "the kiln does not say its area")
			return
		}
		depth, ok := c.depthOnKiln(st, k)
		source := airSource(k)
		most := deepest[source]
		switch {
		case !ok:
			return
		case depth <= most:
			c.tooTight(r, st, k, depth)
			return
		}
		like := lengthsOf(k.Area.Quantity)
		f := r.At(st.Place(), fmt.Sprintf("the malt lies %s deep on %s, and %s is the most%s", like(depth), k.Area, like(most), underWhat[source]))
		f.Hint = fmt.Sprintf("dry it in smaller charges, or on %s and more", k.Area.Like(k.Area.SI*depth/most))
		f.Related = []finding.Related{{Place: k.Area.Place, Message: "its area"}}
		c.Note(f)
	}),
}

// airSource is what moves the air of a kiln, "" where nothing says so: that of an upper floor is moved by what moves it
// through the floor below.
func airSource(k *model.Kiln) string {
	for range floorsAtMost {
		if k.AirFrom == nil {
			break
		}
		k = k.AirFrom
	}
	if k.Draught.Text == "" && k.Chimney != nil && len(k.Fan) == 0 && k.FanPower == nil {
		return vocabulary.DraughtNatural
	}
	return k.Draught.Text
}

// floorsAtMost ends the search through floors that are written in a ring.
const floorsAtMost = 8

// deepest is how deep malt lies on a kiln at the most, m, by what moves its air.
var deepest = map[string]float64{"": 1.2, vocabulary.DraughtFan: 1.2, vocabulary.DraughtNatural: 0.4, vocabulary.DraughtStill: 0.15}

var underWhat = map[string]string{vocabulary.DraughtNatural: " under a natural draught", vocabulary.DraughtStill: " in an oven without a fan"}

// depthOnKiln is how deep the malt lies, by the forecast or as it is reckoned from the
// charge.
func (c *Case) depthOnKiln(st *model.Kilning, k *model.Kiln) (float64, bool) {
	switch on := c.onKiln(st); {
	case on != nil:
		return on.Depth, true
	case c.Process.Charge == nil || model.First[*model.Withering](c.Process) != nil:
		return 0, false
	}
	room, ok := forecast.GreenRoom(c.Process)
	return room / k.Area.SI, ok
}

// lengthsOf writes lengths, m, in the units of a house that writes its areas so.
func lengthsOf(area quantity.Quantity) func(float64) string {
	return func(m float64) string {
		unit := "m"
		switch {
		case area.Unit() == "ft2" && m < 0.6:
			unit = "in"
		case area.Unit() == "ft2":
			unit = "ft"
		case m < 1:
			unit = "cm"
		}
		q, err := quantity.In(m, unit)
		if err != nil {
			return "unknown"
		}
		return q.String()
	}
}
